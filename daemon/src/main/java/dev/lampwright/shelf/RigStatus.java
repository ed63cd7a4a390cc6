package dev.lampwright.shelf;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.broker.OwnTopics;
import dev.lampwright.desk.Report;
import dev.lampwright.desk.Signature;
import dev.lampwright.json.Json;
import dev.lampwright.upkeep.Printable;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What a daemon reports about one rig, as far as a view of all rigs needs it. Texts are safe for a terminal; missing ones are empty.
 *
 * @param prefix its topic prefix
 * @param rig its name
 * @param host the computer that it runs on
 * @param run distinguishes one run of a daemon from every other
 * @param online false once the daemon has ended, or its broker has lost the connection to it
 * @param why why it is not online
 * @param at when it reported, by its computer's clock
 * @param page address of its live page
 * @param strip six hexadecimal digits for each colour along the strip
 * @param doing what the printer does; of several, the one that needs a person most
 * @param printers what each of several printers does, at least two; empty if there is one, which has no name
 * @param light what shows it
 */
public record RigStatus(
        String prefix,
        String rig,
        String host,
        String run,
        boolean online,
        String why,
        Optional<Instant> at,
        String page,
        String strip,
        Doing doing,
        List<Printer> printers,
        Light light) {
    private static final String STATUS = new OwnTopics("").status();
    private static final int MOST_BYTES = 1 << 16;
    private static final int LONGEST_NAME = 253;
    private static final int LONGEST_TEXT = 200;
    private static final int MOST_DIGITS = 6 * 64;
    /** More than a strip can show. */
    private static final int MOST_PRINTERS = 32;

    private static final Set<String> WITH_PROGRESS = Set.of("warming", "printing", "held");

    /** Keeps a copy of the list. */
    public RigStatus {
        printers = List.copyOf(printers);
    }

    /**
     * What the printer is doing.
     *
     * @param state one word
     * @param alarm the state of the alarm, one word
     * @param faultText what the printer says about its fault
     * @param silence why it is silent
     * @param progress progress of the job or the heat-up, 0 to 1; NaN if unknown
     * @param leftSeconds time until that is over, in s; NaN if unknown
     */
    public record Doing(
            String state, String alarm, String faultText, String silence, double progress, double leftSeconds) {}

    /**
     * One of several printers of a rig.
     *
     * @param name its name
     * @param doing what it does
     */
    public record Printer(String name, Doing doing) {}

    /**
     * What shows it.
     *
     * @param look name of the current look
     * @param link the state of the line to the controller, one word
     */
    public record Light(String look, String link) {
        /** Whether the controller shows what is sent to it. */
        public boolean isLit() {
            return link.equals("lit");
        }
    }

    /**
     * Reads a message.
     *
     * @param topic its topic
     * @param payload its content
     * @return empty if it is not the status of a lampwright
     */
    public static Optional<RigStatus> of(String topic, byte[] payload) {
        if (!topic.endsWith(STATUS) || payload.length > MOST_BYTES || payload.length == 0 || payload[0] != '{') {
            return Optional.empty();
        }
        String prefix = topic.substring(0, topic.length() - STATUS.length());
        return Json.read(new String(payload, StandardCharsets.UTF_8))
                .filter(node -> node.path("program").asText().equals(Signature.PROGRAM))
                .map(node -> of(prefix, node));
    }

    /**
     * What a daemon of this process reports.
     *
     * @param rig its name
     * @param signature who reports
     * @param report what it reports
     * @return the same as others read, without time, page and strip
     */
    public static RigStatus here(String rig, Signature signature, Report report) {
        return new RigStatus(
                "",
                rig,
                signature.host(),
                signature.run(),
                true,
                "",
                Optional.empty(),
                "",
                "",
                doing(report, report.printer()),
                report.printers().stream()
                        .filter(printer -> !printer.name().isEmpty())
                        .map(printer -> new Printer(printer.name(), doing(report, printer)))
                        .toList(),
                new Light(report.light().look(), report.lines().controller()));
    }

    private static Doing doing(Report report, Report.Printer printer) {
        return new Doing(
                printer.state().word(),
                printer.alarm().word(),
                printer.faultText(),
                printer.silence(),
                report.progress(printer),
                report.leftSeconds(printer));
    }

    private static RigStatus of(String prefix, JsonNode node) {
        String shown = Printable.beginning(prefix, LONGEST_NAME);
        return new RigStatus(
                shown,
                text(node, "rig", LONGEST_NAME),
                text(node, "host", LONGEST_NAME),
                text(node, "run", LONGEST_NAME),
                node.path("online").asBoolean(),
                text(node, "why", LONGEST_TEXT),
                instant(node.path("at").asText()),
                page(node.path("page").asText()),
                strip(node.path("strip_rgb").asText()),
                doing(node),
                printers(node.path("printers")),
                new Light(text(node, "look", LONGEST_TEXT), text(node, "link", LONGEST_TEXT)));
    }

    /** A printer says how far its job is as long as it says so, and the shelf shows that while it is at work. */
    private static Doing doing(JsonNode node) {
        String state = text(node, "state", LONGEST_TEXT);
        return new Doing(
                state,
                text(node, "alarm", LONGEST_TEXT),
                text(node, "fault_text", LONGEST_TEXT),
                text(node, "silence", LONGEST_TEXT),
                WITH_PROGRESS.contains(state) ? node.path("progress").asDouble(Double.NaN) : Double.NaN,
                node.path("left_s").asDouble(Double.NaN));
    }

    private static List<Printer> printers(JsonNode node) {
        List<Printer> printers = new ArrayList<>();
        node.properties().forEach(field -> {
            if (printers.size() < MOST_PRINTERS) {
                printers.add(new Printer(Printable.beginning(field.getKey(), LONGEST_NAME), doing(field.getValue())));
            }
        });
        return printers;
    }

    private static String text(JsonNode node, String key, int longest) {
        return Printable.beginning(node.path(key).asText(), longest);
    }

    private static Optional<Instant> instant(String text) {
        try {
            return Optional.of(Instant.parse(text));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    /** It becomes a link, so only a web address is accepted. */
    private static String page(String text) {
        return text.matches("https?://[\\w.:\\[\\]-]{1,253}/[\\w./%~-]{0,253}") ? text : "";
    }

    private static String strip(String text) {
        return text.length() <= MOST_DIGITS && text.matches("([0-9a-f]{6})*") ? text : "";
    }
}
