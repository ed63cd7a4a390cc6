package dev.lampwright.cli;

import picocli.CommandLine.Option;

/** The option {@code --baud}. */
final class BaudOption {
    /** As the firmware is usually built. */
    static final int USUAL = 500_000;

    @Option(
            names = "--baud",
            paramLabel = "N",
            defaultValue = "" + USUAL,
            converter = OptionValues.Baud.class,
            description = "Bits per second, as the firmware was built for. Default: ${DEFAULT-VALUE}.")
    private int baud;

    /** Bits per second. */
    int baud() {
        return baud;
    }
}
