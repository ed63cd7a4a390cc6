package dev.lampwright.colour;

/**
 * Finds a displayable colour for one that cannot be shown: reduces chroma at equal lightness and hue until clipping the rest changes the
 * colour less than is just noticeable. Source: CSS Color Module Level 4, "Binary Search Gamut Mapping with Local MINDE".
 */
final class GamutMap {
    private static final double JUST_NOTICEABLE = 0.02;
    private static final double CLOSE_ENOUGH = 0.0001;

    private GamutMap() {}

    /**
     * Maps a colour.
     *
     * @param colour any colour
     * @return the same if it can be shown, otherwise its replacement
     */
    static Light light(Oklab colour) {
        if (colour.lightness() >= 1) {
            return Light.WHITE;
        }
        if (colour.lightness() <= 0) {
            return Light.BLACK;
        }
        Rgb rgb = colour.rgb();
        if (rgb.inGamut() || cost(colour, rgb) < JUST_NOTICEABLE) {
            return rgb.light();
        }
        return reduced(Oklch.of(colour)).light();
    }

    private static Rgb reduced(Oklch origin) {
        double least = 0;
        double most = origin.chroma();
        boolean leastInGamut = true;
        Rgb found = origin.oklab().rgb();
        while (most - least > CLOSE_ENOUGH) {
            double chroma = (least + most) / 2;
            Oklab current = origin.withChroma(chroma).oklab();
            Rgb rgb = current.rgb();
            if (leastInGamut && rgb.inGamut()) {
                least = chroma;
                continue;
            }
            found = rgb;
            double cost = cost(current, rgb);
            if (cost >= JUST_NOTICEABLE) {
                most = chroma;
            } else if (JUST_NOTICEABLE - cost < CLOSE_ENOUGH) {
                return found;
            } else {
                leastInGamut = false;
                least = chroma;
            }
        }
        return found;
    }

    private static double cost(Oklab colour, Rgb rgb) {
        return colour.difference(Oklab.of(rgb.clipped()));
    }
}
