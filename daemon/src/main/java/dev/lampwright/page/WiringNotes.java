package dev.lampwright.page;

import dev.lampwright.config.Config;
import dev.lampwright.json.JsonArray;
import dev.lampwright.json.JsonObject;
import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * What the electrical plan says of the wiring in short, a line each. It is made when somebody first asks for it, and again for another
 * configuration: nothing of it costs anything while nobody looks.
 */
final class WiringNotes {
    private final Supplier<Config> running;
    private final Function<Config, List<String>> lines;
    private Config made;
    private String json = "";

    /**
     * Makes notes that are still empty.
     *
     * @param running gives the configuration that is in force
     * @param lines puts the verdicts on one into words, each a line that begins with its level
     */
    WiringNotes(Supplier<Config> running, Function<Config, List<String>> lines) {
        this.running = running;
        this.lines = lines;
    }

    /**
     * The notes on the configuration that is in force.
     *
     * @return JSON: {@code {"wiring":[{"text":"GOOD data level: …"}]}}
     */
    synchronized String json() {
        Config now = running.get();
        if (!now.equals(made)) {
            JsonArray notes = new JsonArray();
            lines.apply(now).forEach(line -> notes.add(new JsonObject().put("text", line)));
            json = new JsonObject().put("wiring", notes).text();
            made = now;
        }
        return json;
    }
}
