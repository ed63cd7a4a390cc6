package dev.lampwright.config;

import dev.lampwright.printer.Bindings;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The section {@code [printer.events]}, with a table for each event. */
final class EventsSection {
    private static final String WANTED_BEGIN =
            "give the printer's words for its beginning in an array, for instance [\"SNAP\"]";
    private static final String WANTED_END =
            "give the printer's words for its end in an array, for instance [\"SNAPPED\"]";
    private static final Key<Double> LASTS = Key.number("lasts_s", 0.1, 86_400)
            .otherwise(10.0, "10")
            .example("10", "how long it lasts at most, if its end is never reported");

    /** Something that begins and ends. */
    static final Section SECTION = Section.of(
                    "printer.events.NAME",
                    "something that begins and ends; `camera` keeps the light still meanwhile",
                    Key.own("begin", "array of words")
                            .needed()
                            .example("[\"SNAP\"]", "the printer's words for its beginning"),
                    Key.own("end", "array of words").example("[\"SNAPPED\"]", "the printer's words for its end"),
                    LASTS)
            .after(SourceKeys.KEYS);

    private EventsSection() {}

    static Map<String, Bindings.OfEvent> read(Table table) {
        Map<String, Bindings.OfEvent> events = new LinkedHashMap<>();
        table.keys().forEach(name -> events.put(name, event(table.table(name).as(SECTION))));
        return events;
    }

    private static Bindings.OfEvent event(Table table) {
        List<String> begin = table.words("begin", WANTED_BEGIN);
        List<String> end = table.words("end", WANTED_END);
        if (!table.has("begin")) {
            table.mistake("begin", "is missing", WANTED_BEGIN);
        }
        List<String> begins = begin.stream().map(EventsSection::folded).toList();
        end.stream().filter(word -> begins.contains(folded(word))).findFirst().ifPresent(word -> {
            String what = "has " + Wording.quoted(word) + ", which begin has already";
            table.mistake("end", what, "give each word once; case does not count");
        });
        double lastsS = table.get(LASTS);
        return new Bindings.OfEvent(SourceKeys.read(table), begin, end, Duration.ofMillis(Math.round(1000 * lastsS)));
    }

    private static String folded(String word) {
        return word.toLowerCase(Locale.ROOT);
    }
}
