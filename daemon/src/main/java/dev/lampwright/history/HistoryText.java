package dev.lampwright.history;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.json.Json;
import dev.lampwright.json.JsonObject;
import dev.lampwright.upkeep.Printable;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What has happened as the text of a file: a line of JSON for each entry, with a first line that names the format and a last line with the
 * number of lines, so that a partial file is not mistaken for a whole one.
 *
 * <pre>
 * {"format":"lampwright history 1","as_of":"2026-11-27T13:00:00Z"}
 * {"job":{"began":"2026-11-27T09:12:00Z","until":"2026-11-27T12:16:00Z","end":"done",…}}
 * {"fault":{…}}
 * {"span":{"state":"idle","from":…,"to":…}}
 * {"curve":{"from":…,"bed_C":[59.9,60.1],"nozzle_C":[215.0,214.8],"strip_mA":[98,120]}}
 * {"lines":6}
 * </pre>
 *
 * <p>Where printers have names, each line starts with {@code printer}: {@code {"printer":"alder","job":{…}}}.
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
    private static final String PRINTER = "printer";
    private static final int LONGEST_NAME = 40;
    /** The maximum number of printers: those of the configuration, and equally many that it had before. */
    static final int MOST_PRINTERS = 64;

    private HistoryText() {}

    /** What has happened, as text. */
    static String of(Accounts accounts) {
        List<String> lines = new ArrayList<>();
        lines.add(new JsonObject()
                .put(FORMAT, FORMAT_1)
                .put(AS_OF, accounts.asOf().toString())
                .text());
        accounts.byPrinter().forEach((printer, account) -> {
            account.jobs().forEach(job -> lines.add(line(printer, JOB, HistoryJson.of(job))));
            account.faults().forEach(fault -> lines.add(line(printer, FAULT, HistoryJson.of(fault))));
            account.spans().forEach(span -> lines.add(line(printer, SPAN, HistoryJson.of(span))));
            account.curves().forEach(piece -> lines.add(line(printer, CURVE, HistoryJson.of(piece))));
        });
        lines.add(new JsonObject().put(LINES, lines.size() + 1L).text());
        return String.join("\n", lines) + '\n';
    }

    private static String line(String printer, String key, JsonObject value) {
        return new JsonObject().putIfAny(PRINTER, printer).put(key, value).text();
    }

    /**
     * Reads what {@link #of} wrote.
     *
     * @param text any text
     * @return what has happened
     * @throws IllegalArgumentException if it is something else; the message says why and is meant to follow the name of the file
     */
    static Accounts read(String text) {
        List<String> lines = text.lines().toList();
        JsonNode first = lines.isEmpty() ? node("") : node(lines.get(0));
        if (!first.path(FORMAT).asText().equals(FORMAT_1)) {
            throw new IllegalArgumentException("is not what this version of lampwright writes there");
        }
        if (node(lines.get(lines.size() - 1)).path(LINES).asLong() != lines.size()) {
            throw cutOff();
        }
        Map<String, Reading> readings = new LinkedHashMap<>();
        for (String line : lines.subList(1, lines.size() - 1)) {
            JsonNode node = node(line);
            String printer = Printable.beginning(node.path(PRINTER).asText(), LONGEST_NAME);
            readings.computeIfAbsent(printer, any -> new Reading()).take(node);
            if (readings.size() > MOST_PRINTERS) {
                throw new IllegalArgumentException("has more printers in it than lampwright keeps");
            }
        }
        Instant asOf = HistoryJson.instant(first, AS_OF);
        Map<String, Account> accounts = new LinkedHashMap<>();
        readings.forEach((printer, reading) -> accounts.put(printer, reading.account(asOf)));
        return new Accounts(asOf, accounts);
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
