package dev.lampwright.config;

import dev.lampwright.wiring.Conductor;
import dev.lampwright.wiring.Wire;
import dev.lampwright.wiring.Wiring;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The keys of one wire to a light: its size and material, its connectors and its fuse. */
final class WiredFeed {
    /** A thin wire that fits most connectors (common practice, no source). */
    private static final String USUAL_WIRE = "20 AWG";

    /** Shortest length of a wire, in m. */
    static final double SHORTEST_M = 0.01;

    /** Longest length of a wire, in m. */
    static final double LONGEST_M = 100;

    /** From a supply below the printer to its lights (common practice, no source). */
    static final double USUAL_M = 1;

    private static final double LEAST_AMPS = 0.1;
    private static final double MOST_AMPS = 100;
    private static final double MOST_MILLIOHMS = 10_000;
    private static final double MILLI = 1e-3;

    /** Two contacts in each of two wires, each of 10 mΩ: what connectors of 2.5 mm pitch have when new (assumed). */
    private static final double USUAL_CONTACTS_MILLIOHMS = 40;

    private static final Key<Double> CONNECTOR =
            Key.number("connector_A", LEAST_AMPS, MOST_AMPS).example("3", "what its connectors are rated for");
    private static final Key<Double> FUSE =
            Key.number("fuse_A", LEAST_AMPS, MOST_AMPS).example("2.5", "in each red wire, at the supply");

    private static final Key<Conductor> CONDUCTOR = Key.word("conductor", Conductor.class)
            .usual(Conductor.COPPER, "copper")
            .comment("\"copper\"", "or \"tinned\", or \"cca\": copper-clad aluminium, as cheap wire often is");
    private static final Key<Double> CONTACTS = Key.number("contacts_mohm", 0, MOST_MILLIOHMS)
            .usual(USUAL_CONTACTS_MILLIOHMS, "40")
            .comment("40", "of all contacts there and back: four of 10 mΩ are assumed");
    private static final Key<Double> FUSE_OHMS = Key.number("fuse_mohm", 0, MOST_MILLIOHMS)
            .without("100 ÷ `fuse_A`: 0.1 V at its rating, assumed")
            .comment("40", "of the fuse and its holder, by its data sheet");

    /** The keys of each pair of wires. */
    static final List<Key<?>> KEYS = List.of(
            Key.own("wire", "size of a wire: `20 AWG` or `0.5 mm2`")
                    .without(USUAL_WIRE)
                    .example("\"20 AWG\"", "or \"0.5 mm2\"; red and black alike"),
            CONDUCTOR,
            CONNECTOR,
            FUSE,
            CONTACTS,
            FUSE_OHMS);

    private WiredFeed() {}

    static Wiring.Feed read(Table table) {
        Wire wire = wire(table);
        Conductor conductor = table.get(CONDUCTOR);
        OptionalDouble milliohms = number(table, FUSE_OHMS);
        return new Wiring.Feed(
                wire.of(conductor),
                number(table, CONNECTOR),
                number(table, FUSE),
                MILLI * table.get(CONTACTS),
                milliohms.isPresent() ? OptionalDouble.of(MILLI * milliohms.getAsDouble()) : milliohms);
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
                    "wire",
                    "is " + Wording.quoted(size.orElse("")) + ", which is not a size of wire here",
                    Wire.WANTED);
            return usual;
        }
    }
}
