package dev.lampwright.page;

import com.sun.net.httpserver.HttpServer;
import dev.lampwright.config.Config;
import dev.lampwright.config.PageSettings;
import dev.lampwright.config.TokenFiles;
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
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;

/** The server of the live pages: a thread for each viewer and a few for all other requests, and never more. */
final class PageServer implements RetriedServer.Server {
    private static final int OTHER_REQUESTS = 8;
    private static final int BACKLOG = 64;

    private final HttpServer server;
    private final ExecutorService threads;
    private final Seats seats;
    private final PageSettings settings;
    private final PageTokens tokens;
    private final AccessCheck door;
    private final Supplier<Map<String, Daemon>> daemons;
    private final Advice advice;
    private final Workshop workshop;
    private final Handbook handbook;
    private final Map<String, Sheet> sheets;
    private final Optional<ShelfPage> shelf;
    private final Map<String, RigPage> pages = new ConcurrentHashMap<>();
    private final Map<String, RigTokens> rigTokens = new HashMap<>();
    private boolean readAgain;

    /**
     * Opens the page.
     *
     * @param settings where, and for whom
     * @param daemons what it shows, by the name of the rig; the only one by none
     * @param rejected why rigs do not run, by name, for the shelf at {@code /}; empty where there is one rig, whose page is there
     * @param advice what there is to say of a configuration
     * @param workshop what else people can do
     * @param handbook what it links to
     * @throws IOException if it cannot be opened; the message says why and what to do
     */
    PageServer(
            PageSettings settings,
            Supplier<Map<String, Daemon>> daemons,
            Optional<Supplier<Map<String, String>>> rejected,
            Advice advice,
            Workshop workshop,
            Handbook handbook)
            throws IOException {
        this.settings = settings;
        this.daemons = daemons;
        this.advice = advice;
        this.workshop = workshop;
        this.handbook = handbook;
        sheets = Sheets.all(handbook.exists());
        requireRoom(settings);
        tokens = PageTokens.read(settings.tokens());
        server = bound(settings);
        seats = new Seats(settings.viewers());
        door = new AccessCheck(settings.hosts(), tokens, server.getAddress().getPort(), settings.tls());
        threads = threads(settings.viewers() + OTHER_REQUESTS);
        server.setExecutor(threads);
        lookAround();
        shelf = rejected.map(why -> new ShelfPage(daemons, why, door, this::doorOfRig, seats, sheets));
        Site site = new Site(
                door,
                name -> Optional.ofNullable(pages.get(name)).<Site.Page>map(page -> page::answer),
                shelf.map(front -> front));
        server.createContext("/", site);
        server.start();
    }

    /** The page of a rig that a token opens, and no other. */
    private Optional<AccessCheck> doorOfRig(String token) {
        return pages.values().stream()
                .map(RigPage::door)
                .filter(rig -> rig.isOwn(token))
                .findFirst();
    }

    /** Has a page for each rig that there is now. To be called every second or so, by one thread. */
    void lookAround() {
        boolean again = readAgain;
        readAgain = false;
        Map<String, Daemon> now = daemons.get();
        rigTokens.keySet().retainAll(now.keySet());
        now.forEach((name, daemon) -> {
            boolean others = rigTokens
                    .computeIfAbsent(name, RigTokens::new)
                    .follow(daemon.tap().config().ownTokens(), again, System.nanoTime());
            if (others) {
                shut(name);
            }
        });
        pages.forEach((name, page) -> {
            if (!page.isOf(now.get(name))) {
                shut(name);
            }
        });
        now.forEach((name, daemon) -> pages.computeIfAbsent(name, key -> page(key, daemon)));
    }

    /** Whoever watches comes again, and is asked for what is needed by then. */
    private void shut(String name) {
        Optional.ofNullable(pages.remove(name)).ifPresent(RigPage::close);
    }

    /** The next look reads the files with the tokens of rigs again. */
    void readTokensAgain() {
        readAgain = true;
    }

