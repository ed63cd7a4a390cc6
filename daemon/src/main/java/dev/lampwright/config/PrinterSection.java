package dev.lampwright.config;

import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.Source;
import dev.lampwright.printer.Bindings;
import dev.lampwright.signal.Room;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The section {@code [printer]} with those within.
 *
 * @param silentAfter how long nothing may be heard
 * @param room where it stands, and what counts as hot there
 * @param bindings where the printer says what
 */
record PrinterSection(Duration silentAfter, Room room, Bindings bindings) {
    static PrinterSection read(Table table) {
        double silentAfterS = table.number("silent_after_s", 0.1, 86_400, 20);
        Duration silentAfter = Duration.ofMillis(Math.round(silentAfterS * 1000));
        return new PrinterSection(silentAfter, room(table), bindings(table));
    }

    private static Room room(Table table) {
        double ambientC = table.number("ambient_C", -40, 60, 22);
        double hotAboveC = table.number("hot_above_C", 30, 100, Math.max(Room.TOUCHABLE_C, ambientC + 5));
        if (hotAboveC <= ambientC) {
            table.mistake(
                    "hot_above_C", "is no more than ambient_C, so nothing would ever cool down to it", "give more");
        }
        return new Room(ambientC, hotAboveC);
    }

    private static Optional<Bindings.OfWill> will(Table table) {
        return table.has("will") ? Optional.of(WillSection.read(table.table("will"))) : Optional.empty();
    }

    private static Bindings bindings(Table table) {
        List<Bindings.OfState> states =
                table.has("state") ? StateSection.read(table.tableOrTables("state")) : List.of();
        Map<Quantity, List<Bindings.OfReading>> readings = ReadingsSection.read(table.table("readings"));
        if (states.isEmpty() && readings.isEmpty() && table.right()) {
            table.mistake(
                    "readings",
                    "is missing or empty, and so is printer.state",
                    "say where the printer tells something, for instance"
                            + " bed.actual_C = { topic = \"shop/alder/heat\", at = \"/plate/now\" }");
        }
        Optional<Source> faultText =
                table.has("fault_text") ? Optional.of(SourceKeys.read(table.table("fault_text"))) : Optional.empty();
        return new Bindings(states, readings, EventsSection.read(table.table("events")), faultText, will(table));
    }
}
