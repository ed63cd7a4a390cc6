package dev.lampwright.config;

import dev.lampwright.payload.Source;
import dev.lampwright.printer.Bindings;
import dev.lampwright.printer.PrinterState;
import java.util.ArrayList;
import java.util.List;

/** The sections {@code [[printer.condition]]}: states shown by flags, codes or texts that are not state words themselves. */
final class ConditionSection {
    private static final String WANTED_STATE = "write for instance state = \"fault\"";
    private static final String WANTED_WORDS =
            "give words in an array, for instance is = [\"true\"], or not = [\"0\"] for any other word";
    private static final Key<Void> IS = Key.own("is", "array of words, numbers, true and false; `*` is any characters")
            .example("[\"true\"]", "what has to be there");
    private static final Key<Void> NOT = Key.own(
                    "not", "array of words, numbers, true and false; `*` is any characters")
            .comment(
                    "[\"0\"]",
                    "what must not be there: any other word meets the condition, empty text and null do not");

    /** A condition. */
    static final Section SECTION = Section.of(
                    "printer.condition",
                    "a state shown by flags, by a fault code or by a text; the first that is met counts before `printer.state`",
                    Key.own("state", "`" + String.join("`, `", StateSection.STATES.keySet()) + "`")
                            .needed()
                            .example("\"fault\"", "the state while the condition is met"),
                    IS,
                    NOT,
                    Key.own("and", "array of tables, each a place with `is` or `not`")
                            .comment(
                                    "[{ topic = \"shop/alder/flags\", at = \"/armed\", is = [\"true\"] }]",
                                    "what has to be met as well"))
            .after(SourceKeys.KEYS);

    /** An additional place of a condition. */
    static final Section AND = Section.of("printer.condition.and", "what has to be met as well", IS, NOT)
            .after(SourceKeys.KEYS);

    private ConditionSection() {}

    static List<Bindings.OfCondition> read(List<Table> tables) {
        return tables.stream().map(ConditionSection::read).toList();
    }

    private static Bindings.OfCondition read(Table place) {
        Table table = place.as(SECTION);
        if (!table.has("state")) {
            table.mistake("state", "is missing", WANTED_STATE);
        }
        PrinterState state = table.oneOf("state", StateSection.STATES).orElse(PrinterState.FAULT);
        List<Bindings.Sign> signs = new ArrayList<>();
        signs.add(sign(table));
        table.tables("and").forEach(more -> signs.add(sign(more.as(AND))));
        return new Bindings.OfCondition(state, signs);
    }

    private static Bindings.Sign sign(Table table) {
        Source source = SourceKeys.read(table);
        List<String> is = table.words("is", WANTED_WORDS);
        List<String> not = table.words("not", WANTED_WORDS);
        if (is.isEmpty() && not.isEmpty() && table.right()) {
            table.mistake("is", "is missing, and so is not", WANTED_WORDS);
        }
        return new Bindings.Sign(source, is, not);
    }
}
