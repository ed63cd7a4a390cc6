package dev.lampwright.guard;

import dev.lampwright.look.Fitting;
import dev.lampwright.protocol.Frame;
import java.util.ArrayList;
import java.util.List;

/**
 * The lights of a frame, one after the other: the pixels of the strip, and then what is connected to the dimmers, a plain colour strip as
 * one light. A light's red, green and blue are shares of 65535 of its duty, which is linear in its light; white counts for all three.
 */
final class LightReader {
    /** Full duty. */
    static final int FULL = 65_535;

    private static final int PER_STEP = FULL / 255;
    private static final int COLOURS = 3;

    private final int pixels;
    private final int channels;
    private final int[] places;
    private final int white;
    private final List<int[]> dimmers;
    private final int[] red;
    private final int[] green;
    private final int[] blue;

    /**
     * Creates lights that are all dark.
     *
     * @param order the strip's order of channels
     * @param fitting what is fitted
     */
    LightReader(String order, Fitting fitting) {
        pixels = fitting.pixels();
        channels = order.length();
        places = new int[] {order.indexOf('R'), order.indexOf('G'), order.indexOf('B')};
        white = order.indexOf('W');
        dimmers = dimmers(fitting);
        red = new int[pixels + dimmers.size()];
        green = new int[red.length];
        blue = new int[red.length];
    }

    /** For each light beyond the strip the dimmer of its red, its green and its blue; a white light is all three. */
    private static List<int[]> dimmers(Fitting fitting) {
        List<int[]> lights = new ArrayList<>();
        for (String name : fitting.dimmerNames()) {
            int[] light = new int[COLOURS];
            for (int i = 0; i < fitting.dimmers().size(); i++) {
                Fitting.DimmerUse use = fitting.dimmers().get(i);
                if (use.name().equals(name)) {
                    for (int colour = 0; colour < COLOURS; colour++) {
                        light[colour] = use.isWhite() || use.channel() == colour ? i : light[colour];
                    }
                }
            }
            lights.add(light);
        }
        return lights;
    }

    /** How many lights there are. */
    int count() {
        return red.length;
    }

    /** How many of them, from the first on, are pixels of the strip. */
    int pixels() {
        return pixels;
    }

    /** Red of a light in the last frame read. */
    int red(int light) {
        return red[light];
    }

    /** Green of a light in the last frame read. */
    int green(int light) {
        return green[light];
    }

    /** Blue of a light in the last frame read. */
    int blue(int light) {
        return blue[light];
    }

    /**
     * Reads a frame.
     *
     * @param frame a frame for the fitted lights
     */
    void read(Frame frame) {
        if (white < 0) {
            readColours(frame.strip());
        } else {
            for (int light = 0; light < pixels; light++) {
                readPixel(frame.strip(), light);
            }
        }
        for (int light = pixels; light < red.length; light++) {
            readDimmers(frame.duties(), light);
        }
    }

    /** Separate because most strips have no white, and this runs for every frame. */
    private void readColours(byte[] strip) {
        int atRed = places[0];
        int atGreen = places[1];
        int atBlue = places[2];
        for (int light = 0; light < pixels; light++) {
            red[light] = PER_STEP * (strip[atRed] & 0xFF);
            green[light] = PER_STEP * (strip[atGreen] & 0xFF);
            blue[light] = PER_STEP * (strip[atBlue] & 0xFF);
            atRed += COLOURS;
            atGreen += COLOURS;
            atBlue += COLOURS;
        }
    }

    /**
     * Reads one light of a frame.
     *
     * @param frame a frame for the fitted lights
     * @param light which
     */
    void read(Frame frame, int light) {
        if (light < pixels) {
            readPixel(frame.strip(), light);
        } else {
            readDimmers(frame.duties(), light);
        }
    }

    private void readPixel(byte[] strip, int light) {
        int at = light * channels;
        int all = white < 0 ? 0 : PER_STEP * (strip[at + white] & 0xFF);
        red[light] = all + PER_STEP * (strip[at + places[0]] & 0xFF);
        green[light] = all + PER_STEP * (strip[at + places[1]] & 0xFF);
        blue[light] = all + PER_STEP * (strip[at + places[2]] & 0xFF);
    }

    private void readDimmers(int[] duties, int light) {
        int[] of = dimmers.get(light - pixels);
        red[light] = duties[of[0]];
        green[light] = duties[of[1]];
        blue[light] = duties[of[2]];
    }

    /**
     * Copies one light.
     *
     * @param light which
     * @param from the frame it is taken from
     * @param to the frame it goes to
     */
    void copy(int light, Frame from, Frame to) {
        if (light < pixels) {
            System.arraycopy(from.strip(), light * channels, to.strip(), light * channels, channels);
        } else {
            for (int dimmer : dimmers.get(light - pixels)) {
                to.duties()[dimmer] = from.duties()[dimmer];
            }
        }
    }

    /**
     * Mixes one light of two frames. Rounds down, so that a mixture of two frames never draws more than the corresponding mean of what they
     * draw.
     *
     * @param light which
     * @param from its light if the share is 0
     * @param to its light if the share is 65536
     * @param share 0 to 65536
     * @param mixed where the mixed light goes; may be one of the two
     */
    void mix(int light, Frame from, Frame to, int share, Frame mixed) {
        if (light < pixels) {
            for (int at = light * channels; at < (light + 1) * channels; at++) {
                mixed.strip()[at] = (byte) mix(from.strip()[at] & 0xFF, to.strip()[at] & 0xFF, share);
            }
        } else {
            mixDimmers(dimmers.get(light - pixels), from, to, share, mixed);
        }
    }

    /** A white light lists its single dimmer three times, which must not be mixed more than once. */
    private static void mixDimmers(int[] light, Frame from, Frame to, int share, Frame mixed) {
        int last = -1;
        for (int dimmer : light) {
            if (dimmer != last) {
                mixed.duties()[dimmer] = mix(from.duties()[dimmer], to.duties()[dimmer], share);
            }
            last = dimmer;
        }
    }

    private static int mix(int from, int to, int share) {
        return from + (int) (((long) (to - from) * share) >> 16);
    }
}
