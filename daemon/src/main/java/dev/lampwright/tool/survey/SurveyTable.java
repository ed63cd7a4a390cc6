package dev.lampwright.tool.survey;

import dev.lampwright.upkeep.Printable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

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
        List<String> lines = new ArrayList<>();
        for (Found found : proposal.found()) {
            String unit =
                    found.unit().word().isEmpty() ? "" : ", in " + found.unit().word();
            lines.add(found.role().word() + ": "
                    + shown(found.source().topicFilter() + ", " + found.source().place()) + unit);
            lines.add("    " + shown(found.reasons().stream().collect(Collectors.joining("; "))));
            found.doubts().forEach(doubt -> lines.add("    " + Remarks.doubt(doubt)));
            if (found.role() == Role.STATE) {
                StateWords.of(found.words(), found.meanings())
                        .known()
                        .forEach((state, words) ->
                                lines.add("    " + state.word() + ": " + shown(String.join(", ", words))));
            }
        }
        for (FoundOwn own : proposal.own().found()) {
            lines.add(own.key()
                    + (own.certain() ? ": " : "?: ")
                    + shown(own.source().topicFilter() + ", " + own.source().place())
                    + (own.unit().isEmpty() ? "" : ", in " + own.unit()));
            lines.add("    " + shown(String.join("; ", own.reasons())));
        }
        for (FoundCondition condition : proposal.conditions()) {
            lines.add("condition for " + condition.state().word() + ": "
                    + shown(condition.source().topicFilter() + ", "
                            + condition.source().place()));
            lines.add("    " + shown(String.join("; ", condition.reasons())));
        }
        Remarks.open(proposal).stream().map(SurveyTable::shown).forEach(lines::add);
        lines.addAll(Remarks.missing(proposal));
        Remarks.company(proposal).stream().map(SurveyTable::shown).forEach(lines::add);
        return lines;
    }
}
