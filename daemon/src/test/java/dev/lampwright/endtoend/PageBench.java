package dev.lampwright.endtoend;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.Browser;
import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.PtyController;
import dev.lampwright.testing.Recording.Entry;
import dev.lampwright.testing.RunningDaemon;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;

/**
 * A printer, a broker, a running daemon with its live page, a controller behind a device node, and a browser. Faults are shown by the
 * built-in looks, and stay until they are reset (ISA-18.1 sequence M).
 */
final class PageBench implements AutoCloseable {
    private static final int BAUD = 500_000;
    private static final Duration LONG = Duration.ofSeconds(30);
    private static final int FULL = 255;
    /** The positions of red, green and blue in the three bytes of a pixel on the strip. */
    private static final int[] PLACES = {1, 0, 2};

    private static final String OWN_READINGS = """
            print_speed = { topic = "shop/birch/more", at = "/speed", unit = "percent", range = [0, 200] }
            box.humidity = { topic = "shop/birch/more", at = "/damp", unit = "% rh" }
            """;

    /** How much brighter faint light is drawn, and how much whiter bright light: the page's own choice. */
    private static final double EXPOSURE = 5;

    private static final double WHITENING = 0.3;

    /** Reads the middle of every drawn pixel, at one moment. */
    private static final String DRAWN = PageModule.text("shape.js") + """
            const canvas = document.getElementById('strip');
            const density = canvas.width / canvas.clientWidth;
            const at = places({ shape: 'straight', pixels: 30 }, canvas.clientWidth, canvas.clientHeight);
            const image = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height);
            return at.points.flatMap(({ x, y }) => {
              const from = 4 * (Math.floor(y * density) * image.width + Math.floor(x * density));
              return [...image.data.slice(from, from + 3)];
            });
            """;

    private final int port = FreePort.find();
    private final Mosquitto broker = Mosquitto.start();
    private final Birch birch = new Birch(broker);
    private final PtyController controller;
    private final Path config;
    private final Browser browser;
    private RunningDaemon daemon;

    /**
     * Sets it up, and opens the page.
     *
     * @param folder for files and the device node
     * @param pageLines additional lines of the section {@code [page]}
     */
    PageBench(Path folder, String... pageLines) {
        this(folder, UnaryOperator.identity(), pageLines);
    }

    /**
     * Sets it up with another configuration, and opens the page.
     *
     * @param folder for files and the device node
     * @param other changes the text of the configuration file
     * @param pageLines additional lines of the section {@code [page]}
     */
    PageBench(Path folder, UnaryOperator<String> other, String... pageLines) {
        controller = PtyController.pluggedIn(folder);
        config = configure(folder, other, List.of(pageLines));
        daemon = RunningDaemon.start(config);
        browser = Browser.start();
        awaitPage();
    }

    private Path configure(Path folder, UnaryOperator<String> other, List<String> pageLines) {
        String page = "\n[desk]\nprefix = \"lampwright/birch\"\n[alarm]\nsequence = \"M\"\n[page]\nport = " + port
                + "\n" + String.join("\n", pageLines) + "\n";
        Path file = birch.configure(folder, controller.port(), BAUD);
        try {
            String text = Files.readString(file)
                    .replace("[printer.readings]\n", "[printer.readings]\n" + OWN_READINGS)
                    .replaceFirst("fault = \\{ layers.*\n", "")
                    .replaceFirst("\\[\\[cues]]\nstate = \"fault\"\nlook = \"fault\"\nfade_s = 0\n", "");
            return Files.writeString(file, other.apply(text + page));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void awaitPage() {
        Await.until("the page's port", () -> FreePort.isListening(port));
    }

    /** The file of the daemon. */
    Path config() {
        return config;
    }

    Birch birch() {
        return birch;
    }

    Browser browser() {
        return browser;
    }

    RunningDaemon daemon() {
        return daemon;
    }

    PtyController controller() {
        return controller;
    }

    String url() {
        return "http://127.0.0.1:" + port + "/";
    }

    /** Opens the page and waits until it is live. */
    void open() {
        browser.open(url());
        awaitText("contact", "live");
    }

    /** Waits until an element of the page has a text. */
    void awaitText(String id, String text) {
        Await.until(
                () -> id + " says " + text + "; it says " + browser.text(id),
                () -> browser.text(id).equals(text),
                LONG);
    }

    /** Kills the daemon like a power cut. */
    void kill() {
        daemon.close();
    }

    /** Starts the daemon again. */
    void restart() {
        daemon = RunningDaemon.start(config);
        awaitPage();
    }

    /** What the page draws: red, green and blue of each pixel, 0 to 255. */
    List<Long> drawn() {
        return ((List<?>) browser.run(DRAWN))
                .stream().map(value -> ((Number) value).longValue()).toList();
    }

    /**
     * What a screen must show in the middle of each pixel of a frame: all of its light, of its own hue, encoded by IEC 61966-2-1:1999, 5.2.
     * Full light is full; a hundredth is drawn as if it were nearly five, and half of it as five sixths.
     */
    static List<Long> screen(Entry frame) {
        List<Integer> strip = frame.strip();
        return IntStream.range(0, strip.size()).mapToObj(i -> shown(strip, i)).toList();
    }

    private static long shown(List<Integer> strip, int index) {
        int pixel = index / PLACES.length * PLACES.length;
        double most = IntStream.of(PLACES)
                .mapToDouble(place -> told(strip.get(pixel + place)))
                .max()
                .orElseThrow();
        if (most == 0) {
            return 0;
        }
        double light = EXPOSURE * most / (1 + (EXPOSURE - 1) * most);
        double white = WHITENING * light * light;
        double own = told(strip.get(pixel + PLACES[index % PLACES.length])) / most;
        return encoded(light * ((1 - white) * own + white));
    }

    /** The page receives light as encoded bytes. */
    private static double told(int duty) {
        double byteOfLight = encoded(duty / (double) FULL) / (double) FULL;
        return byteOfLight <= 0.04045 ? byteOfLight / 12.92 : Math.pow((byteOfLight + 0.055) / 1.055, 2.4);
    }

    private static long encoded(double light) {
        return Math.round(FULL * (light <= 0.0031308 ? 12.92 * light : 1.055 * Math.pow(light, 1 / 2.4) - 0.055));
    }

    /** Whether what is drawn is what a screen must show, up to one rounding step. */
    static boolean alike(List<Long> drawn, List<Long> wanted) {
        return drawn.size() == wanted.size()
                && IntStream.range(0, drawn.size()).allMatch(i -> Math.abs(drawn.get(i) - wanted.get(i)) <= 1);
    }

    /** Waits until the controller shows a picture, and the page draws exactly the same. */
    void awaitOnBoth(Picture picture) {
        Await.until(
                () -> "controller and page show " + picture + "; the page draws " + drawn(),
                () -> controller
                        .recording()
                        .lastIs(frame ->
                                frame.fromHost() && picture.isOn(frame.strip()) && alike(drawn(), screen(frame))),
                LONG);
    }

    @Override
    public void close() {
        browser.close();
        daemon.close();
        controller.close();
        broker.close();
    }
}
