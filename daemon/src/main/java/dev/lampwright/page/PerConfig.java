package dev.lampwright.page;

import dev.lampwright.config.Config;
import dev.lampwright.json.JsonArray;
import dev.lampwright.json.JsonObject;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Content that follows from the configuration. It is created on the first request, and again for another configuration, so it costs nothing
 * without viewers.
 */
final class PerConfig implements Document {
    private final Supplier<Config> running;
    private final Function<Config, StaticFile> maker;
    private Config madeFor;
    private StaticFile made;

    private PerConfig(Supplier<Config> running, Function<Config, StaticFile> maker) {
        this.running = running;
        this.maker = maker;
    }

    /**
     * Lines of text, as {@code {"lines":["GOOD data level: …"]}}.
     *
     * @param running provides the active configuration
     * @param lines provides the lines for one
     */
    static PerConfig lines(Supplier<Config> running, Function<Config, List<String>> lines) {
        return new PerConfig(running, config -> {
            JsonArray told = new JsonArray();
            lines.apply(config).forEach(told::add);
            return StaticFile.json(new JsonObject().put("lines", told).text());
        });
    }

    /**
     * A drawing.
     *
     * @param running provides the active configuration
     * @param drawing provides the SVG for one
     */
    static PerConfig svg(Supplier<Config> running, Function<Config, String> drawing) {
        return new PerConfig(
                running,
                config -> new StaticFile("image/svg+xml", drawing.apply(config).getBytes(StandardCharsets.UTF_8)));
    }

    @Override
    public synchronized Optional<StaticFile> make(String query) {
        Config now = running.get();
        if (!now.equals(madeFor)) {
            made = maker.apply(now);
            madeFor = now;
        }
        return Optional.of(made);
    }
}
