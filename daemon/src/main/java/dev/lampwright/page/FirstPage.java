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
    private final Optional<FirstToken> token;
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
     * @param port where it is
     * @param token lets in people at other computers; without it, the page is for browsers on this computer alone
     * @param fitter fits the lights; this closes it
     */
    public FirstPage(int port, Optional<FirstToken> token, Fitter fitter) {
        this.token = token;
        this.fitter = fitter;
        PageSettings here = PageSettings.forThisComputer(port);
        PageSettings settings = token.isPresent() ? here.onAllAddresses() : here;
        standing = new RetriedServer<>(this::open, "there is no page for the fitting", LOG, System::nanoTime);
        standing.follow(Optional.of(settings), server -> true);
    }

    private Open open(PageSettings settings) throws IOException {
        PageServer.requireRoom(settings);
        HttpServer server = PageServer.bound(settings);
        PageTokens tokens = token.map(FirstToken::tokens).orElse(PageTokens.NONE);
        AccessCheck door =
                AccessCheck.first(tokens, this::nextTokens, server.getAddress().getPort());
        ExecutorService threads = PageServer.threads(MOST_AT_ONCE);
        server.setExecutor(threads);
        PageHandler handler = handler(door);
        server.createContext("/", new Site(door, name -> Optional.of(handler::answer), Optional.empty()));
        server.start();
        LOG.info(
                "there is no configuration yet; fit the lights at {}{}",
                PageServer.url(settings, server.getAddress().getPort()),
                token.isEmpty() ? "" : ", or on your phone with the code that 'sudo lampwright page' prints");
        return new Open(server, threads);
    }

    /** Once the configuration is written: the tokens of the page that it describes. */
    private PageTokens nextTokens() {
        try {
            return PageTokens.read(fitter.nextTokens());
        } catch (IOException e) {
            LOG.warn("the browser that fits does not stay logged in: {}", e.getMessage());
            return PageTokens.NONE;
        }
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
