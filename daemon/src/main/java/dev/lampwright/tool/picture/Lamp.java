package dev.lampwright.tool.picture;

import dev.lampwright.look.Fitting;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** What is connected to one dimmer, or to three: a white light, or a plain colour strip. */
final class Lamp {
    private static final float FULL_DUTY = 65_535f;

    private final String name;
    private final int[] dimmers;

    private Lamp(String name, int[] dimmers) {
        this.name = name;
        this.dimmers = dimmers;
    }

    /**
     * The lamps of a fitting.
     *
     * @return each once, in the order of the controller's dimmers
     */
    static List<Lamp> of(Fitting fitting) {
        List<Lamp> lamps = new ArrayList<>();
        for (String name : fitting.dimmerNames()) {
            int[] dimmers = new int[3];
            for (int i = 0; i < fitting.dimmers().size(); i++) {
                Fitting.DimmerUse use = fitting.dimmers().get(i);
                if (use.name().equals(name) && use.isWhite()) {
                    Arrays.fill(dimmers, i);
                } else if (use.name().equals(name)) {
                    dimmers[use.channel()] = i;
                }
            }
            lamps.add(new Lamp(name, dimmers));
        }
        return lamps;
    }

    /** Its name in the configuration. */
    String name() {
        return name;
    }

    /** Its light: linear, 0 to 1, of red, green or blue. */
    float light(int[] duties, int colour) {
        return duties[dimmers[colour]] / FULL_DUTY;
    }
}
