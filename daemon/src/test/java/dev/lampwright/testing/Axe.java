package dev.lampwright.testing;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Checks pages with axe-core (Deque Systems): by WCAG 2.2, levels A and AA, and by the practices that axe-core calls best. */
public final class Axe {
    private static final String RUN = """
            const done = arguments[arguments.length - 1];
            const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
            axe.run(document, { runOnly: { type: 'tag', values: tags } })
              .then((results) => done(JSON.stringify({ passes: results.passes.length, violations: results.violations })));
            """;

    private Axe() {}

    /**
     * Checks the page that a browser shows.
     *
     * @param browser shows it
     * @param state what the page is like, for the lines
     * @param leastPasses the fewest rules that it must pass: what is not there breaks none
     * @return a line for each rule that it breaks
     */
    public static List<String> violations(Browser browser, String state, int leastPasses) {
        if (Boolean.TRUE.equals(browser.run("return window.axe === undefined"))) {
            browser.run(script());
        }
        JsonNode result = read(String.valueOf(browser.await(RUN)));
        assertTrue(result.get("passes").asInt() >= leastPasses, "axe has looked at the page: " + state);
        List<String> found = new ArrayList<>();
        for (JsonNode violation : result.get("violations")) {
            JsonNode nodes = violation.get("nodes");
            found.add(state + ": " + violation.get("id") + " " + violation.get("help") + " "
                    + nodes.findValuesAsText("html") + nodes.findValuesAsText("failureSummary"));
        }
        return found;
    }

    private static String script() {
        try (InputStream script = Axe.class.getResourceAsStream("/axe.min.js")) {
            return new String(script.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static JsonNode read(String json) {
        try {
            return new ObjectMapper().readTree(json);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
