package dev.lampwright.config;

import dev.lampwright.printer.Bindings;
import java.util.List;

/** The section {@code [printer.will]}: where the broker says that the printer is gone. */
final class WillSection {
    private static final String WANTED_GONE = "give the words that say so in an array, for instance [\"offline\"]";

    private WillSection() {}

    static Bindings.OfWill read(Table table) {
        List<String> gone = table.words("gone", WANTED_GONE);
        if (!table.has("gone")) {
            table.mistake("gone", "is missing", WANTED_GONE);
        }
        return new Bindings.OfWill(SourceKeys.read(table), gone);
    }
}
