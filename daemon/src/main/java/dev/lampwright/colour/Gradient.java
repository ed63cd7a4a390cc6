package dev.lampwright.colour;

import java.util.List;

/** Colours that flow one into the next, evenly spaced, interpolated in OKLab. A table, so that looking up costs little. */
public final class Gradient {
    private static final int STEPS = 1024;

    private final float[] table = new float[3 * (STEPS + 1)];

    /**
     * Makes a gradient.
     *
     * @param colours one or more, from 0 to 1
     */
    public Gradient(List<Light> colours) {
        for (int step = 0; step <= STEPS; step++) {
            Light light = between(colours, (double) step / STEPS);
            table[3 * step] = light.red();
            table[3 * step + 1] = light.green();
            table[3 * step + 2] = light.blue();
        }
    }

    /**
     * Looks a colour up.
     *
     * @param share where in the gradient; what is outside 0 to 1 counts as the nearer end
     * @param rgb where to write linear red, green and blue
     * @param at index of red
     */
    public void colour(double share, float[] rgb, int at) {
        int step = (int) Math.round(Math.max(0, Math.min(1, share)) * STEPS);
        System.arraycopy(table, 3 * step, rgb, at, 3);
    }

    private static Light between(List<Light> colours, double share) {
        int last = colours.size() - 1;
        int lower = Math.min((int) (share * last), Math.max(0, last - 1));
        Light from = colours.get(lower);
        Light to = colours.get(Math.min(lower + 1, last));
        return Oklab.of(from).towards(Oklab.of(to), share * last - lower).light();
    }
}
