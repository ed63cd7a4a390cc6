package dev.lampwright.demo;

import java.nio.charset.StandardCharsets;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** A printer called alder that nobody has built. It reports to a broker twice a second. */
final class InventedPrinter implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(InventedPrinter.class);
    private static final long PUBLISH_EVERY_MS = 500;
    private static final int QOS = 0;

    private final String url;
    private final double speed;
    private final ScheduledExecutorService ticker =
            Executors.newSingleThreadScheduledExecutor(task -> new Thread(task, "alder"));
    private MqttClient client;
    private ScheduledFuture<?> publishing;
    private long startNanos;

    /**
     * Creates a printer that is still off.
     *
     * @param url where the broker is, {@code mqtt://host:port}
     * @param speed how many seconds of its job pass in one second
     */
    InventedPrinter(String url, double speed) {
        this.url = url;
        this.speed = speed;
    }

    /**
     * Connects, so that the broker has answered once before anything else connects to it. Publishes nothing yet.
     *
     * @throws MqttException if the broker does not answer
     */
    void connect() throws MqttException {
        client = new MqttClient(url.replace("mqtt://", "tcp://"), "alder", new MemoryPersistence());
        client.connect();
    }

    /** Switches it on. Call it once, after {@link #connect}. */
    void start() {
        startNanos = System.nanoTime();
        publishing = ticker.scheduleAtFixedRate(this::publish, 0, PUBLISH_EVERY_MS, TimeUnit.MILLISECONDS);
    }

    @Override
    public void close() {
        if (publishing != null) {
            publishing.cancel(true);
        }
        ticker.shutdownNow();
        try {
            if (client != null) {
                client.disconnectForcibly(0, 200);
                client.close();
            }
        } catch (MqttException e) {
            LOG.debug("alder was cut off", e);
        }
    }

    private void publish() {
        InventedJob job = InventedJob.at((System.nanoTime() - startNanos) * 1e-9 * speed);
        try {
            client.publish("shop/alder/heat", bytes(job.heatMessage()), QOS, true);
            client.publish("shop/alder/job", bytes(job.jobMessage()), QOS, true);
        } catch (MqttException e) {
            LOG.warn("alder cannot reach the broker at {}: {}", url, e.getMessage());
        }
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
