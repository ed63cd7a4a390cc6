package dev.lampwright.testing;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * The reference firmware and the emulated board, built from {@code firmware-notes}. Needs the Debian packages {@code make},
 * {@code gcc}, {@code gcc-avr}, {@code avr-libc}, {@code libsimavr-dev} and {@code libelf-dev}.
 */
public final class Firmware {
    /** Every baud that the firmware is offered for: the table that {@code make -C firmware-notes sizes} prints. */
    public static final List<Integer> BAUDS = List.of(9_600, 57_600, 115_200, 250_000, 500_000, 1_000_000);

    private static final Path NOTES = Path.of("..", "firmware-notes");
    private static final String PACKAGES = "make gcc gcc-avr avr-libc libsimavr-dev libelf-dev";

    private Firmware() {}

    /**
     * Builds the firmware where it is not built yet.
     *
     * @param baud its rate on the line
     * @return the ELF file
     */
    public static Path elf(int baud) {
        make(NOTES.resolve("reference").resolve("avr"), "BAUD=" + baud, "elf");
        return NOTES.resolve("build").resolve("avr-" + baud).resolve("lampwright.elf");
    }

    /**
     * Builds the emulated board where it is not built yet.
     *
     * @return the program
     */
    static Path board() {
        make(NOTES.resolve("emulator"), "all");
        return NOTES.resolve("build").resolve("board");
    }

    private static void make(Path folder, String... arguments) {
        List<String> command = new ArrayList<>(List.of("make", "-s", "-C", folder.toString()));
        command.addAll(List.of(arguments));
        Tool.run(command, PACKAGES);
    }
}
