package dev.lampwright.config;

import java.util.OptionalInt;

/**
 * The section {@code [metrics]}.
 *
 * @param port TCP port of loopback on which figures are told; without one, nothing listens
 */
record MetricsSection(OptionalInt port) {
    private static final int MOST = 65_535;

    static MetricsSection read(Table table) {
        return new MetricsSection(table.wholeIfThere("port", 1, MOST));
    }
}
