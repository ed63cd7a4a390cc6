package dev.lampwright.page;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.lampwright.testing.Await;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/** Watches the stream of events, without a browser. */
final class Watcher implements AutoCloseable {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private final HttpResponse<InputStream> response;
    private final EventReader reader = new EventReader();
    private final Thread thread = new Thread(this::listen, "watcher");
    private volatile boolean ended;

    Watcher(HttpClient client, HttpRequest request) {
        try {
            response = client.send(request, BodyHandlers.ofInputStream());
        } catch (IOException e) {
            throw new AssertionError(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError(e);
        }
        thread.setDaemon(true);
        thread.start();
    }

    private void listen() {
        try (BufferedReader lines =
                new BufferedReader(new InputStreamReader(response.body(), StandardCharsets.UTF_8))) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                synchronized (reader) {
                    reader.line(line);
                }
            }
        } catch (IOException e) {
            // The stream was cut off, which shows at its end.
        }
        ended = true;
    }

    HttpResponse<InputStream> response() {
        return response;
    }

    /** Whether the stream has ended. */
    boolean ended() {
        return ended;
    }

    /** All events so far, the oldest first. */
    List<EventReader.Event> events() {
        synchronized (reader) {
            return reader.events();
        }
    }

    long retryMillis() {
        synchronized (reader) {
            return reader.retryMillis();
        }
    }

    /** How many events of a topic have arrived. */
    long count(String topic) {
        return events().stream().filter(event -> event.type().equals(topic)).count();
    }

    /** The newest event of a topic, if there is one. */
    Optional<JsonNode> newest(String topic) {
        return events().stream()
                .filter(event -> event.type().equals(topic))
                .reduce((first, second) -> second)
                .map(event -> json(event.data()));
    }

    /** The newest event of a topic, once there is one. */
    JsonNode await(String topic) {
        Await.until(topic, () -> count(topic) > 0);
        return newest(topic).orElseThrow();
    }

    static JsonNode json(String text) {
        try {
            return MAPPER.readTree(text);
        } catch (JsonProcessingException e) {
            throw new AssertionError(text, e);
        }
    }

    @Override
    public void close() {
        try {
            response.body().close();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }
}
