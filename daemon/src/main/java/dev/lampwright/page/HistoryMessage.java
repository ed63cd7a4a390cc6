package dev.lampwright.page;

import dev.lampwright.config.Config;
import dev.lampwright.engine.StateColours;
import dev.lampwright.history.Accounts;
import dev.lampwright.history.HistoryJson;
import dev.lampwright.json.JsonObject;
import dev.lampwright.printer.PrinterState;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * The history for the page: as from {@link HistoryJson}, plus {@code colours}, the CSS colour of each state's look. Those are drawn on the
 * first request.
 */
final class HistoryMessage implements Document {
    private static final String SINCE = "since=";

    private final Supplier<Accounts> history;
    private final Supplier<Config> configs;
    private Config drawn;
    private Map<PrinterState, String> colours = Map.of();

    /**
     * Draws nothing yet.
     *
     * @param history provides what has happened so far
     * @param configs provides the active configuration
     */
    HistoryMessage(Supplier<Accounts> history, Supplier<Config> configs) {
        this.history = history;
        this.configs = configs;
    }

    /**
     * What has happened, or the part of it that lasted until a given time.
     *
     * @param query the part after the question mark: nothing, or {@code since=2026-11-27T12:00:00Z}
     * @return a JSON object; empty if the query is something else
     */
    @Override
    public Optional<StaticFile> make(String query) {
        return json(query).map(text -> new StaticFile(StaticFile.JSON, text.getBytes(StandardCharsets.UTF_8)));
    }

    private Optional<String> json(String query) {
        if (query.isEmpty()) {
            return Optional.of(json(history.get()));
        }
        if (!query.startsWith(SINCE)) {
            return Optional.empty();
        }
        try {
            Instant since = Instant.parse(query.substring(SINCE.length()).replace("%3A", ":"));
            return Optional.of(json(history.get().since(since)));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    private String json(Accounts accounts) {
        JsonObject told = new JsonObject();
        colours().forEach((state, colour) -> told.put(state.word(), colour));
        return HistoryJson.of(accounts).put("colours", told).text();
    }

    private synchronized Map<PrinterState, String> colours() {
        Config now = configs.get();
        if (!now.equals(drawn)) {
            colours = StateColours.of(now);
            drawn = now;
        }
        return colours;
    }
}
