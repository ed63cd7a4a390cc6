package dev.lampwright.testing;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * The reference firmware and the emulated boards, built from {@code firmware-notes}. Needs the Debian packages listed by the README's test
 * command.
 */
public final class Firmware {
    /** The supported chips. */
    public enum Chip {
        /** An ATmega328P, whose line is a UART. */
        ATMEGA328P,
        /** An RP2040, whose line is USB or a UART. */
        RP2040
    }

    /**
     * The firmware for one chip and one line.
     *
     * @param chip what it runs on
     * @param baud its rate on the line, or {@link #USB}
     */
    public record Build(Chip chip, int baud) {
        /** In place of a baud rate: the line is USB, which has none. */
        public static final int USB = 0;

        /** A baud rate for the host's configuration. USB accepts any. */
        public int hostBaud() {
            return baud == USB ? 115_200 : baud;
        }

        @Override
        public String toString() {
            return chip + (baud == USB ? " over USB" : " at " + baud + " baud");
        }
    }

    /** The usual build for each chip. */
    public static final List<Build> USUAL =
            List.of(new Build(Chip.ATMEGA328P, 500_000), new Build(Chip.RP2040, Build.USB));

    /** The builds for the ATmega328P at every supported baud rate, and for the RP2040 with each line. */
    public static final List<Build> BUILDS = Stream.concat(
                    Stream.of(9_600, 57_600, 115_200, 250_000, 500_000, 1_000_000)
                            .map(baud -> new Build(Chip.ATMEGA328P, baud)),
                    Stream.of(Build.USB, 1_000_000).map(baud -> new Build(Chip.RP2040, baud)))
            .toList();

    private static final Path NOTES = Path.of("..", "firmware-notes");
    private static final String PACKAGES =
            "make gcc gcc-avr avr-libc libsimavr-dev libelf-dev gcc-arm-none-eabi libnewlib-arm-none-eabi nodejs npm python3";

    private Firmware() {}

    /**
     * Builds the emulated board and its firmware if they are not built yet.
     *
     * @param build which
     * @return the command that runs the board, without its link
     */
    static List<String> board(Build build) {
        make(NOTES.resolve("emulator"), build.chip() == Chip.RP2040 ? "rp2040-board" : "all");
        return build.chip() == Chip.RP2040 ? rp2040(build) : atmega328p(build);
    }

    private static List<String> atmega328p(Build build) {
        make(NOTES.resolve("reference").resolve("avr"), "BAUD=" + build.baud(), "elf");
        Path image = NOTES.resolve("build").resolve("avr-" + build.baud()).resolve("lampwright.elf");
        return List.of(NOTES.resolve("build").resolve("board").toString(), "--elf", image.toString());
    }

    /** From the file that is copied onto a real board. */
    private static List<String> rp2040(Build build) {
        boolean usb = build.baud() == Build.USB;
        String line = usb ? "usb" : "uart";
        make(NOTES.resolve("reference").resolve("rp2040"), "LINE=" + line, "BAUD=" + build.hostBaud());
        Path image = NOTES.resolve("build")
                .resolve(usb ? "rp2040-usb" : "rp2040-uart-" + build.baud())
                .resolve("lampwright.uf2");
        return List.of(
                NOTES.resolve("emulator").resolve("rp2040").resolve("board.js").toString(),
                "--line",
                line,
                "--elf",
                image.toString());
    }

    private static void make(Path folder, String... arguments) {
        List<String> command = new ArrayList<>(List.of("make", "-s", "-C", folder.toString()));
        command.addAll(List.of(arguments));
        Tool.run(command, PACKAGES);
    }
}
