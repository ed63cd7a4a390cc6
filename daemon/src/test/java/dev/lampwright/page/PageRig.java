package dev.lampwright.page;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.demo.MemoryController;
import dev.lampwright.demo.MemoryLine;
import dev.lampwright.engine.Daemon;
import dev.lampwright.protocol.Frame;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.FreePort;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandler;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;

/** A daemon in this process with a live page and an in-memory controller. Nobody listens at its broker, so its state is silent. */
final class PageRig implements AutoCloseable {
    /** A token in the required form. */
    static final String TOKEN = "correct-horse-battery-staple";

    private static final int FREE_PORT = FreePort.find();
    private static final String FILE = """
            [broker]
            url = "mqtt://127.0.0.1:%d"
            [printer.state]
            topic = "shop/birch/job"
            printing = ["RUN"]
            [controller]
            port = "memory"
            [supply]
            ceiling_mA = 3000
            [dimmers]
            work = { channel = 0, volts = 24, full_mA = 800 }
            glow = { channels = [1, 2, 3], volts = 12, full_mA = 300, hangs = "behind" }
            spare = { channel = 4, unused = true }
            [looks.silent]
            layers = [{ paint = "ramp", colours = ["red", "lime", "blue"], cycle_s = 20 }, { zone = "glow", colour = "orange" }]
            dimmers = { work = 0.4 }
            """;

    private final HttpClient client =
            HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(10)).build();
    private final MemoryController controller = new MemoryController(MemoryController.BOARD, this::note);
    private final Daemon daemon;
    private final LivePage page;
    private final AtomicLong shown = new AtomicLong();

    /**
     * Assembles it and waits for the first frame.
     *
     * @param strip the lines of {@code [strip]}
     * @param pageLines the lines of {@code [page]}
     */
    PageRig(String strip, String pageLines) {
        Config config = config(strip, pageLines);
        MemoryLine line = new MemoryLine(controller, 500_000, System::nanoTime);
        daemon = new Daemon(config, same -> line);
        page = new LivePage(daemon, new Advice() {
            @Override
            public List<String> wiring(Config running) {
                return List.of(
                        "GOOD data level: fine",
                        "OVER fuse of <b>work</b>: " + running.fitting().pixels());
            }

            @Override
            public String drawing(Config running) {
                return "<svg xmlns=\"http://www.w3.org/2000/svg\"><title>"
                        + running.fitting().pixels() + "</title></svg>";
            }

            @Override
            public List<String> warnings(Config running) {
                return List.of("printer.readings: is missing");
            }
        });
        daemon.start();
        page.follow(config.page());
        Await.until("the first frame", () -> shown.get() > 0);
    }

    static PageRig usual() {
        return new PageRig("pixels = 30", "port = 0");
    }

    /** A configuration with these lines. */
    static Config config(String strip, String pageLines) {
        try {
            String text = FILE.formatted(FREE_PORT) + "\n[strip]\n" + strip + "\n[page]\n" + pageLines + "\n";
            return ConfigFile.read(text, "birch.toml");
        } catch (ConfigException e) {
            throw new AssertionError(e);
        }
    }

    private void note(MemoryController.Light light, int sequence, Frame frame, long nanos) {
        shown.incrementAndGet();
    }

    Daemon daemon() {
        return daemon;
    }

    LivePage page() {
        return page;
    }

    /** How many frames the controller has shown. */
    long shown() {
        return shown.get();
    }

    /** The page's address, with a slash at its end. */
    String url() {
        return page.url().orElseThrow();
    }

    int port() {
        return URI.create(url()).getPort();
    }

    /** A request to this page. */
    HttpRequest.Builder to(String path) {
        return HttpRequest.newBuilder(URI.create(url().replaceFirst("/$", "") + path))
                .timeout(Duration.ofSeconds(20));
    }

    HttpResponse<String> get(String path, String... headers) {
        return send(headers.length == 0 ? to(path) : to(path).headers(headers));
    }

    HttpResponse<String> post(String path, String json, String... headers) {
        HttpRequest.Builder request =
                to(path).header("Content-Type", "application/json").POST(BodyPublishers.ofString(json));
        return send(headers.length == 0 ? request : request.headers(headers));
    }

    HttpResponse<String> send(HttpRequest.Builder request) {
        return send(request, BodyHandlers.ofString());
    }

    HttpResponse<byte[]> sendForBytes(HttpRequest.Builder request) {
        return send(request, BodyHandlers.ofByteArray());
    }

    private <T> HttpResponse<T> send(HttpRequest.Builder request, BodyHandler<T> body) {
        try {
            return client.send(request.build(), body);
        } catch (IOException e) {
            throw new AssertionError(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError(e);
        }
    }

    /** Begins to watch. */
    Watcher watch(String... headers) {
        return new Watcher(
                client,
                headers.length == 0
                        ? to("/events").build()
                        : to("/events").headers(headers).build());
    }

    /** Switches to another configuration, like a daemon whose file has changed. */
    void change(Config next) {
        daemon.change(next);
        page.follow(next.page());
    }

    /** Switches to a configuration without a page. */
    void shut() {
        page.follow(Optional.empty());
    }

    @Override
    public void close() {
        page.close();
        daemon.close();
    }
}
