package dev.lampwright.tool.fit;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.json.Json;
import dev.lampwright.phrase.Phrase;
import java.util.Map;
import java.util.Optional;

/** Nothing could be heard, because the broker cannot be reached or refuses the login. */
public final class UnheardException extends Exception {
    private static final long serialVersionUID = 1L;
    private static final String KEY = "unheard";

    private final transient Phrase why;

    /**
     * Creates one.
     *
     * @param why what is wrong, with what to do; its values are text or whole numbers
     */
    public UnheardException(Phrase why) {
        super(why.english());
        this.why = why;
    }

    /** As saved in the journal. */
    String text() {
        return Json.of(Map.of(KEY, KeptPhrase.map(why)));
    }

    /** Reads it from the journal; empty if something was heard. */
    static Optional<Phrase> of(String text) {
        return Json.read(text)
                .map(root -> root.path(KEY))
                .filter(JsonNode::isObject)
                .map(KeptPhrase::of);
    }
}
