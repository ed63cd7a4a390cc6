package dev.lampwright.config;

import dev.lampwright.wiring.Wire;
import dev.lampwright.wiring.Wiring;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

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

    private static final Key<Double> CONNECTOR =
            Key.number("connector_A", LEAST_AMPS, MOST_AMPS).example("3", "what its connectors are rated for");
    private static final Key<Double> FUSE =
            Key.number("fuse_A", LEAST_AMPS, MOST_AMPS).example("2.5", "in each red wire, at the supply");

    /** The keys of each pair of wires. */
    static final List<Key<?>> KEYS = List.of(
            Key.own("wire", "size of a wire: `20 AWG` or `0.5 mm2`")
                    .without(USUAL_WIRE)
                    .example("\"20 AWG\"", "or \"0.5 mm2\"; red and black alike"),
            CONNECTOR,
            FUSE);

    private WiredFeed() {}

    static Wiring.Feed read(Table table) {
        Wire wire = wire(table);
        return new Wiring.Feed(wire, number(table, CONNECTOR), number(table, FUSE));
    }

    private static OptionalDouble number(Table table, Key<Double> key) {
        return table.find(key).map(OptionalDouble::of).orElse(OptionalDouble.empty());
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
