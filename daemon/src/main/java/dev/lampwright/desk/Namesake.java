package dev.lampwright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.json.Json;
import dev.lampwright.upkeep.Printable;
import dev.lampwright.upkeep.Trouble;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Detects another daemon with the same topics on the broker: both would carry out asks, and each would overwrite what the other reports. A
 * retained status does not count, as it may be an earlier run's; nor does a last will. Safe for many threads.
 */
public final class Namesake {
    private static final Logger LOG = LoggerFactory.getLogger(Namesake.class);
    /** A daemon reports every five seconds. */
    private static final long GONE_NANOS = TimeUnit.SECONDS.toNanos(20);

    private static final int LONGEST_HOST = 100;

    private final Signature own;
    private final Trouble trouble = new Trouble(LOG);
    private long sawAt;

    /**
     * Starts without having seen another.
     *
     * @param own who we are
     */
    public Namesake(Signature own) {
        this.own = own;
    }

    /**
     * A status has come on our own topic.
     *
     * @param topic the topic
     * @param payload the status
     * @param retained whether it was retained
     * @param nanos the monotonic time, in ns
     */
    public synchronized void saw(String topic, byte[] payload, boolean retained, long nanos) {
        if (retained) {
            return;
        }
        Json.read(new String(payload, StandardCharsets.UTF_8))
                .filter(this::isOfAnother)
                .ifPresent(status -> tell(topic, status, nanos));
    }

    private boolean isOfAnother(JsonNode status) {
        return status.path("online").asBoolean(false)
                && !status.path("run").asText("").equals(own.run());
    }

    private void tell(String topic, JsonNode status, long nanos) {
        sawAt = nanos;
        String host = Printable.beginning(status.path("host").asText(""), LONGEST_HOST);
        trouble.begins(
                topic,
                "another Lampwright" + where(host) + " reports on " + topic
                        + " too: both do what is asked there; stop one of them, or give each its own desk.prefix",
                nanos);
    }

    private String where(String host) {
        if (host.isEmpty()) {
            return "";
        }
        return host.equals(own.host()) ? " on this computer" : " on " + host;
    }

    /**
     * Checks whether the other daemon is gone. Call about once a second.
     *
     * @param nanos the monotonic time, in ns
     */
    public synchronized void lookAround(long nanos) {
        if (trouble.isOn() && nanos - sawAt >= GONE_NANOS) {
            trouble.ends("no other Lampwright reports on our topics any more");
        }
    }
}
