package dev.lampwright.metrics;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import dev.lampwright.http.BrokenRequest;
import dev.lampwright.http.HostName;
import dev.lampwright.http.PortProbe;
import dev.lampwright.http.RetriedServer;
import dev.lampwright.http.ServerLimits;
import io.prometheus.metrics.expositionformats.PrometheusTextFormatWriter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Answers {@code GET /metrics} in the Prometheus text format, on loopback. Answers on its own thread, {@code metrics}, and takes no lock
 * that the frame loop or the link takes. A client that is slow to send its request is disconnected; an answer is so short that no client
 * can delay it.
 */
final class MetricsServer implements RetriedServer.Server {
    private static final Logger LOG = LoggerFactory.getLogger(MetricsServer.class);
    private static final String PATH = "/metrics";
    private static final int OK = 200;
    private static final int NOT_FOUND = 404;
    private static final int METHOD_NOT_ALLOWED = 405;
    /** A request for another server (RFC 9110, section 15.5.20). */
    private static final int MISDIRECTED = 421;

    private static final long NO_BODY = -1;

    private final PrometheusTextFormatWriter writer = PrometheusTextFormatWriter.create();
    private final ProcessMetrics metrics;
    private final HttpServer server;
    private final ExecutorService executor = Executors.newSingleThreadExecutor(MetricsServer::thread);

    private MetricsServer(ProcessMetrics metrics, HttpServer server) {
        this.metrics = metrics;
        this.server = server;
    }

    /**
     * Starts listening.
     *
     * @param port TCP port; 0 for a free one
     * @param metrics the figures
     * @return the server, which the caller closes
     * @throws IOException if it is not possible to listen on the port; the message says which, why and what to do
     */
    static MetricsServer start(int port, ProcessMetrics metrics) throws IOException {
        InetSocketAddress address = new InetSocketAddress(InetAddress.getLoopbackAddress(), port);
        ServerLimits.set();
        try {
            PortProbe.require(address);
            HttpServer server = HttpServer.create(address, 0);
            MetricsServer opened = new MetricsServer(metrics, server);
            opened.serve();
            return opened;
        } catch (IOException e) {
            throw new IOException(
                    "metrics.port " + port + " is not available (" + e.getMessage()
                            + "); choose another port, or stop the program that uses this one",
                    e);
        }
    }

    private void serve() {
        server.createContext("/", this::answer);
        server.setExecutor(executor);
        server.start();
    }

    private static Thread thread(Runnable work) {
        Thread thread = new Thread(work, "metrics");
        thread.setDaemon(true);
        return thread;
    }

    /**
     * Where it listens.
     *
     * @return the number of the port
     */
    int port() {
        return server.getAddress().getPort();
    }

    private void answer(HttpExchange exchange) throws IOException {
        try {
            if (!HostName.isOwn(host(exchange), Set.of())) {
                exchange.sendResponseHeaders(MISDIRECTED, NO_BODY);
            } else if (!PATH.equals(exchange.getRequestURI().getPath())) {
                exchange.sendResponseHeaders(NOT_FOUND, NO_BODY);
            } else if (!exchange.getRequestMethod().equals("GET")) {
                exchange.getResponseHeaders().set("Allow", "GET");
                exchange.sendResponseHeaders(METHOD_NOT_ALLOWED, NO_BODY);
            } else {
                tell(exchange);
            }
        } catch (RuntimeException e) {
            if (!BrokenRequest.isCauseOf(e)) {
                LOG.error("metrics could not be reported", e);
            }
        } finally {
            BrokenRequest.close(exchange::close);
        }
    }

    private static String host(HttpExchange exchange) {
        String host = exchange.getRequestHeaders().getFirst("Host");
        return host == null ? "" : host;
    }

    private void tell(HttpExchange exchange) throws IOException {
        ByteArrayOutputStream text = new ByteArrayOutputStream();
        writer.write(text, metrics.now());
        exchange.getResponseHeaders().set("Content-Type", writer.getContentType());
        exchange.sendResponseHeaders(OK, text.size());
        text.writeTo(exchange.getResponseBody());
    }

    @Override
    public void close() {
        server.stop(0);
        executor.shutdownNow();
    }
}
