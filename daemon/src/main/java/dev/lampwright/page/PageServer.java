package dev.lampwright.page;

import com.sun.net.httpserver.HttpServer;
import dev.lampwright.config.Config;
import dev.lampwright.config.PageSettings;
import dev.lampwright.engine.Daemon;
import dev.lampwright.http.PortProbe;
import dev.lampwright.http.RetriedServer;
import dev.lampwright.http.ServerLimits;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;

/** The server of one live page: a thread for each viewer and a few for all other requests; no more whatever comes. */
final class PageServer implements RetriedServer.Server {
    private static final int OTHER_REQUESTS = 8;
    private static final int BACKLOG = 64;

    private final HttpServer server;
    private final ExecutorService threads;
    private final Viewers viewers;
    private final TroubleLog troubles;
    private final Publisher publisher;
    private final PageSettings settings;
    private final PageTokens tokens;

    /**
     * Opens the page.
     *
     * @param settings where, and for whom
     * @param daemon what it shows
     * @param advice what there is to say of its configuration
     * @throws IOException if it cannot be opened; the message says why and what to do
     */
    PageServer(PageSettings settings, Daemon daemon, Advice advice) throws IOException {
        this.settings = settings;
        requireRoom(settings);
        tokens = PageTokens.read(settings);
        server = bound(settings);
        viewers = new Viewers(settings.viewers());
        troubles = TroubleLog.listening();
        publisher = new Publisher(daemon, viewers, troubles);
        AccessCheck door =
                new AccessCheck(settings.hosts(), tokens, server.getAddress().getPort(), settings.tls());
        threads = threads(settings.viewers() + OTHER_REQUESTS);
        server.setExecutor(threads);
        server.createContext("/", new PageHandler(door, daemon.desk(), publisher, viewers, documents(daemon, advice)));
        publisher.start();
        server.start();
    }

    /** The code carries the token that allows everything, so only who knows that gets to see it. */
    private Map<String, PageHandler.Shown> documents(Daemon daemon, Advice advice) {
        Supplier<Config> running = () -> daemon.tap().config();
        Map<String, Document> forAll = Map.of(
                "/wiring", PerConfig.lines(running, advice::wiring),
                "/plan.svg", PerConfig.svg(running, advice::drawing),
                "/check", PerConfig.lines(running, advice::warnings),
                "/preview", new LookPreview(daemon),
                "/history", new HistoryMessage(daemon::history, running));
        Map<String, PageHandler.Shown> all = new HashMap<>();
        forAll.forEach((path, document) -> all.put(path, new PageHandler.Shown(PageTokens.Right.WATCH, document)));
        all.put("/code.svg", new PageHandler.Shown(PageTokens.Right.ASK, query -> code()));
        return all;
    }

    private Optional<StaticFile> code() throws IOException {
        return PageAddress.code(settings, server.getAddress().getPort())
                .map(svg -> new StaticFile("image/svg+xml", svg.getBytes(StandardCharsets.UTF_8)));
    }

    /** Whether the files still hold the tokens that this was opened with. */
    boolean hasItsToken() {
        try {
            return PageTokens.read(settings).sameAs(tokens);
        } catch (IOException e) {
            return false;
        }
    }

    /** Before the token is read, so that a place which is tried again and again has nothing else tried with it. */
    private static void requireRoom(PageSettings settings) throws IOException {
        try {
            PortProbe.require(where(settings));
        } catch (IOException e) {
            throw new IOException(
                    settings.address().getHostAddress() + " port " + settings.port() + " cannot be had ("
                            + e.getMessage() + "); choose another page.port or page.address",
                    e);
        }
    }

    private static HttpServer bound(PageSettings settings) throws IOException {
        ServerLimits.set();
        return HttpServer.create(where(settings), BACKLOG);
    }

    private static InetSocketAddress where(PageSettings settings) {
        return new InetSocketAddress(settings.address(), settings.port());
    }

    /** None waits in a queue: a request for which there is no thread is cut off at once. */
    private static ExecutorService threads(int most) {
        AtomicInteger count = new AtomicInteger();
        ThreadFactory factory = task -> {
            Thread thread = new Thread(task, "page " + count.incrementAndGet());
            thread.setDaemon(true);
            return thread;
        };
        return new ThreadPoolExecutor(0, most, 10, TimeUnit.SECONDS, new SynchronousQueue<>(), factory);
    }

    /** Where a browser on this machine finds it. */
    String url() {
        InetAddress address = settings.address();
        InetAddress host = address.isAnyLocalAddress() ? InetAddress.getLoopbackAddress() : address;
        String name = host.getHostAddress().contains(":") ? "[" + host.getHostAddress() + "]" : host.getHostAddress();
        return "http://" + name + ":" + server.getAddress().getPort() + "/";
    }

    /** Shuts the page. Whoever watches is told by the end of the stream. */
    @Override
    public void close() {
        publisher.close();
        viewers.dismissAll();
        server.stop(0);
        threads.shutdownNow();
        troubles.close();
    }
}
