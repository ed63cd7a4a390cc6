package dev.lampwright.page;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.demo.MemoryController;
import dev.lampwright.demo.MemoryLine;
import dev.lampwright.engine.Daemon;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Several daemons in this process with the shared page, and in-memory controllers. */
final class ShelfRig implements AutoCloseable {
    private static final String FILE = """
            [broker]
            url = "%1$s"
            [printer]
            silent_after_s = 600
            [printer.state]
            topic = "shop/%2$s/job"
            at = "/phase"
            idle = ["REST"]
            printing = ["RUN"]
            done = ["END"]
            fault = ["ALARM"]
            [printer.readings]
            job.progress = { topic = "shop/%2$s/job", at = "/done" }
            job.left_s = { topic = "shop/%2$s/job", at = "/left" }
            [printer.fault_text]
            topic = "shop/%2$s/job"
            at = "/words"
            [controller]
            port = "memory"
            [supply]
            ceiling_mA = 6000
            [strip]
            pixels = %3$d
            [desk]
            prefix = "lampwright/%2$s"
            [page]
            port = 0
            """;

    private final HttpClient client = HttpClient.newHttpClient();
    private final Map<String, Daemon> daemons = new TreeMap<>();
    private final Map<String, String> rejected = new TreeMap<>();
    private final LivePage page;

    /**
     * Starts them.
     *
     * @param broker where
     * @param pixels of each strip
     * @param more further lines of each file
     * @param names of the rigs, 1 or more
     */
    ShelfRig(URI broker, int pixels, String more, List<String> names) {
        Config first = null;
        for (String name : names) {
            Config config = config(FILE.formatted(broker, name, pixels) + more, name);
            first = first == null ? config : first;
            MemoryController controller =
                    new MemoryController(MemoryController.BOARD, (light, sequence, frame, nanos) -> {});
            MemoryLine line = new MemoryLine(controller, 500_000, System::nanoTime);
            Daemon daemon = new Daemon(config, same -> line);
            daemon.start();
            daemons.put(name, daemon);
        }
        page = new LivePage(() -> daemons, Optional.of(() -> rejected), Advice.NONE, Workshop.NONE, System::nanoTime);
        page.follow(first.page());
    }

    private static Config config(String text, String name) {
        try {
            return ConfigFile.read(text, name + ".toml");
        } catch (ConfigException e) {
            throw new AssertionError(e);
        }
    }

    /** The rig with this name does not run, and why. */
    void reject(String name, String why) {
        rejected.put(name, why);
    }

    Daemon daemon(String name) {
        return daemons.get(name);
    }

    /** The shelf's address, with a slash at its end. */
    String url() {
        return page.url().orElseThrow();
    }

    private HttpRequest to(String path) {
        return HttpRequest.newBuilder(URI.create(url() + path))
                .timeout(Duration.ofSeconds(20))
                .build();
    }

    HttpResponse<String> get(String path) {
        return client.sendAsync(to(path), BodyHandlers.ofString()).join();
    }

    /** Starts watching the shelf. */
    Watcher watch() {
        return new Watcher(client, to("events"));
    }

    @Override
    public void close() {
        page.close();
        daemons.values().forEach(Daemon::close);
    }
}
