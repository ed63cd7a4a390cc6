package dev.lampwright.tool.plan;

import java.util.ArrayList;
import java.util.List;

/** What a plan assumes where no key says otherwise, in sentences. */
final class Assumptions {
    private static final List<String> ALWAYS = List.of(
            "Wires are plain copper: an AWG size as if it were solid (stranded has 2 to 4 % more resistance, assumed), mm² with the most that"
                    + " IEC 60228 allows stranded wire. Cheap wire is often copper-clad aluminium, which has 1.6 times the resistance:"
                    + " set conductor = \"cca\".",
            "A supply gives 2 % less than its volts at worst, unless tolerance_percent says otherwise; four contacts of 10 mΩ are in each"
                    + " loop, and a fuse loses 0.1 V at its rating, unless contacts_mohm and fuse_mohm say otherwise (all assumed).",
            "Fuses are slow (T): capacitors in strips and lamps charge at once when the supply comes on, which can blow"
                    + " fast ones. A fuse must be made for direct current of at least the supply's voltage: blade fuses are marked 32 V,"
                    + " and glass fuses are often marked for alternating current only.",
            "Each red wire has its own fuse, and each black wire is as thick as its red one. If one black wire comes loose, its current"
                    + " flows through the others, or through the board and USB: fix them as carefully as the red ones.",
            "Each MOSFET is made for at least the pulse current of its light, with its gate at the board's logic voltage.");

    private Assumptions() {}

    /**
     * The assumptions of a plan.
     *
     * @param plan the plan
     * @return sentences, one per topic
     */
    static List<String> of(Plan plan) {
        List<String> all = new ArrayList<>();
        all.add(
                "A dimmed lamp draws pulses: they heat by their root mean square, lower the voltage by their height, and load the supply by"
                        + " their mean. The ceiling that daemon and controller hold is a mean.");
        all.add(
                plan.rig().wiring().strip().together()
                        ? "Pixels begin their pulses together, which is the worst case for heat (assumed: each has its own clock, so they"
                                + " drift apart). A true-RMS meter settles it: see the handbook, \"The plan\", and set pulses = \"apart\" in [wiring.strip]."
                        : "Each pixel pulses in its own time, as the file says: the strip heats by its mean.");
        all.addAll(ALWAYS);
        return all;
    }
}
