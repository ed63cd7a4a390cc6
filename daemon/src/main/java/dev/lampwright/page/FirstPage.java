package dev.lampwright.page;

import com.sun.net.httpserver.HttpServer;
import dev.lampwright.config.PageSettings;
import dev.lampwright.http.RetriedServer;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The page of a process that has no configuration yet: the fitting, and nothing else. The live page has the same address later. If the page
 * cannot be opened, it is retried every few seconds, as long as {@link #lookAround} is called.
 */
public final class FirstPage implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(FirstPage.class);
    private static final int MOST_AT_ONCE = 16;

    private final RetriedServer<PageSettings, Open> standing;
    private final Fitter fitter;

    /** An open page. */
    private record Open(HttpServer server, ExecutorService threads) implements RetriedServer.Server {
        @Override
        public void close() {
            server.stop(0);
            threads.shutdownNow();
        }
    }

    /**
     * Opens it.
     *
     * @param settings where, and for whom
     * @param fitter fits the lights; this closes it
     */
    public FirstPage(PageSettings settings, Fitter fitter) {
        this.fitter = fitter;
        standing = new RetriedServer<>(this::open, "there is no page for the fitting", LOG, System::nanoTime);
        standing.follow(Optional.of(settings), server -> true);
    }

    private Open open(PageSettings settings) throws IOException {
        PageServer.requireRoom(settings);
        PageTokens tokens = PageTokens.read(settings.tokens());
        HttpServer server = PageServer.bound(settings);
        AccessCheck door =
                new AccessCheck(settings.hosts(), tokens, server.getAddress().getPort(), settings.tls());
        ExecutorService threads = PageServer.threads(MOST_AT_ONCE);
        server.setExecutor(threads);
        PageHandler handler = handler(door);
        server.createContext("/", new Site(door, name -> Optional.of(handler::answer), Optional.empty()));
        server.start();
        LOG.info(
                "there is no configuration yet; fit the lights at {}",
                PageServer.url(settings, server.getAddress().getPort()));
        return new Open(server, threads);
    }

    private PageHandler handler(AccessCheck door) {
        Handbook handbook = Handbook.in(Handbook.INSTALLED);
        Map<String, Sheet> sheets = new HashMap<>(Sheets.all(handbook.exists()));
        sheets.put("/", sheets.get(Sheets.FIT));
        return new PageHandler(
                door,
                PageHandler.Elsewhere.NOWHERE,
                Optional.empty(),
                Optional.empty(),
                Optional.of(fitter),
                (viewer, lastId) -> {},
                new Viewers(),
                new Seats(0),
                sheets,
                Map.of(),
                handbook);
    }

    /** Retries opening the page if that failed, if it is time. Call about once a second. */
    public void lookAround() {
        standing.lookAround();
    }

    /** Closes the page, and ends a fitting that is under way. */
    @Override
    public void close() {
        fitter.close();
        standing.close();
    }
}
