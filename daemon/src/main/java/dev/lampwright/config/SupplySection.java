package dev.lampwright.config;

/**
 * The section {@code [supply]}: what feeds the strip.
 *
 * @param volts its voltage
 * @param ceilingMilliamps the most current that it may be asked for, in mA
 */
record SupplySection(double volts, int ceilingMilliamps) {
    /** Highest voltage that is safe to touch: 60 V of direct current (IEC 62368-1, ES1; from memory). */
    static final double MOST_VOLTS = 60;

    /** What a high-power port of USB 2.0 gives, in mA (USB 2.0 specification, 7.2.1; from memory). */
    private static final int USB_PORT = 500;

    private static final int MOST_MILLIAMPS = 65535;

    static SupplySection read(Table table) {
        double volts = table.number("volts", 1, MOST_VOLTS, 5);
        return new SupplySection(volts, table.whole("ceiling_mA", 1, MOST_MILLIAMPS, USB_PORT));
    }
}
