package dev.lampwright.config;

import java.util.List;
import java.util.OptionalInt;

/**
 * One light of the section {@code [dimmers]} as written in the file: a white light on one channel, or a plain colour strip on three.
 *
 * @param name its name
 * @param channels its channels; three, for red, green and blue, if it is a plain colour strip
 * @param volts voltage of its supply
 * @param fullMilliamps current of each channel at full duty
 * @param ceilingMilliamps ceiling of its supply, if given here
 * @param unused whether no light is connected; it then has the strip's voltage and draws nothing
 * @param hangs where it is, for the picture on the live page
 */
record DimmerEntry(
        String name,
        List<Integer> channels,
        double volts,
        int fullMilliamps,
        OptionalInt ceilingMilliamps,
        boolean unused,
        Mounting.Side hangs) {
    /** Red, green and blue. */
    static final int COLOURS = 3;

    private static final int MOST_MILLIAMPS = 65_535;
    private static final int HIGHEST_CHANNEL = 254;
    private static final String WANTED_CHANNELS =
            "give the channels of red, green and blue, three whole numbers from 0 to " + HIGHEST_CHANNEL;

    private static final Key<Integer> CEILING = Key.whole("ceiling_mA", 1, MOST_MILLIAMPS)
            .without("what its dimmers take")
            .comment("2000", "the most that its supply may be asked for, if it has one of its own");

    private static final Key<Boolean> UNUSED = Key.flag("unused")
            .otherwise(false, "false")
            .comment("true", "no light is on this output; the same as leaving it out");

    private static final Key<Mounting.Side> HANGS = Key.word("hangs", Mounting.Side.class)
            .otherwise(Mounting.Side.ABOVE, "above")
            .comment("\"below\"", "where the light is, for the live page: above, below, left, right or behind");

    /** A plain light. */
    static final Section SECTION = Section.of(
            "dimmers.NAME",
            "a plain light on the controller's PWM outputs, numbered from 0",
            Key.own("channel", "whole number, 0 to " + HIGHEST_CHANNEL).example("0", "of a white light"),
            Key.own("channels", "three whole numbers, 0 to " + HIGHEST_CHANNEL)
                    .example("[1, 2, 3]", "of a plain colour strip: red, green, blue; a zone of one pixel"),
            Key.own("volts", "number, 1 to 60").needed().example("24", "of its supply"),
            Key.own("full_mA", "whole number, 1 to " + MOST_MILLIAMPS).needed().example("800", "one channel at full"),
            CEILING,
            HANGS,
            UNUSED);

    static DimmerEntry read(String name, Table light, double stripVolts) {
        Table table = light.as(SECTION);
        if (table.get(UNUSED)) {
            return new DimmerEntry(
                    name, channels(table), stripVolts, 0, OptionalInt.empty(), true, Mounting.Side.ABOVE);
        }
        DimmerEntry entry = new DimmerEntry(
                name,
                channels(table),
                table.needNumber("volts", 1, SupplySection.MOST_VOLTS),
                table.needWhole("full_mA", 1, MOST_MILLIAMPS),
                table.find(CEILING).map(OptionalInt::of).orElse(OptionalInt.empty()),
                false,
                table.get(HANGS));
        if (entry.volts == stripVolts && entry.ceilingMilliamps.isPresent()) {
            table.mistake(
                    "ceiling_mA",
                    "is for a supply of its own, but the strip's supply has " + Wording.number(stripVolts) + " V too",
                    "set ceiling_mA in [supply] for both");
        }
        return entry;
    }

    /** A channel without a light. */
    static DimmerEntry unused(int channel, double stripVolts) {
        return new DimmerEntry("", List.of(channel), stripVolts, 0, OptionalInt.empty(), true, Mounting.Side.ABOVE);
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
                    "channel",
                    "cannot be used together with channels",
                    "keep channel for a white light, channels for a colour strip");
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
