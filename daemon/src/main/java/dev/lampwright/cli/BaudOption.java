package dev.lampwright.cli;

import picocli.CommandLine.Option;

/** The option {@code --baud}. */
final class BaudOption {
    @Option(
            names = "--baud",
            paramLabel = "N",
            defaultValue = "500000",
            converter = OptionValues.Baud.class,
            description = "Bits per second, as the firmware was built for. Default: ${DEFAULT-VALUE}.")
    private int baud;

    /** Bits per second. */
    int baud() {
        return baud;
    }
}
