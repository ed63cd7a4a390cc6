package dev.lampwright.config;

/**
 * The section {@code [supply]}: what feeds the strip.
 *
 * @param volts its voltage
 * @param ceilingMilliamps the ceiling on its current, in mA
 */
record SupplySection(double volts, int ceilingMilliamps) {
    /** Highest voltage that is safe to touch: 60 V of direct current (IEC 62368-1, ES1; from memory). */
    static final double MOST_VOLTS = 60;

    /** What a high-power port of USB 2.0 delivers, in mA (USB 2.0 specification, 7.2.1; from memory). */
    private static final int USB_PORT = 500;

    private static final int MOST_MILLIAMPS = 65535;

    private static final Key<Double> VOLTS =
            Key.number("volts", 1, MOST_VOLTS).usual(5.0, "5").example("5.0", "its voltage");
    private static final Key<Integer> CEILING = Key.whole("ceiling_mA", 1, MOST_MILLIAMPS)
            .usual(USB_PORT, Integer.toString(USB_PORT))
            .example("1500", "the most that it and its wiring may be asked for");

    /** What feeds the strip. */
    static final Section SECTION = Section.of("supply", "what feeds the strip", VOLTS, CEILING);

    static SupplySection read(Table table) {
        return new SupplySection(table.as(SECTION).get(VOLTS), table.get(CEILING));
    }
}
