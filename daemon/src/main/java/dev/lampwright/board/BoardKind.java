package dev.lampwright.board;

import dev.lampwright.protocol.Here;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The boards that the reference firmware runs on, and its capabilities on each ({@code firmware-notes/README.md}). */
public enum BoardKind {
    /** A board with an ATmega328P, with 5 V pins. */
    ATMEGA328P("ATmega328P", 5, 1, 1200, 6),
    /** A board with an RP2040, with 3.3 V pins (RP2040 datasheet, IOVDD of the usual boards). */
    RP2040("RP2040", 3.3, 8, 12_000, 6);

    private static final List<String> DIMMER_PINS = List.of("D6", "D5", "D9", "D10", "D11", "D3");

    private final String chip;
    private final double logicVolts;
    private final int outputs;
    private final int stripBytes;
    private final int dimmers;

    BoardKind(String chip, double logicVolts, int outputs, int stripBytes, int dimmers) {
        this.chip = chip;
        this.logicVolts = logicVolts;
        this.outputs = outputs;
        this.stripBytes = stripBytes;
        this.dimmers = dimmers;
    }

    /**
     * The board behind an answer, judged by its capabilities: the reference firmware reports nothing else about its board.
     *
     * @param here what a controller reports about itself
     * @return the board; empty for a controller that differs from all of these, and so runs other firmware
     */
    public static Optional<BoardKind> of(Here here) {
        return Arrays.stream(values())
                .filter(kind -> kind.outputs == here.outputs()
                        && kind.dimmers == here.dimmers()
                        && kind.stripBytes / 3 == here.mostPixels())
                .findFirst();
    }

    /**
     * Whether a port is named after it, as the package's device rule names ports.
     *
     * @param port the port's name
     * @return true if the name of its chip is in it
     */
    public boolean isNamedIn(String port) {
        return port.toLowerCase(Locale.ROOT).contains(chip.toLowerCase(Locale.ROOT));
    }

    /**
     * The name of its chip.
     *
     * @return as written by its manufacturer
     */
    public String chip() {
        return chip;
    }

    /**
     * The high level of its pins.
     *
     * @return in V
     */
    public double logicVolts() {
        return logicVolts;
    }

    /**
     * Data lines for the strip.
     *
     * @return 1 to 8
     */
    public int outputs() {
        return outputs;
    }

    /**
     * Bytes of strip that its firmware has room for: three per pixel, or four with white.
     *
     * @return above 0
     */
    public int stripBytes() {
        return stripBytes;
    }

    /**
     * The number of its dimmers.
     *
     * @return above 0
     */
    public int dimmers() {
        return dimmers;
    }

    /**
     * The pin of a dimmer.
     *
     * @param dimmer number of the dimmer, from 0
     * @return as printed on boards; {@code dimmer 7} for one that the board does not have
     */
    public String dimmerPin(int dimmer) {
        if (dimmer >= dimmers) {
            return "dimmer " + dimmer;
        }
        return this == RP2040 ? "GP" + (10 + dimmer) : DIMMER_PINS.get(dimmer);
    }

    /**
     * The pin of a data line.
     *
     * @param output number of the data line, from 0, below {@link #outputs}
     * @return as printed on boards
     */
    public String dataPin(int output) {
        return this == RP2040 ? "GP" + (2 + output) : "D4";
    }
}
