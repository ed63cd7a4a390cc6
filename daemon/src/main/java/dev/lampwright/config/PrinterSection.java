package dev.lampwright.config;

import dev.lampwright.printer.Binding;
import dev.lampwright.printer.Bindings;
import dev.lampwright.printer.Quantity;
import dev.lampwright.printer.Source;
import dev.lampwright.printer.StateBinding;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The section {@code [printer]} with those within.
 *
 * @param silentAfter how long nothing may be heard
 * @param ambientC temperature of the room, in °C
 * @param bindings where the printer says what
 */
record PrinterSection(Duration silentAfter, double ambientC, Bindings bindings) {
    static PrinterSection read(Table table) {
        double silentAfterS = table.number("silent_after_s", 0.1, 86_400, 20);
        double ambientC = table.number("ambient_C", -40, 60, 22);
        return new PrinterSection(Duration.ofMillis(Math.round(silentAfterS * 1000)), ambientC, bindings(table));
    }

    private static Bindings bindings(Table table) {
        List<StateBinding> states = table.has("state") ? StateSection.read(table.tableOrTables("state")) : List.of();
        Map<Quantity, List<Binding>> readings = ReadingsSection.read(table.table("readings"));
        if (states.isEmpty() && readings.isEmpty() && table.right()) {
            table.mistake(
                    "readings",
                    "is missing or empty, and so is printer.state",
                    "say where the printer tells something, for instance"
                            + " bed.actual_C = { topic = \"shop/alder/heat\", at = \"/plate/now\" }");
        }
        Optional<Source> faultText =
                table.has("fault_text") ? Optional.of(SourceKeys.read(table.table("fault_text"))) : Optional.empty();
        return new Bindings(states, readings, EventsSection.read(table.table("events")), faultText);
    }
}
