package dev.lampwright.demo;

import io.moquette.broker.Server;
import io.moquette.broker.config.IConfig;
import io.moquette.broker.config.MemoryConfig;
import java.io.IOException;
import java.net.InetAddress;
import java.util.Properties;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** An MQTT broker in this process, on loopback only, on a port of its own choosing, keeping nothing on disk. */
final class EmbeddedBroker implements AutoCloseable {
    private static final long BIND_NANOS = TimeUnit.SECONDS.toNanos(5);
    private static final long POLL_NANOS = TimeUnit.MILLISECONDS.toNanos(1);

    private final Server server = new Server();

    /**
     * Starts listening.
     *
     * @throws IOException if no port of the loopback address can be had
     */
    void start() throws IOException {
        Properties settings = new Properties();
        settings.setProperty(IConfig.HOST_PROPERTY_NAME, loopback());
        settings.setProperty(IConfig.PORT_PROPERTY_NAME, "0");
        settings.setProperty(IConfig.ALLOW_ANONYMOUS_PROPERTY_NAME, "true");
        settings.setProperty(IConfig.PERSISTENCE_ENABLED_PROPERTY_NAME, "false");
        settings.setProperty(IConfig.ENABLE_TELEMETRY_NAME, "false");
        server.startServer(new MemoryConfig(settings));
        awaitPort();
    }

    /** Moquette learns the port that it has been given a moment after it is bound. */
    private void awaitPort() throws IOException {
        long deadline = System.nanoTime() + BIND_NANOS;
        while (server.getPort() == 0) {
            if (System.nanoTime() - deadline > 0) {
                throw new IOException("the demo's own broker has found no free port on " + loopback());
            }
            LockSupport.parkNanos(POLL_NANOS);
        }
    }

    /**
     * Where it listens.
     *
     * @return {@code mqtt://127.0.0.1:PORT}
     */
    String url() {
        return "mqtt://" + loopback() + ":" + server.getPort();
    }

    /** Netty takes seconds to come to rest; nothing is on disk, so nobody needs to wait for it. */
    @Override
    public void close() {
        Thread end = new Thread(server::stopServer, "broker-end");
        end.setDaemon(true);
        end.start();
    }

    private static String loopback() {
        return InetAddress.getLoopbackAddress().getHostAddress();
    }
}
