package dev.lampwright.config;

import java.util.List;
import java.util.OptionalInt;

/**
 * One light of the section {@code [dimmers]} as it stands in the file: a white light on one channel, or a plain colour strip on
 * three.
 *
 * @param name its name
 * @param channels its channels; three, for red, green and blue, if it is a plain colour strip
 * @param volts voltage of its supply
 * @param fullMilliamps current of each channel at full duty
 * @param ceilingMilliamps ceiling of its supply, if it is given here
 */
record DimmerEntry(String name, List<Integer> channels, double volts, int fullMilliamps, OptionalInt ceilingMilliamps) {
    /** Red, green and blue. */
    static final int COLOURS = 3;

    private static final int MOST_MILLIAMPS = 65_535;
    private static final int HIGHEST_CHANNEL = 254;
    private static final String WANTED_CHANNELS =
            "give the channels of red, green and blue, three whole numbers from 0 to " + HIGHEST_CHANNEL;

    static DimmerEntry read(String name, Table table, double stripVolts) {
        DimmerEntry entry = new DimmerEntry(
                name,
                channels(table),
                table.needNumber("volts", 1, SupplySection.MOST_VOLTS),
                table.needWhole("full_mA", 1, MOST_MILLIAMPS),
                table.wholeIfThere("ceiling_mA", 1, MOST_MILLIAMPS));
        if (entry.volts == stripVolts && entry.ceilingMilliamps.isPresent()) {
            table.mistake(
                    "ceiling_mA",
                    "is for a supply of its own, but the strip's supply has " + Wording.number(stripVolts) + " V too",
                    "set ceiling_mA in [supply] for both");
        }
        return entry;
    }

    /** Whether it shows colours. */
    boolean isColourStrip() {
        return channels.size() == COLOURS;
    }

    private static List<Integer> channels(Table table) {
        if (!table.has("channels")) {
            return List.of(table.needWhole("channel", 0, HIGHEST_CHANNEL));
        }
        if (table.has("channel")) {
            table.mistake(
                    "channel", "stands beside channels", "keep channel for a white light, channels for a colour strip");
        }
        List<Integer> channels = table.numbers("channels", 0, HIGHEST_CHANNEL).stream()
                .filter(channel -> channel == Math.rint(channel))
                .map(Double::intValue)
                .toList();
        if (channels.size() != COLOURS && table.right()) {
            table.mistake("channels", "is not three whole numbers", WANTED_CHANNELS);
        }
        return channels;
    }
}
