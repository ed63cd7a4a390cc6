package dev.lampwright.config;

import dev.lampwright.payload.OwnQuantity;
import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.Source;
import dev.lampwright.printer.Bindings;
import dev.lampwright.signal.Room;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The section {@code [printer]}, including its subsections.
 *
 * @param silentAfter how long the printer may be quiet before it counts as silent
 * @param room where it is, and what counts as hot there
 * @param bindings where the printer reports what
 */
record PrinterSection(Duration silentAfter, Room room, Bindings bindings) {
    private static final Key<Double> SILENT_AFTER = Key.number("silent_after_s", 0.1, 86_400)
            .usual(20.0, "20")
            .example("20", "after this long without a message the state is silent");
    private static final Key<Double> AMBIENT =
            Key.number("ambient_C", -40, 60).usual(22.0, "22").example("22", "what bed and nozzle cool down to");
    private static final Key<Double> HOT_ABOVE = Key.number("hot_above_C", 30, 100)
            .without("43, or 5 above `ambient_C` if that is more")
            .example("43", "hotter and no longer heated is still hot; 43 °C may be touched for hours (ISO 13732-1)");

    /** The printer. */
    static final Section SECTION = Section.of(
            "printer",
            "the printer and where it reports what",
            SILENT_AFTER,
            AMBIENT,
            HOT_ABOVE,
            Key.own("fault_text", "place")
                    .without("the word that means a fault")
                    .comment(
                            "{ topic = \"shop/alder/trouble\", at = \"/text\" }",
                            "what is wrong, in the printer's own words, for the log"),
            Key.own("state", "table, or array of tables: the newest message counts")
                    .without("follows from the readings"),
            Key.own("condition", "array of tables: the first that is met counts before `printer.state`")
                    .without("`printer.state` alone counts"),
            Key.own("readings", "table of places"),
            Key.own("will", "table"),
            Key.own("events", "table of events"));

    /** Where the printer reports in its own words what is wrong. */
    static final Section FAULT_TEXT =
            new Section("printer.fault_text", "what is wrong, in the printer's own words", SourceKeys.KEYS);

    /**
     * Reads the section.
     *
     * @param table the section
     * @param path its name in messages: {@code printer}, or {@code printers.NAME}
     * @return the printer; the signals of its user-defined readings are not yet known to the file
     */
    static PrinterSection read(Table table, String path) {
        double silentAfterS = table.as(SECTION).get(SILENT_AFTER);
        Duration silentAfter = Duration.ofMillis(Math.round(silentAfterS * 1000));
        return new PrinterSection(silentAfter, room(table), bindings(table, path));
    }

    private static Room room(Table table) {
        double ambientC = table.get(AMBIENT);
        double usual = Math.max(Room.TOUCHABLE_C, ambientC + 5);
        double hotAboveC = table.get(HOT_ABOVE.usual(usual, Wording.number(usual)));
        if (hotAboveC <= ambientC) {
            table.mistake(
                    "hot_above_C", "is no more than ambient_C, so nothing would ever cool down to it", "give more");
        }
        return new Room(ambientC, hotAboveC);
    }

    private static Optional<Bindings.OfWill> will(Table table) {
        return table.has("will") ? Optional.of(WillSection.read(table.table("will"))) : Optional.empty();
    }

    private static Bindings bindings(Table table, String path) {
        List<Bindings.OfState> states =
                table.has("state") ? StateSection.read(table.tableOrTables("state")) : List.of();
        List<Bindings.OfCondition> conditions = ConditionSection.read(table.tables("condition"));
        Map<Quantity, List<Bindings.OfReading>> readings = ReadingsSection.read(table.table("readings"));
        Map<OwnQuantity, List<Bindings.OfReading>> own = OwnReadings.read(table.table("readings"));
        if (states.isEmpty() && conditions.isEmpty() && readings.isEmpty() && own.isEmpty() && table.right()) {
            table.mistake(
                    "readings",
                    "is missing or empty, and so is " + path + ".state",
                    "say where the printer reports something, for instance"
                            + " bed.actual_C = { topic = \"shop/alder/heat\", at = \"/plate/now\" }");
        }
        Optional<Source> faultText = table.has("fault_text")
                ? Optional.of(SourceKeys.read(table.table("fault_text").as(FAULT_TEXT)))
                : Optional.empty();
        return new Bindings(states, readings, own, EventsSection.read(table.table("events")), faultText, will(table))
                .withConditions(conditions);
    }
}
