package dev.lampwright.page;

import dev.lampwright.config.PageSettings;
import dev.lampwright.engine.Daemon;
import dev.lampwright.http.RetriedServer;
import dev.lampwright.rig.Rigs;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The live page of a daemon, opened, closed and moved as configured. The daemon keeps running whatever happens to it. If the page cannot be
 * opened, it is retried every few seconds, as long as {@link #lookAround} is called.
 */
public final class LivePage implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(LivePage.class);

    /** A machine's addresses change: the daemon may start before the network is up. */
    private static final long ADDRESS_EVERY_NANOS = TimeUnit.SECONDS.toNanos(10);

    private final RetriedServer<PageSettings, PageServer> standing;
    private final Supplier<Map<String, Daemon>> daemons;
    private final LongSupplier nanoClock;
    private String urlForOthers = "";
    private long addressNanos;

    /**
     * Creates a page that is not open yet.
     *
     * @param daemon what it shows, and whom it asks
     * @param advice what there is to say of its configuration
     */
    public LivePage(Daemon daemon, Advice advice) {
        this(daemon, advice, System::nanoTime);
    }

    /**
     * Makes a page on which looks can be made, which is not there yet.
     *
     * @param daemon what it shows, and whom it asks
     * @param advice what there is to say of its configuration
     * @param workshop what else people can do
     */
    public LivePage(Daemon daemon, Advice advice, Workshop workshop) {
        this(() -> Map.of("", daemon), Optional.empty(), advice, workshop, System::nanoTime);
    }

    LivePage(Daemon daemon, Advice advice, LongSupplier nanoClock) {
        this(() -> Map.of("", daemon), Optional.empty(), advice, Workshop.NONE, nanoClock);
    }

    /**
     * Creates the pages of several rigs, which are not open yet.
     *
     * @param rigs the rigs that they show and ask
     * @param advice comments on their configurations
     * @param workshop what else people can do
     */
    public LivePage(Rigs rigs, Advice advice, Workshop workshop) {
        this(rigs::daemons, Optional.of(() -> rejected(rigs)), advice, workshop, System::nanoTime);
    }

    private static Map<String, String> rejected(Rigs rigs) {
        Map<String, String> rejected = new TreeMap<>();
        rigs.all().stream()
                .filter(rig -> rig.daemon().isEmpty())
                .forEach(rig -> rejected.put(rig.name(), rig.trouble()));
        return rejected;
    }

    LivePage(
            Supplier<Map<String, Daemon>> daemons,
            Optional<Supplier<Map<String, String>>> rejected,
            Advice advice,
            Workshop workshop,
            LongSupplier nanoClock) {
        this.daemons = daemons;
        this.nanoClock = nanoClock;
        addressNanos = nanoClock.getAsLong();
        standing = new RetriedServer<>(
                settings -> open(settings, daemons, rejected, advice, workshop),
                "there is no live page",
                LOG,
                nanoClock);
    }

    private static PageServer open(
            PageSettings settings,
            Supplier<Map<String, Daemon>> daemons,
            Optional<Supplier<Map<String, String>>> rejected,
            Advice advice,
            Workshop workshop)
            throws IOException {
        PageServer opened =
                new PageServer(settings, daemons, rejected, advice, workshop, Handbook.in(Handbook.INSTALLED));
        String others = opened.urlForOthers();
        LOG.info("the live page is at {}{}", opened.url(), others.isEmpty() ? "" : ", for other devices at " + others);
        return opened;
    }

    /**
     * Follows a configuration. If the page cannot be opened, the log says why. Reopens nothing unless something about it has changed.
     *
     * @param next the settings; empty for no page
     */
    public synchronized void follow(Optional<PageSettings> next) {
        standing.follow(next, PageServer::hasItsToken);
        standing.server().ifPresent(PageServer::readTokensAgain);
        lookUpAddress();
        tellAddress();
    }

    /**
     * Retries opening the page if that failed, if it is time, and opens and closes the pages of rigs as they start and stop. Call about
     * once a second.
     */
    public synchronized void lookAround() {
        standing.lookAround();
        standing.server().ifPresent(PageServer::lookAround);
        if (nanoClock.getAsLong() - addressNanos >= 0) {
            lookUpAddress();
        }
        tellAddress();
    }

    private void lookUpAddress() {
        addressNanos = nanoClock.getAsLong() + ADDRESS_EVERY_NANOS;
        urlForOthers = standing.server().map(PageServer::urlForOthers).orElse("");
    }

    /** Puts the page's address into each daemon's report. */
    private void tellAddress() {
        String url = urlForOthers;
        daemons.get().forEach((name, daemon) -> daemon.pageAt(url.isEmpty() ? "" : PageAddress.of(name, url)));
    }

    /**
     * Its address for a browser on this machine.
     *
     * @return the address; empty while there is none
     */
    public synchronized Optional<String> url() {
        return standing.server().map(PageServer::url);
    }

    /** Closes the page, if there is one. */
    @Override
    public synchronized void close() {
        standing.close();
    }
}
