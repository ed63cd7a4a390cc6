package dev.lampwright.config;

import dev.lampwright.wiring.Wire;
import dev.lampwright.wiring.Wiring;
import java.util.Optional;

/** The keys of one wire to a light: {@code wire}, {@code connector_A} and {@code fuse_A}. */
final class WiredFeed {
    /** A light wire that most connectors take (common practice, no source). */
    private static final String USUAL_WIRE = "20 AWG";

    /** Shortest length that is reckoned with, in m. */
    static final double SHORTEST_M = 0.01;

    /** Longest length that is reckoned with, in m. */
    static final double LONGEST_M = 100;

    /** From a supply below the printer to its lights (common practice, no source). */
    static final double USUAL_M = 1;

    private static final double LEAST_AMPS = 0.1;
    private static final double MOST_AMPS = 100;

    private WiredFeed() {}

    static Wiring.Feed read(Table table) {
        Wire wire = wire(table);
        return new Wiring.Feed(
                wire,
                table.numberIfThere("connector_A", LEAST_AMPS, MOST_AMPS),
                table.numberIfThere("fuse_A", LEAST_AMPS, MOST_AMPS));
    }

    private static Wire wire(Table table) {
        Wire usual = Wire.parse(USUAL_WIRE);
        if (!table.has("wire")) {
            return table.defaultOf("wire", usual, USUAL_WIRE);
        }
        Optional<String> size = table.text("wire", Wire.WANTED);
        try {
            return size.map(Wire::parse).orElse(usual);
        } catch (IllegalArgumentException e) {
            table.mistake(
                    "wire", "is " + Wording.quoted(size.orElse("")) + ", which is no size of wire here", Wire.WANTED);
            return usual;
        }
    }
}
