package dev.lampwright.config;

import dev.lampwright.board.BoardKind;
import dev.lampwright.wiring.Surroundings;
import dev.lampwright.wiring.Wiring;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/** The section {@code [wiring]}: how the lights are wired. All of it may be left out. */
final class WiringSection {
    /** A wire next to a warm printer (common practice, no source). */
    private static final double USUAL_WIRE_C = 40;

    /** What a high-power port of USB 2.0 delivers (USB 2.0 specification, 7.2.1; from memory). */
    private static final double USB_PORT_MILLIAMPS = 500;

    /** A board with an ATmega328P and its USB chip (common practice, no source). */
    private static final double BOARD_MILLIAMPS = 50;

    /** Insulation of PVC (IEC 60204-1, table 6; from memory). */
    private static final double USUAL_INSULATION_C = 70;

    /** Small connectors of nylon, including their own heating (assumed; stated in the data sheets of most with 2.5 mm pitch). */
    private static final double USUAL_CONNECTOR_C = 85;

    private static final int MOST_BUNDLED = 1000;
    private static final double USUAL_VOLTS = 5;
    private static final double USUAL_COMPUTER_AMPS = 3;
    private static final double MOST_AMPS = 100;
    private static final double MILLIS = 1000;
    private static final String OWN = "own";

    /** How the strip's data gets from the board to the strip. */
    private enum Data {
        DIRECT,
        SHIFTED
    }

    private static final Key<Double> WIRE_C = Key.number("wire_C", 0, 90)
            .usual(USUAL_WIRE_C, "40")
            .example("40", "how warm the wires get, for their resistance");
    private static final Key<Double> AMBIENT_C = Key.number("ambient_C", 0, 90)
            .without("as `wire_C`")
            .example("40", "warmest air around wires, connectors and strip, for what they may carry");
    private static final Key<Double> INSULATION_C = Key.number("insulation_C", 50, 250)
            .usual(USUAL_INSULATION_C, "70")
            .comment("105", "what the wires' insulation is made for; 70 is PVC");
    private static final Key<Double> CONNECTOR_C = Key.number("connector_C", 50, 250)
            .usual(USUAL_CONNECTOR_C, "85")
            .comment("85", "what the connectors are made for, their own warming included");
    private static final Key<Integer> BUNDLED = Key.whole("bundled", 1, MOST_BUNDLED)
            .without("all pairs of wires there are")
            .comment("1", "pairs of wires that lie in one bundle");
    private static final Key<Double> LOGIC_V = Key.number("logic_V", 1, 5.5)
            .without("5, or 3.3 of an RP2040")
            .example("5.0", "high level of the controller's pins");
    private static final Key<Data> DATA = Key.word("data", Data.class)
            .usual(Data.DIRECT, "direct")
            .example("\"direct\"", "or \"shifted\", with a level shifter before the strip");
    private static final Key<Double> RATED_MA = Key.number("rated_mA", 1, MILLIS * MOST_AMPS)
            .usual(USB_PORT_MILLIAMPS, "500")
            .comment("500", "what its 5 V pin may give");
    private static final Key<Double> OWN_MA = Key.number("own_mA", 0, MILLIS * MOST_AMPS)
            .usual(BOARD_MILLIAMPS, "50")
            .comment("50", "what it takes itself");
    private static final Key<Double> INPUT_V = Key.number("input_V", 1, SupplySection.MOST_VOLTS)
            .usual(USUAL_VOLTS, "5")
            .comment("5", "what feeds its regulator");
    private static final Key<Double> AMPS =
            Key.number("amps", 0.01, MOST_AMPS).usual(USUAL_COMPUTER_AMPS, "3").example("3", "what it takes");

    /** How the lights are wired. */
    static final Section SECTION = Section.of(
            "wiring",
            "for `lampwright plan` only: how the lights are wired",
            WIRE_C,
            AMBIENT_C,
            INSULATION_C,
            CONNECTOR_C,
            BUNDLED,
            Key.own("supplies", "table"),
            Key.own("strip", "table"),
            Key.own("dimmers", "table"),
            Key.own("board", "table"),
            Key.own("computer", "table"));

    /** The controller's board. */
    static final Section BOARD =
            Section.of("wiring.board", "the controller's board", LOGIC_V, DATA, RATED_MA, OWN_MA, INPUT_V);

    /** The computer on which the daemon runs. */
    static final Section COMPUTER = Section.of(
            "wiring.computer",
            "the computer on which the daemon runs",
            AMPS,
            Key.own("supply", "`own`, or the name of a supply")
                    .without("own")
                    .example("\"own\"", "or the name of a supply above"));

    private WiringSection() {}

