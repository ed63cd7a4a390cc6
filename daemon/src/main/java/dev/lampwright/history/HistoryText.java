package dev.lampwright.history;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.json.Json;
import dev.lampwright.json.JsonObject;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * What has happened as the text of a file: a line of JSON for each thing, with a first line that says what it is and a last that says how
 * many lines there are, so that a part of it is not taken for the whole.
 *
 * <pre>
 * {"format":"lampwright history 1","as_of":"2026-11-27T13:00:00Z"}
 * {"job":{"began":"2026-11-27T09:12:00Z","until":"2026-11-27T12:16:00Z","end":"done",…}}
 * {"fault":{…}}
 * {"span":{"state":"idle","from":…,"to":…}}
 * {"curve":{"from":…,"bed_C":[59.9,60.1],"nozzle_C":[215.0,214.8],"strip_mA":[98,120]}}
 * {"lines":6}
 * </pre>
 */
final class HistoryText {
    private static final String FORMAT = "format";
    private static final String FORMAT_1 = "lampwright history 1";
    private static final String AS_OF = "as_of";
    private static final String JOB = "job";
    private static final String FAULT = "fault";
    private static final String SPAN = "span";
    private static final String CURVE = "curve";
    private static final String LINES = "lines";

    private HistoryText() {}

    /** What has happened, as text. */
    static String of(Account account) {
        List<String> lines = new ArrayList<>();
        lines.add(new JsonObject()
                .put(FORMAT, FORMAT_1)
                .put(AS_OF, account.asOf().toString())
                .text());
        account.jobs().forEach(job -> lines.add(line(JOB, HistoryJson.of(job))));
        account.faults().forEach(fault -> lines.add(line(FAULT, HistoryJson.of(fault))));
        account.spans().forEach(span -> lines.add(line(SPAN, HistoryJson.of(span))));
        account.curves().forEach(piece -> lines.add(line(CURVE, HistoryJson.of(piece))));
        lines.add(new JsonObject().put(LINES, lines.size() + 1L).text());
        return String.join("\n", lines) + '\n';
    }

    private static String line(String key, JsonObject value) {
        return new JsonObject().put(key, value).text();
    }

    /**
     * Reads what {@link #of} wrote.
     *
     * @param text any text
     * @return what has happened
     * @throws IllegalArgumentException if it is something else; the message says why, to follow the name of the file
     */
    static Account read(String text) {
        List<String> lines = text.lines().toList();
        JsonNode first = lines.isEmpty() ? node("") : node(lines.get(0));
        if (!first.path(FORMAT).asText().equals(FORMAT_1)) {
            throw new IllegalArgumentException("is not what this version of lampwright writes there");
        }
        if (node(lines.get(lines.size() - 1)).path(LINES).asLong() != lines.size()) {
            throw cutOff();
        }
        Reading reading = new Reading();
        lines.subList(1, lines.size() - 1).forEach(line -> reading.take(node(line)));
        return reading.account(HistoryJson.instant(first, AS_OF));
    }

    private static JsonNode node(String line) {
        return Json.read(line).orElseThrow(HistoryText::cutOff);
    }

    private static IllegalArgumentException cutOff() {
        return new IllegalArgumentException("is cut off, or is not lines of JSON");
    }

    /** What has been read so far. */
    private static final class Reading {
        private final List<PastJob> jobs = new ArrayList<>();
        private final List<PastFault> faults = new ArrayList<>();
        private final List<StateSpan> spans = new ArrayList<>();
        private final List<CurvePiece> curves = new ArrayList<>();

        void take(JsonNode line) {
            if (line.has(JOB)) {
                jobs.add(HistoryJson.job(line.get(JOB)));
            } else if (line.has(FAULT)) {
                faults.add(HistoryJson.fault(line.get(FAULT)));
            } else if (line.has(SPAN)) {
                spans.add(HistoryJson.span(line.get(SPAN)));
            } else if (line.has(CURVE)) {
                curves.add(HistoryJson.piece(line.get(CURVE)));
            } else {
                throw cutOff();
            }
            if (jobs.size() > Logbook.MOST_JOBS
                    || faults.size() > Logbook.MOST_FAULTS
                    || spans.size() > Spans.MOST
                    || curves.size() > Curves.MOST) {
                throw new IllegalArgumentException("has more in it than lampwright keeps");
            }
        }

        Account account(Instant asOf) {
            return new Account(asOf, jobs, faults, spans, curves);
        }
    }
}
