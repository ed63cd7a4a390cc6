package dev.lampwright.soak;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.Map;
import java.util.TreeMap;

/** Figures as the daemon serves them for Prometheus. */
final class Figure {
    private static final HttpClient CLIENT = HttpClient.newHttpClient();
    private static final Duration LONGEST = Duration.ofSeconds(20);

    private static final String FRAMES = "lampwright_frames_";

    private Figure() {}

    /**
     * All about frames, by name and labels.
     *
     * @param port where they are
     */
    static Map<String, Double> ofFrames(int port) throws IOException {
        HttpRequest request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/metrics"))
                .timeout(LONGEST)
                .build();
        try {
            Map<String, Double> figures = new TreeMap<>();
            CLIENT.send(request, BodyHandlers.ofString())
                    .body()
                    .lines()
                    .filter(line -> line.startsWith(FRAMES))
                    .forEach(line -> {
                        int space = line.lastIndexOf(' ');
                        figures.put(line.substring(0, space), Double.valueOf(line.substring(space + 1)));
                    });
            return figures;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        }
    }
}