    /**
     * Reads the section.
     *
     * @param root the whole file
     * @param kind the controller's board
     * @param stripVolts voltage of the strip's supply
     * @param pixels pixels of the strip, 1 or more
     * @param dimmers name of the light on each dimmer, from channel 0 on
     * @return the wiring, with its defaults, which are reported nowhere else
     */
    static Wiring read(Table root, BoardKind kind, double stripVolts, int pixels, List<String> dimmers) {
        Table table = root.table("wiring");
        table.as(SECTION);
        double wireC = table.get(WIRE_C);
        List<Wiring.Supply> supplies = WiredSupplies.read(
                table.table("supplies"), volts(root.table("dimmers"), stripVolts), areVoltsSure(root));
        Wiring.Strip strip = WiredStrip.read(table.table("strip"), stripVolts, pixels);
        Table lights = table.table("dimmers");
        List<Wiring.Light> wired = dimmers.stream()
                .distinct()
                .filter(name -> !name.isEmpty())
                .filter(name -> !unused(root.table("dimmers"), name))
                .map(name -> WiredLight.read(name, outputs(dimmers, name), lights.table(name)))
                .toList();
        Surroundings around = surroundings(table, wireC, strip.points().size() + wired.size());
        Wiring.Board board = board(table.table("board"), kind);
        Wiring.Computer computer = computer(table.table("computer"), supplies);
        return new Wiring(wireC, around, supplies, strip, wired, board, computer, table.takeDefaults());
    }

    private static Surroundings surroundings(Table table, double wireC, int pairs) {
        double ambientC = table.get(AMBIENT_C.usual(wireC, Wording.number(wireC)));
        double insulationC = table.get(INSULATION_C);
        double connectorC = table.get(CONNECTOR_C);
        int bundled = table.get(BUNDLED.usual(pairs, Integer.toString(pairs)));
        return new Surroundings(ambientC, insulationC, connectorC, bundled);
    }

    /** Whether all lights and their voltages are known: a light with a mistake may be the one that a supply feeds. */
    private static boolean areVoltsSure(Table root) {
        return root.table("dimmers").right() && root.table("supply").right();
    }

    /** Voltage of each supply, by its index: the strip's first, then the others that the dimmers name, the lowest first. */
    private static List<Double> volts(Table dimmers, double stripVolts) {
        if (!dimmers.right()) {
            return List.of(stripVolts);
        }
        List<Double> others = dimmers.keys().stream()
                .filter(name -> !unused(dimmers, name))
                .map(name -> dimmers.table(name).needNumber("volts", 1, SupplySection.MOST_VOLTS))
                .filter(volts -> volts != stripVolts)
                .distinct()
                .sorted()
                .toList();
        return IntStream.rangeClosed(0, others.size())
                .mapToObj(i -> i == 0 ? stripVolts : others.get(i - 1))
                .toList();
    }

    private static boolean unused(Table dimmers, String name) {
        return dimmers.right() && dimmers.table(name).flag("unused").orElse(false);
    }

    private static List<Integer> outputs(List<String> dimmers, String name) {
        return IntStream.range(0, dimmers.size())
                .filter(i -> dimmers.get(i).equals(name))
                .boxed()
                .toList();
    }

    private static Wiring.Board board(Table table, BoardKind kind) {
        double usual = kind.logicVolts();
        double logicVolts = table.as(BOARD).get(LOGIC_V.usual(usual, Wording.number(usual)));
        Data data = table.get(DATA);
        double ratedAmps = table.get(RATED_MA) / MILLIS;
        double ownAmps = table.get(OWN_MA) / MILLIS;
        double inputVolts = table.get(INPUT_V);
        return new Wiring.Board(kind, logicVolts, data == Data.SHIFTED, ratedAmps, ownAmps, inputVolts);
    }

    private static Wiring.Computer computer(Table table, List<Wiring.Supply> supplies) {
        double amps = table.as(COMPUTER).get(AMPS);
        List<String> names = supplies.stream().map(Wiring.Supply::name).toList();
        String wanted = "give \"" + OWN + "\", or one of \"" + String.join("\", \"", names) + '"';
        if (!table.has("supply")) {
            return new Wiring.Computer(amps, table.defaultOf("supply", OptionalInt.empty(), OWN));
        }
        Optional<String> supply = table.text("supply", wanted);
        int index = supply.map(names::indexOf).orElse(-1);
        if (supply.isPresent() && index < 0 && !supply.get().equals(OWN)) {
            table.mistake("supply", "is " + Wording.quoted(supply.get()) + ", which is not a supply", wanted);
        }
        return new Wiring.Computer(amps, index < 0 ? OptionalInt.empty() : OptionalInt.of(index));
    }
}
