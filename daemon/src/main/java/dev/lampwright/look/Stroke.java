package dev.lampwright.look;

/**
 * Draws the colours of a layer onto the pixels, with a separate loop for each common blend. Created once and used for each run of pixels,
 * frame after frame. Source of the formulas: W3C Compositing and Blending Level 1.
 */
final class Stroke {
    private float[] colours;
    private float[] cover;
    private float strength;
    private int from;
    private int to;
    private int colourStep;
    private int coverStep;

    /** Where the next pixels begin in colours, cover and light, and the step to the next one there. */
    private int firstColour;

    private int colourMove;
    private int firstCover;
    private int coverMove;
    private int first;
    private int move;
    private int count;

    /**
     * Loads colours.
     *
     * @param newColours linear light, not premultiplied, and alpha: four floats for each place of the zone
     * @param even whether the first is the colour of all places
     * @param newCover which places are reached, and how much each is covered
     * @param newStrength factor for all alphas
     */
    void take(float[] newColours, boolean even, Cover newCover, float newStrength) {
        colours = newColours;
        cover = newCover.values();
        strength = newStrength;
        from = newCover.from();
        to = newCover.to();
        colourStep = even ? 0 : 4;
        coverStep = newCover.step();
    }

    /**
     * Draws them onto the pixels of a run that are reached.
     *
     * @param run the pixels
     * @param blend how they are combined with what is below
     * @param below premultiplied light of all pixels
     * @return whether each alpha is a number from 0 on; pixels where it is not remain unchanged
     */
    boolean lay(Zone.Run run, Blend blend, float[] below) {
        boolean up = run.placeStep() > 0;
        int begin = Math.max(0, up ? from - run.place() : run.place() - to + 1);
        int end = Math.min(run.count(), up ? to - run.place() : run.place() - from + 1);
        int place = run.place() + begin * run.placeStep();
        firstColour = colourStep * place;
        colourMove = colourStep * run.placeStep();
        firstCover = coverStep * place;
        coverMove = coverStep * run.placeStep();
        first = 4 * (run.pixel() + begin * run.pixelStep());
        move = 4 * run.pixelStep();
        count = end - begin;
        return switch (blend) {
            case NORMAL -> over(below);
            case PLUS_LIGHTER -> add(below);
            case SCREEN -> screen(below);
            default -> mix(blend, below);
        };
    }

    /** 9.1.4, source-over, premultiplied. */
    private boolean over(float[] below) {
        float[] source = colours;
        boolean sound = true;
        int colour = firstColour;
        int covered = firstCover;
        int at = first;
        for (int i = 0; i < count; i++) {
            float alpha = cover[covered] * strength * source[colour + 3];
            if (alpha > 0) {
                float rest = 1 - alpha;
                below[at] = source[colour] * alpha + below[at] * rest;
                below[at + 1] = source[colour + 1] * alpha + below[at + 1] * rest;
                below[at + 2] = source[colour + 2] * alpha + below[at + 2] * rest;
                below[at + 3] = alpha + below[at + 3] * rest;
            } else {
                sound &= alpha == 0;
            }
            colour += colourMove;
            covered += coverMove;
            at += move;
        }
        return sound;
    }

    /** 9.1.14, plus-lighter. */
    private boolean add(float[] below) {
        float[] source = colours;
        boolean sound = true;
        int colour = firstColour;
        int covered = firstCover;
        int at = first;
        for (int i = 0; i < count; i++) {
            float alpha = cover[covered] * strength * source[colour + 3];
            if (alpha > 0) {
                below[at] = atMostOne(below[at] + source[colour] * alpha);
                below[at + 1] = atMostOne(below[at + 1] + source[colour + 1] * alpha);
                below[at + 2] = atMostOne(below[at + 2] + source[colour + 2] * alpha);
                below[at + 3] = atMostOne(below[at + 3] + alpha);
            } else {
                sound &= alpha == 0;
            }
            colour += colourMove;
            covered += coverMove;
            at += move;
        }
        return sound;
    }

    /** NaN stays NaN, so that it is detected. */
    private static float atMostOne(float light) {
        return light > 1 ? 1 : light;
    }

    /** Sections 5 and 10: co = cb + αs Cs (1 − cb), which the formula below becomes for the complement of a product. */
    private boolean screen(float[] below) {
        float[] source = colours;
        boolean sound = true;
        int colour = firstColour;
        int covered = firstCover;
        int at = first;
        for (int i = 0; i < count; i++) {
            float alpha = cover[covered] * strength * source[colour + 3];
            if (alpha > 0) {
                below[at] += source[colour] * alpha * (1 - below[at]);
                below[at + 1] += source[colour + 1] * alpha * (1 - below[at + 1]);
                below[at + 2] += source[colour + 2] * alpha * (1 - below[at + 2]);
                below[at + 3] += alpha * (1 - below[at + 3]);
            } else {
                sound &= alpha == 0;
            }
            colour += colourMove;
            covered += coverMove;
            at += move;
        }
        return sound;
    }

    /** Sections 5 and 10: co = αs(1 − αb)Cs + (1 − αs)cb + αs αb B(Cb, Cs), where cb is αb Cb. */
    private boolean mix(Blend blend, float[] below) {
        float[] source = colours;
        boolean sound = true;
        int colour = firstColour;
        int covered = firstCover;
        int at = first;
        for (int i = 0; i < count; i++) {
            float alpha = cover[covered] * strength * source[colour + 3];
            if (alpha > 0) {
                float alphaBelow = below[at + 3];
                float alone = alpha * (1 - alphaBelow);
                for (int channel = 0; channel < 3; channel++) {
                    float light = below[at + channel];
                    float own = source[colour + channel];
                    below[at + channel] = alone * own + (1 - alpha) * light + alpha * blend.mix(light, alphaBelow, own);
                }
                below[at + 3] = alpha + alphaBelow * (1 - alpha);
            } else {
                sound &= alpha == 0;
            }
            colour += colourMove;
            covered += coverMove;
            at += move;
        }
        return sound;
    }
}
