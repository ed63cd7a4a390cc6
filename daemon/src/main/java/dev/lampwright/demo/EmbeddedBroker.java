package dev.lampwright.demo;

import io.moquette.broker.Server;
import io.moquette.broker.config.IConfig;
import io.moquette.broker.config.MemoryConfig;
import java.io.IOException;
import java.net.BindException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.util.Properties;

/** An MQTT broker in this process, on loopback only, on a port that it chooses itself, storing nothing on disk. */
final class EmbeddedBroker implements AutoCloseable {
    private static final int MOST_ATTEMPTS = 10;

    private Server server = new Server();
    private int port;

    /**
     * Starts listening.
     *
     * @throws IOException if no port of the loopback address is available
     */
    void start() throws IOException {
        for (int attempt = 1; !listens(freePort()); attempt++) {
            if (attempt == MOST_ATTEMPTS) {
                throw new IOException("the demo's own broker has found no free port on " + loopback());
            }
        }
    }

    /**
     * Where it listens.
     *
     * @return {@code mqtt://127.0.0.1:PORT}
     */
    String url() {
        return "mqtt://" + loopback() + ":" + port;
    }

    /** Moquette can choose a port by itself, but reports it only some time after binding, and not thread-safely. */
    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }

    /** Tries one port, which another process may just have taken. */
    private boolean listens(int wanted) throws IOException {
        Properties settings = new Properties();
        settings.setProperty(IConfig.HOST_PROPERTY_NAME, loopback());
        settings.setProperty(IConfig.PORT_PROPERTY_NAME, Integer.toString(wanted));
        settings.setProperty(IConfig.ALLOW_ANONYMOUS_PROPERTY_NAME, "true");
        settings.setProperty(IConfig.PERSISTENCE_ENABLED_PROPERTY_NAME, "false");
        settings.setProperty(IConfig.ENABLE_TELEMETRY_NAME, "false");
        Server candidate = new Server();
        try {
            candidate.startServer(new MemoryConfig(settings));
        } catch (BindException e) {
            candidate.stopServer();
            return false;
        }
        server = candidate;
        port = wanted;
        return true;
    }

    /** Netty takes seconds to shut down; nothing is on disk, so there is no need to wait for it. */
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