    private RigPage page(String name, Daemon daemon) {
        RigTokens own = rigTokens.get(name);
        AccessCheck rigDoor = name.isEmpty() ? door : door.ofRig(name, own.tokens());
        TokenFiles opening = own.files().asking().isPresent() ? own.files() : settings.tokens();
        return new RigPage(
                name,
                daemon,
                rigDoor,
                seats,
                sheets,
                documents(name, daemon, opening),
                handbook,
                workshop.benches().of(name, daemon),
                workshop.fitters().of(name, daemon));
    }

    /**
     * The code carries the token that allows most on this page, so only who may ask gets to see it. That is the rig's own if it has one, since
     * who knows no more than that may not learn the one for all rigs.
     */
    private Map<String, PageHandler.Shown> documents(String rig, Daemon daemon, TokenFiles opening) {
        Supplier<Config> running = () -> daemon.tap().config();
        Map<String, Document> forAll = Map.of(
                "/wiring", PerConfig.lines(running, advice::wiring),
                "/plan.svg", PerConfig.svg(running, advice::drawing),
                "/check", PerConfig.lines(running, advice::warnings),
                "/preview", new LookPreview(daemon),
                "/history", new HistoryMessage(daemon::history, running));
        Map<String, PageHandler.Shown> all = new HashMap<>();
        forAll.forEach((path, document) -> all.put(path, new PageHandler.Shown(PageTokens.Right.WATCH, document)));
        all.put("/code.svg", new PageHandler.Shown(PageTokens.Right.ASK, query -> code(rig, opening)));
        return all;
    }

    private Optional<StaticFile> code(String rig, TokenFiles opening) throws IOException {
        return PageAddress.code(settings, server.getAddress().getPort(), rig, opening)
                .map(svg -> new StaticFile("image/svg+xml", svg.getBytes(StandardCharsets.UTF_8)));
    }

    /** Whether the files still contain the tokens with which this was opened. */
    boolean hasItsToken() {
        try {
            return PageTokens.read(settings.tokens()).sameAs(tokens);
        } catch (IOException e) {
            return false;
        }
    }

    /** Before the token is read, so that repeated attempts at an address try nothing else. */
    static void requireRoom(PageSettings settings) throws IOException {
        try {
            PortProbe.require(where(settings));
        } catch (IOException e) {
            throw new IOException(
                    settings.address().getHostAddress() + " port " + settings.port() + " is not available ("
                            + e.getMessage() + "); choose another page.port or page.address",
                    e);
        }
    }

    static HttpServer bound(PageSettings settings) throws IOException {
        ServerLimits.set();
        return HttpServer.create(where(settings), BACKLOG);
    }

    private static InetSocketAddress where(PageSettings settings) {
        return new InetSocketAddress(settings.address(), settings.port());
    }

    /** No request waits in a queue: without a free thread it is cut off at once. */
    static ExecutorService threads(int most) {
        AtomicInteger count = new AtomicInteger();
        ThreadFactory factory = task -> {
            Thread thread = new Thread(task, "page " + count.incrementAndGet());
            thread.setDaemon(true);
            return thread;
        };
        return new ThreadPoolExecutor(0, most, 10, TimeUnit.SECONDS, new SynchronousQueue<>(), factory);
    }

    /** Its address for a browser on this machine. */
    String url() {
        return url(settings, server.getAddress().getPort());
    }

    /** The address of a page for a browser on this machine. */
    static String url(PageSettings settings, int port) {
        InetAddress address = settings.address();
        InetAddress host = address.isAnyLocalAddress() ? InetAddress.getLoopbackAddress() : address;
        String name = host.getHostAddress().contains(":") ? "[" + host.getHostAddress() + "]" : host.getHostAddress();
        return "http://" + name + ":" + port + "/";
    }

    /** Its address for browsers on other machines; empty if they cannot reach it, or if this machine has no address yet. */
    String urlForOthers() {
        try {
            return PageAddress.forOthers(settings, server.getAddress().getPort());
        } catch (IOException e) {
            return "";
        }
    }

    /** Closes the page. Viewers notice by the end of the stream. */
    @Override
    public void close() {
        shelf.ifPresent(ShelfPage::close);
        pages.values().forEach(RigPage::close);
        server.stop(0);
        threads.shutdownNow();
    }
}
