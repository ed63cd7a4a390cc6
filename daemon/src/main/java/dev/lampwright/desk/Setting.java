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

    /** As written in an ask. */
    JsonNode node() {
        return isShare() ? DoubleNode.valueOf(share) : TextNode.valueOf(word);
    }

    /** As written in the log and in answers. */
    String spoken() {
        return isShare() ? Spoken.share(share) : word;
    }

    /** Adds it to an object. */
    void putInto(JsonObject json, String key) {
        if (isShare()) {
            json.put(key, share);
        } else {
            json.put(key, word);
        }
    }
}
