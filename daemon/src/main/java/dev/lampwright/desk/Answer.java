package dev.lampwright.desk;

import dev.lampwright.json.JsonObject;
import java.util.Optional;

/**
 * The result of an ask.
 *
 * @param ask what was asked for, as the last level of its topic
 * @param done whether it was done; if not, nothing has changed
 * @param text what is now in effect, or why it was refused and what would be valid; one line
 * @param reason why it was refused, for other languages; empty if it is done, or was refused before it came to the desk
 * @param id the id that the ask gave itself
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
