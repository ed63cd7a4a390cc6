package dev.lampwright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.DoubleNode;
import com.fasterxml.jackson.databind.node.TextNode;
import dev.lampwright.json.JsonObject;

/**
 * What something was set to.
 *
 * @param word a look, a colour, on or off; empty if it is a share
 * @param share a level from 0 to 1; NaN if it is a word
 */
record Setting(String word, double share) {
    static Setting of(String word) {
        return new Setting(word, Double.NaN);
    }

    static Setting of(double share) {
        return new Setting("", share);
    }

    boolean isShare() {
        return !Double.isNaN(share);
    }

    /** As somebody would ask for it. */
    JsonNode node() {
        return isShare() ? DoubleNode.valueOf(share) : TextNode.valueOf(word);
    }

    /** As a line of the log or an answer says it. */
    String spoken() {
        return isShare() ? Spoken.share(share) : word;
    }

    /** Puts it into an object. */
    void putInto(JsonObject json, String key) {
        if (isShare()) {
            json.put(key, share);
        } else {
            json.put(key, word);
        }
    }
}
