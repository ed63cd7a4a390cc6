package dev.lampwright.tool.fit;

import static dev.lampwright.testing.Bounds.assertAtMost;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.demo.MemoryController;
import dev.lampwright.protocol.Here;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Browser;
import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.Heartbeat;
import dev.lampwright.testing.PtyController;
import dev.lampwright.testing.Recording;
import dev.lampwright.testing.RunningDaemon;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The fitting of one of three rigs of a process, in a real browser: its controller alone is released and given back, its file alone changes, and the
 * others miss no frame. Whatever the machine itself delayed does not count.
 */
@Timeout(300)
class FitRigIT {
    private static final Duration LONG = Duration.ofSeconds(40);
    private static final int FRAMES_PER_SECOND = 20;
    private static final long TICK_NANOS = TimeUnit.SECONDS.toNanos(1) / FRAMES_PER_SECOND;
    private static final StripModel STRIP = new StripModel("RBG", 23, List.of(11.0, 12.0, 9.0), 0.7);
    private static final List<String> OTHERS = List.of("birch", "rowan");

    private static final String SHARED = """
            frames_per_s = %d
            broker.url = "mqtt://127.0.0.1:1"
            printer.state.topic = "shop/{rig}/job"
            printer.state.fault = ["ALARM*"]
            controller.port = "%s/{rig}"
            strip.pixels = 23
            strip.order = "RBG"
            page.port = %d
            metrics.port = %d
            # Every frame differs from the one before, so every one is sent.
            [looks.silent]
            layers = [{ paint = "ramp", colours = ["red", "lime", "blue"], cycle_s = 10 }]
            """;

    private static final String ALDER = """
            # the first one
            [zones]
            bed = "0-9"   # under the glass
            """;

    @TempDir
    private Path folder;

    private final Map<String, PtyController> controllers = new LinkedHashMap<>();
    private final Heartbeat heartbeat = new Heartbeat();
    private final Browser browser = Browser.start();
    private final int port = FreePort.find();
    private int metrics;
    private RunningDaemon daemon;

    @BeforeEach
    void start() throws IOException {
        Files.createDirectories(folder.resolve("shop/rigs"));
        metrics = Stream.generate(FreePort::find)
                .filter(other -> other != port)
                .findFirst()
                .orElseThrow();
        Files.writeString(folder.resolve("shop/shop.toml"), SHARED.formatted(FRAMES_PER_SECOND, folder, port, metrics));
        rig("alder", 1, ALDER);
        rig("birch", 2, "");
        rig("rowan", 3, "");
        heartbeat.start();
        daemon = RunningDaemon.start(folder.resolve("shop"));
        controllers.forEach((name, pty) -> Await.until(
                () -> name + " is lit: " + daemon.log(),
                () -> pty.recording().size() > 20 && !eyes(name).dark(),
                LONG));
    }

    private void rig(String name, long id, String text) throws IOException {
        Here board = MemoryController.BOARD;
        PtyController pty = new PtyController(
                folder.resolve(name),
                new Here(
                        1,
                        board.firmware(),
                        id,
                        board.mostPixels(),
                        board.mostPacketBytes(),
                        board.dimmers(),
                        board.credits(),
                        10_000,
                        false));
        pty.plug();
        controllers.put(name, pty);
        Files.writeString(file(name), text);
    }

    private Path file(String name) {
        return folder.resolve("shop/rigs/" + name + ".toml");
    }

    @AfterEach
    void stop() {
        browser.close();
        if (daemon != null) {
            daemon.close();
        }
        heartbeat.close();
        controllers.values().forEach(PtyController::close);
    }

    private RecordedEyes eyes(String name) {
        return new RecordedEyes(controllers.get(name).recording(), STRIP);
    }

    private void open(String rig) {
        browser.open("http://127.0.0.1:" + port + "/" + rig + "/fit.html");
        Await.until("the beginning", () -> browser.byId("begin").isDisplayed());
    }

    /** How many frames of each rig were not made. */
    private Map<String, Long> leftOut() {
        Map<String, Long> leftOut = new TreeMap<>();
        Matcher line = Pattern.compile("(?m)^\\w*frames_left_out_total\\{.*rig=\"(\\w+)\".*} (\\S+)$")
                .matcher(scraped());
        while (line.find()) {
            leftOut.put(line.group(1), (long) Double.parseDouble(line.group(2)));
        }
        assertEquals(3, leftOut.size(), "a count for each rig");
        return leftOut;
    }

