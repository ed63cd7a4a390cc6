package dev.lampwright.page;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.lampwright.broker.BrokerState;
import dev.lampwright.desk.Report;
import dev.lampwright.engine.Daemon;
import dev.lampwright.link.LinkStatus;
import java.io.IOException;
import java.util.List;
import java.util.OptionalLong;

/** What the page is told, as JSON in one line. */
final class Messages {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private static final double NANOS_PER_SECOND = 1e9;

    private Messages() {}

    /** That something was not done. */
    static String refusal(String why) {
        return text(object().put("done", false).put("why", why));
    }

    /** That somebody may come in. */
    static String welcome() {
        return text(object().put("done", true));
    }

    /**
     * How the daemon does. A signal that is unknown is null.
     *
     * @param daemon whom to ask
     * @param report its own report
     * @param nowNanos the time
     */
    static String report(Daemon daemon, Report report, long nowNanos) {
        ObjectNode node = (ObjectNode) parsed(report.json());
        ObjectNode signals = node.putObject("signals");
        report.signals().forEach((name, value) -> {
            if (Double.isNaN(value)) {
                signals.putNull(name);
            } else {
                signals.put(name, value);
            }
        });
        LinkStatus link = daemon.link();
        node.put("link_trouble", link.trouble());
        node.put("frames_shown", link.framesShown());
        BrokerState broker = daemon.broker();
        node.put("broker_trouble", broker.phase() == BrokerState.Phase.CONNECTED ? "" : broker.reason());
        OptionalLong left = daemon.desk().wishes().lookLeft(nowNanos);
        left.ifPresent(nanos -> node.put("look_left_s", Math.ceil(nanos / NANOS_PER_SECOND)));
        return text(node);
    }

    /**
     * The most of the strip's current in each of some seconds, in mA.
     *
     * @param run tells seconds of this run from those of another
     * @param stretch the seconds
     */
    static String current(String run, CurrentHistory.Stretch stretch) {
        ObjectNode node = object().put("run", run).put("from_s", stretch.from());
        ArrayNode values = node.putArray("strip_mA");
        stretch.milliamps().forEach(values::add);
        return text(node);
    }

    /** What went wrong of late, the newest first. */
    static String troubles(List<TroubleLog.Entry> entries) {
        ArrayNode all = MAPPER.createArrayNode();
        for (TroubleLog.Entry entry : entries) {
            all.addObject()
                    .put("at_ms", entry.at().toEpochMilli())
                    .put("level", entry.level())
                    .put("text", entry.text());
        }
        return text(all);
    }

    /** An empty object, to be filled. */
    static ObjectNode object() {
        return MAPPER.createObjectNode();
    }

    /** JSON as text, in one line. */
    static String text(JsonNode node) {
        try {
            return MAPPER.writeValueAsString(node);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("numbers and words can always be written", e);
        }
    }

    /**
     * Reads the token that somebody enters.
     *
     * @param json an object with the key {@code token}
     * @return the token; empty if there is none
     */
    static String token(byte[] json) {
        try {
            return MAPPER.readTree(json).path("token").asText("");
        } catch (IOException e) {
            return "";
        }
    }

    private static JsonNode parsed(String json) {
        try {
            return MAPPER.readTree(json);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a report is JSON", e);
        }
    }
}
