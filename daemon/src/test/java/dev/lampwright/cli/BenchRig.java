package dev.lampwright.cli;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.PageSettings;
import dev.lampwright.config.ShopFile;
import dev.lampwright.demo.MemoryController;
import dev.lampwright.demo.MemoryLine;
import dev.lampwright.engine.Daemon;
import dev.lampwright.json.Json;
import dev.lampwright.page.Advice;
import dev.lampwright.page.Fitter;
import dev.lampwright.page.LivePage;
import dev.lampwright.page.Workshop;
import dev.lampwright.testing.FreePort;
import dev.lampwright.tool.bench.BenchFiles;
import dev.lampwright.tool.bench.BenchWorker;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;

/** A daemon in this process with a live page and its bench, over a file of its own and a controller in memory. */
final class BenchRig implements AutoCloseable {
    /** What the file says; its broker is nobody. */
    static final String FILE = """
            # birch, by the window
            frames_per_s = 20
            [broker]
            url = "mqtt://127.0.0.1:%d"
            [printer.state]
            topic = "shop/birch/job"
            printing = ["RUN"]
            [controller]
            port = "memory"
            at_end = "when_silent"
            [supply]
            ceiling_mA = 600
            [strip]
            pixels = %d
            [zones]
            shelf = "20-29" # where the spools are
            [dimmers]
            work = { channel = 0, volts = 24, full_mA = 800 }
            [page]
            port = 0
            %s

            # Waiting for the next job.
            [looks.waiting]
            dimmers = { work = 0.4 }
            layers = [
              { colour = "midnightblue", opacity = 0.3 }, # the ground
              { zone = "shelf", colour = "orange", extent = "bar", by = "job.progress" },
            ]

            [[cues]]
            look = "waiting"
            state = "idle"
            """;

    private final HttpClient client =
            HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(10)).build();
    private final BenchFiles files;
    private final BenchWorker worker = new BenchWorker();
    private final Daemon daemon;
    private final LivePage page;
    private volatile byte[] shown = new byte[6];

    /** An answer. */
    record Answer(int status, JsonNode json) {
        String code() {
            return json.path("code").asText();
        }
    }

    BenchRig(Path folder) {
        this(folder, "");
    }

    /**
     * Starts it.
     *
     * @param folder for its files
     * @param pageLines lines of {@code [page]}
     */
    BenchRig(Path folder, String pageLines) {
        this(folder, pageLines, 30);
    }

    /** Starts it with a strip of so many pixels. */
    BenchRig(Path folder, String pageLines, int pixels) {
        this(
                new BenchFiles(folder.resolve("birch.toml"), folder.resolve("state/birch.looks.toml")),
                FILE.formatted(FreePort.find(), pixels, pageLines),
                true);
    }

    /** Starts it with its files elsewhere; the configuration is written unless it is there. */
    BenchRig(BenchFiles files) {
        this(files, FILE.formatted(FreePort.find(), 30, ""), !Files.exists(files.file()));
    }

    private BenchRig(BenchFiles files, String text, boolean write) {
        this.files = files;
        try {
            if (write) {
                Files.writeString(files.file(), text);
            }
            Config config = ConfigFile.read(files.file());
            MemoryLine line = new MemoryLine(
                    new MemoryController(
                            MemoryController.BOARD,
                            (light, sequence, frame, nanos) ->
                                    shown = frame.strip().clone()),
                    500_000,
                    System::nanoTime);
            daemon = new Daemon(config, same -> line);
            page = new LivePage(
                    daemon, Advice.NONE, new Workshop(PageBench.of(rig -> files, worker), Fitter.Maker.NONE));
            daemon.start();
            page.follow(pageOf(config));
        } catch (IOException | ConfigException e) {
            throw new AssertionError(e);
        }
    }

    /** Of a rig of a shop, it is configured for all of them. */
    private Optional<PageSettings> pageOf(Config config) throws ConfigException {
        Optional<Path> shop = ShopFile.around(files.file());
        return shop.isPresent() ? ShopFile.read(shop.get()).page() : config.page();
    }

    /** Has the daemon read its files again. */
    void reload() throws ConfigException {
        daemon.change(KeptLooks.read(files.file()));
    }

    Daemon daemon() {
        return daemon;
    }

    /** The strip's bytes as the controller has shown them last. */
    byte[] shown() {
        return shown;
    }

    BenchFiles files() {
        return files;
    }

    String text() throws IOException {
        return Files.readString(files.file());
    }

    Answer get(String path, String... headers) {
        return send("GET", path, "", headers);
    }

    Answer post(String path, Map<String, ?> body, String... headers) {
        return send("POST", path, Json.of(body), headers);
    }

    Answer put(String path, Map<String, ?> body, String... headers) {
        return send("PUT", path, Json.of(body), headers);
    }

    /** Sends a request to the bench. */
    Answer send(String method, String path, String body, String... headers) {
        HttpRequest.Builder request = HttpRequest.newBuilder(
                        URI.create(page.url().orElseThrow() + "bench/" + path))
                .timeout(Duration.ofSeconds(60))
                .method(method, body.isEmpty() ? BodyPublishers.noBody() : BodyPublishers.ofString(body));
        if (!body.isEmpty()) {
            request.header("Content-Type", "application/json");
        }
        for (int i = 0; i < headers.length; i += 2) {
            request.setHeader(headers[i], headers[i + 1]);
        }
        try {
            HttpResponse<String> response = client.send(request.build(), BodyHandlers.ofString());
            return new Answer(response.statusCode(), Json.read(response.body()).orElseThrow());
        } catch (IOException e) {
            throw new AssertionError(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError(e);
        }
    }

    @Override
    public void close() {
        page.close();
        worker.close();
        daemon.close();
    }
}