    private String scraped() {
        try {
            return HttpClient.newHttpClient()
                    .send(
                            HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + metrics + "/metrics"))
                                    .build(),
                            HttpResponse.BodyHandlers.ofString())
                    .body();
        } catch (IOException e) {
            throw new AssertionError("no metrics", e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError("interrupted", e);
        }
    }

    /** The page and the log name the rig. */
    @Test
    void oneRigIsFittedAndTheOthersMissNothing() throws IOException {
        Map<String, String> shop = contents();
        open("alder");
        assertEquals("Fit the lights: alder", browser.text("name"));
        assertTrue(browser.text("start-file").endsWith(file("alder").toString()), browser.text("start-file"));
        Map<String, Integer> sizes = new TreeMap<>();
        controllers.forEach((name, pty) -> sizes.put(name, pty.recording().size()));
        Map<String, Long> before = leftOut();
        long begun = System.nanoTime();
        Person person = new Person(eyes("alder"))
                .say("What do you want to fit?", "1", "")
                .say("Write this", "y")
                .moves("bed", 12, 4);
        PageHands hands = new PageHands(browser, person);
        hands.press("#begin");
        hands.next(0);
        Await.until("alder is dark", eyes("alder")::dark);
        hands.answer(200);
        Await.until(() -> "the end: " + hands.view(), () -> browser.byId("end").isDisplayed(), LONG);
        Await.until("alder's own light", LONG, () -> !eyes("alder").dark());
        Await.until(
                () -> "the change: " + daemon.log(),
                () -> daemon.linesWith(0, "alder.toml is active").size() == 2,
                LONG);
        OTHERS.forEach(name -> requireNothingMissed(name, sizes.get(name), before.get(name), begun));
        shop.put("rigs/alder.toml", ALDER.replace("\"0-9\"   #", "\"12-4\"  #"));
        shop.put("rigs/alder.toml.old-1", ALDER);
        assertEquals(shop, contents());
        assertFalse(
                daemon.linesWith(0, "alder: a fitting has begun on the page").isEmpty(),
                () -> daemon.log().toString());
    }

    /** Every file of the shop that people write. */
    private Map<String, String> contents() throws IOException {
        Map<String, String> contents = new TreeMap<>();
        Path shop = folder.resolve("shop");
        try (Stream<Path> files = Files.walk(shop)) {
            for (Path each : files.filter(Files::isRegularFile).toList()) {
                contents.put(shop.relativize(each).toString(), Files.readString(each));
            }
        }
        return contents;
    }

    private void requireNothingMissed(String name, int from, long leftOut, long begun) {
        List<Recording.Entry> shown = controllers.get(name).recording().entries();
        List<Recording.Entry> since = shown.subList(from, shown.size());
        assertTrue(since.stream().allMatch(Recording.Entry::fromHost), name + " was on its own for a moment");
        long waited = heartbeat.sumBetween(begun, System.nanoTime());
        assertAtMost((waited + TICK_NANOS - 1) / TICK_NANOS, leftOut().get(name) - leftOut);
        assertEquals(
                1,
                daemon.linesWith(0, "the controller on " + folder.resolve(name) + " is lit")
                        .size(),
                name);
    }

    /** Each rig has its own hold, even in one tab, and the port of another rig is not taken from it. */
    @Test
    void twoRigsAreFittedAtTheSameTime() {
        open("alder");
        PageHands alder = new PageHands(browser, new Person(eyes("alder")));
        alder.press("#begin");
        alder.next(0);
        open("birch");
        assertEquals("Fit the lights: birch", browser.text("name"));
        PageHands birch = new PageHands(browser, new Person(eyes("birch")));
        birch.press("#begin");
        birch.next(0);
        Await.until("both are dark", () -> eyes("alder").dark() && eyes("birch").dark());
        assertFalse(eyes("rowan").dark());
        browser.open("http://127.0.0.1:" + port + "/alder/fit.html");
        Await.until("alder's question", () -> browser.byId("talk").isDisplayed());
        alder.press("#stop");
        Await.until("the end", () -> browser.text("end-title").equals("Stopped; the lights follow the printer again"));
        Await.until("alder's own light", LONG, () -> !eyes("alder").dark());
    }
}
