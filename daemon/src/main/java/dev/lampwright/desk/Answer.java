package dev.lampwright.desk;

import dev.lampwright.json.JsonObject;
import java.util.Optional;

/**
 * What becomes of something that was asked for.
 *
 * @param ask what was asked for, by its topic's last word
 * @param done whether it is done; then nothing about it was wrong. Otherwise nothing at all has changed
 * @param text what is so now, or why it was refused and what would be right; one line
 * @param reason why it was refused, for other languages; empty if it is done, or was refused before it came to the desk
 * @param id what the ask called itself, to be told from others
 */
public record Answer(String ask, boolean done, String text, Optional<Reason.Given> reason, Optional<String> id) {
    /**
     * The answer as a message.
     *
     * @return a JSON object in one line
     */
    public String json() {
        JsonObject json = new JsonObject().put("ask", ask).put("done", done).put(done ? "now" : "why", text);
        reason.ifPresent(given -> given.addTo(json));
        id.ifPresent(own -> json.put("id", own));
        return json.text();
    }
}
