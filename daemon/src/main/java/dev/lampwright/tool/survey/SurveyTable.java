package dev.lampwright.tool.survey;

import dev.lampwright.payload.Source;
import dev.lampwright.phrase.Phrase;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.upkeep.Printable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What was heard, as lines of text: a table of all values, then what was found and why. */
public final class SurveyTable {
    private static final int MOST_CHARS = 400;
    private static final int TOPIC_WIDTH = 34;
    private static final int PLACE_WIDTH = 22;
    private static final int RANGE_WIDTH = 18;
    private static final int LAST_WIDTH = 12;

    private SurveyTable() {}

    /**
     * The table of values.
     *
     * @param proposal what was heard
     * @param most how many values to show, at most
     * @return a header line and one for each value; one more if there are more; one for each lampwright that was heard
     */
    public static List<String> values(Proposal proposal, int most) {
        List<String> lines = new ArrayList<>();
        lines.add(line("topic", "place", "a second", "range", "last", "looks like"));
        proposal.rows().stream().limit(most).map(SurveyTable::line).forEach(lines::add);
        int more = proposal.rows().size() - most;
        if (more > 0) {
            lines.add("… and " + NumberText.count(more, "more value"));
        }
        Remarks.lampwrights(proposal).stream().map(SurveyTable::shown).forEach(lines::add);
        return lines;
    }

    private static String line(Proposal.Row row) {
        String rate = row.count() < 2 ? "once" : NumberText.number(row.perSecond());
        return line(row.topic(), row.place(), rate, row.range(), row.last(), row.looksLike());
    }

    private static String line(String topic, String place, String rate, String range, String last, String role) {
        return String.format(
                        Locale.ROOT,
                        "%s  %s  %8s  %s  %s  %s",
                        end(topic, TOPIC_WIDTH),
                        end(
                                place.equals("the payload itself") ? "" : place.replace("the payload itself, ", ""),
                                PLACE_WIDTH),
                        rate,
                        beginning(range, RANGE_WIDTH),
                        beginning(last, LAST_WIDTH),
                        role)
                .stripTrailing();
    }

    /** Text from outside, made to fit one column; of a long one the end is shown, because that is where names differ. */
    private static String end(String text, int width) {
        String shown = shown(text);
        return padded(shown.length() > width ? "…" + shown.substring(shown.length() - width + 1) : shown, width);
    }

    private static String beginning(String text, int width) {
        String shown = shown(text);
        return padded(shown.length() > width ? shown.substring(0, width - 1) + "…" : shown, width);
    }

    private static String shown(String text) {
        return Printable.beginning(text, MOST_CHARS);
    }

    private static String padded(String text, int width) {
        return text + " ".repeat(Math.max(0, width - text.length()));
    }

    /**
     * What was found, and why.
     *
     * @param proposal what was heard
     * @return two lines for each role and more for the state; then further remarks
     */
    public static List<String> reasons(Proposal proposal) {
        return Phrase.english(findings(proposal));
    }

    /**
     * The same with codes, by which those with texts of their own find them.
     *
     * @param proposal what was heard
     * @return a phrase for each line
     */
    public static List<Phrase> findings(Proposal proposal) {
        List<Phrase> lines = new ArrayList<>();
        proposal.found().forEach(found -> lines.addAll(about(found)));
        proposal.own().found().forEach(own -> lines.addAll(about(own)));
        for (FoundCondition condition : proposal.conditions()) {
            String place = place(condition.source());
            lines.add(Phrase.of(
                    "heard_condition",
                    "condition for " + condition.state().word() + ": " + place,
                    "state",
                    state(condition.state()),
                    "place",
                    place));
            lines.add(reason(String.join("; ", condition.reasons())));
        }
        Remarks.open(proposal).forEach(open -> lines.add(Phrase.of("heard_open", shown(open))));
        lines.addAll(Remarks.lacking(proposal));
        Remarks.others(proposal)
                .forEach(other -> lines.add(new Phrase(other.code(), other.values(), shown(other.english()))));
        return lines;
    }

    private static List<Phrase> about(Found found) {
        List<Phrase> lines = new ArrayList<>();
        String place = place(found.source());
        String unit = found.unit().word();
        lines.add(Phrase.of(
                unit.isEmpty() ? "heard_reading" : "heard_reading_unit",
                found.role().word() + ": " + place + (unit.isEmpty() ? "" : ", in " + unit),
                "role",
                found.role().phrase(),
                "place",
                place,
                "unit",
                unit));
        lines.add(reason(String.join("; ", found.reasons())));
        found.doubts()
                .forEach(doubt ->
                        lines.add(Phrase.of("heard_doubt", "    " + Remarks.doubt(doubt), "why", Phrase.plain(doubt))));
        if (found.role() == Role.STATE) {
            StateWords.of(found.words(), found.meanings()).known().forEach((state, words) -> {
                String all = shown(String.join(", ", words));
                lines.add(Phrase.of(
                        "heard_words", "    " + state.word() + ": " + all, "state", state(state), "words", all));
            });
        }
        return lines;
    }

    private static List<Phrase> about(FoundOwn own) {
        String place = place(own.source());
        boolean bare = own.unit().isEmpty();
        return List.of(
                Phrase.of(
                        own.certain() ? "heard_own" : "heard_own_unsure",
                        own.key() + (own.certain() ? ": " : "?: ") + place + (bare ? "" : ", in " + own.unit()),
                        "name",
                        own.key(),
                        "place",
                        place + (bare ? "" : " (" + own.unit() + ")")),
                reason(String.join("; ", own.reasons())));
    }

    private static String place(Source source) {
        return shown(source.topicFilter() + ", " + source.place());
    }

    private static Phrase reason(String why) {
        return Phrase.of("heard_reason", "    " + shown(why));
    }

    private static Phrase state(PrinterState state) {
        return Phrase.of("state_" + state.word(), state.word());
    }
}
