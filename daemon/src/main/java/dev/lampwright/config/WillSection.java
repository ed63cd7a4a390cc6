package dev.lampwright.config;

import dev.lampwright.printer.Bindings;
import java.util.List;

/** The section {@code [printer.will]}: where the broker reports the printer offline. */
final class WillSection {
    private static final String WANTED_GONE = "give the words that say so in an array, for instance [\"offline\"]";

    /** The printer's last will. */
    static final Section SECTION = Section.of(
                    "printer.will",
                    "the printer's last will, by which its broker reports at once that it is gone",
                    Key.own("gone", "array of words")
                            .needed()
                            .example("[\"offline\"]", "any other word means that it is present"))
            .after(SourceKeys.KEYS);

    private WillSection() {}

    static Bindings.OfWill read(Table table) {
        List<String> gone = table.as(SECTION).words("gone", WANTED_GONE);
        if (!table.has("gone")) {
            table.mistake("gone", "is missing", WANTED_GONE);
        }
        return new Bindings.OfWill(SourceKeys.read(table), gone);
    }
}
