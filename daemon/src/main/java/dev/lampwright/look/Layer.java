package dev.lampwright.look;

/** One layer of a look: paint × extent × rhythm on a zone, laid over what is below. {@link LayerSpec} describes one. Allocates nothing; for one thread. */
public final class Layer {
    private final Zone zone;
    private final Paint paint;
    private final Extent extent;
    private final Rhythm rhythm;
    private final Level opacity;
    private final Blend blend;

    /**
     * Makes a layer.
     *
     * @param zone the pixels it lies on
     * @param paint what colour
     * @param extent which pixels
     * @param rhythm when
     * @param opacity how strongly
     * @param blend how it goes together with what is below
     */
    public Layer(Zone zone, Paint paint, Extent extent, Rhythm rhythm, Level opacity, Blend blend) {
        this.zone = zone;
        this.paint = paint;
        this.extent = extent;
        this.rhythm = rhythm;
        this.opacity = opacity;
        this.blend = blend;
    }

    /**
     * Lays this over what is there.
     *
     * @param moment the time and the signals
     * @param canvas where to draw
     * @throws ArithmeticException if what comes of opacity, rhythm, extent and paint is no alpha; a part of the layer may fail otherwise too
     */
    void draw(Moment moment, Canvas canvas) {
        float lit = moment.steady() ? 1 : rhythm.level(moment.seconds());
        float strength = (float) opacity.at(moment) * lit;
        if (strength == 0 || zone.length() == 0) {
            return;
        }
        float[] rgba = canvas.paint();
        float[] cover = canvas.cover();
        paint.paint(moment, rgba, zone.length());
        extent.cover(moment, cover, zone.length());
        boolean sound = true;
        for (int place = 0; place < zone.length(); place++) {
            cover[place] = cover[place] * strength * rgba[4 * place + 3];
            sound &= cover[place] >= 0;
        }
        if (!sound) {
            throw new ArithmeticException("its alpha is not a number from 0 to 1");
        }
        lay(rgba, cover, canvas.rgba());
    }

    private void lay(float[] rgba, float[] alpha, float[] below) {
        switch (blend) {
            case NORMAL -> layOver(rgba, alpha, below);
            case PLUS_LIGHTER -> layAdded(rgba, alpha, below);
            default -> layMixed(rgba, alpha, below);
        }
    }

    private void layOver(float[] rgba, float[] alpha, float[] below) {
        for (int i = 0; i < zone.pixelCount(); i++) {
            int place = zone.place(i);
            if (alpha[place] > 0) {
                over(rgba, 4 * place, alpha[place], below, 4 * zone.pixel(i));
            }
        }
    }

    private void layAdded(float[] rgba, float[] alpha, float[] below) {
        for (int i = 0; i < zone.pixelCount(); i++) {
            int place = zone.place(i);
            if (alpha[place] > 0) {
                add(rgba, 4 * place, alpha[place], below, 4 * zone.pixel(i));
            }
        }
    }

    private void layMixed(float[] rgba, float[] alpha, float[] below) {
        for (int i = 0; i < zone.pixelCount(); i++) {
            int place = zone.place(i);
            if (alpha[place] > 0) {
                mix(rgba, 4 * place, alpha[place], below, 4 * zone.pixel(i));
            }
        }
    }

    /** W3C Compositing and Blending Level 1, 9.1.4: source-over, premultiplied. */
    private static void over(float[] rgba, int from, float alpha, float[] below, int at) {
        float rest = 1 - alpha;
        below[at] = rgba[from] * alpha + below[at] * rest;
        below[at + 1] = rgba[from + 1] * alpha + below[at + 1] * rest;
        below[at + 2] = rgba[from + 2] * alpha + below[at + 2] * rest;
        below[at + 3] = alpha + below[at + 3] * rest;
    }

    /** The same standard, 9.1.14: plus-lighter. */
    private static void add(float[] rgba, int from, float alpha, float[] below, int at) {
        below[at] = Math.min(1, below[at] + rgba[from] * alpha);
        below[at + 1] = Math.min(1, below[at + 1] + rgba[from + 1] * alpha);
        below[at + 2] = Math.min(1, below[at + 2] + rgba[from + 2] * alpha);
        below[at + 3] = Math.min(1, below[at + 3] + alpha);
    }

    /** The same standard, 5 and 10: co = αs(1 − αb)Cs + αb(1 − αs)Cb + αs αb B(Cb, Cs). */
    private void mix(float[] rgba, int from, float alpha, float[] below, int at) {
        float alphaBelow = below[at + 3];
        for (int channel = 0; channel < 3; channel++) {
            float source = rgba[from + channel];
            float backdrop = alphaBelow == 0 ? 0 : below[at + channel] / alphaBelow;
            below[at + channel] = alpha * (1 - alphaBelow) * source
                    + (1 - alpha) * below[at + channel]
                    + alpha * alphaBelow * blend.mix(backdrop, source);
        }
        below[at + 3] = alpha + alphaBelow * (1 - alpha);
    }
}
