package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Browser;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/**
 * Whether everybody can use the live page, and only those who know its token. Source: WCAG 2.2, levels A and AA, as far as axe-core
 * (Deque Systems) can check it.
 */
@Timeout(240)
class PageAccessIT {
    private static final String TOKEN = "correct-horse-battery-staple";
    private static final String AXE = """
            const done = arguments[arguments.length - 1];
            const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
            axe.run(document, { runOnly: { type: 'tag', values: tags } })
              .then((results) => done(JSON.stringify({ passes: results.passes.length, violations: results.violations })));
            """;

    private static PageBench bench;
    private static Browser browser;
    private static String axe;

    @BeforeAll
    static void start(@TempDir Path folder) throws IOException {
        Path token = Files.writeString(folder.resolve("token"), TOKEN + "\n");
        bench = new PageBench(folder, "token_file = \"" + token + "\"");
        browser = bench.browser();
        try (InputStream script = PageAccessIT.class.getResourceAsStream("/axe.min.js")) {
            axe = new String(script.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @AfterAll
    static void stop() {
        bench.close();
    }

    @BeforeEach
    void beAStranger() {
        browser.driver().manage().deleteAllCookies();
        browser.prefer("dark", false);
        browser.resize(1100, 900, 1);
    }

    @Test
    void aStrangerIsAskedForTheTokenAndAWrongOneIsNotTaken() {
        browser.open(bench.url());
        Await.until("the question", () -> browser.byId("token").isDisplayed());
        assertFalse(browser.byId("state").isDisplayed());
        browser.byId("token").sendKeys("something else entirely", Keys.ENTER);
        Await.until("the refusal", () -> browser.text("entry-answer").startsWith("Not let in: that is not the token"));
        browser.byId("token").clear();
        browser.byId("token").sendKeys(TOKEN, Keys.ENTER);
        bench.awaitText("contact", "live");
        assertEquals("", browser.run("return document.cookie"), "no script can read the pass");
        browser.open(bench.url());
        bench.awaitText("contact", "live");
        assertFalse(String.valueOf(browser.run("return document.documentElement.outerHTML"))
                .contains(TOKEN));
    }

    @Test
    void theTokenMayStandBehindTheAddressAndIsTakenOutOfIt() {
        browser.open(bench.url() + "#" + TOKEN);
        bench.awaitText("contact", "live");
        assertEquals(bench.url(), browser.driver().getCurrentUrl());
    }

    @Test
    void nothingKeepsAnybodyOut() throws IOException {
        List<String> found = new ArrayList<>();
        for (String scheme : List.of("dark", "light")) {
            browser.driver().manage().deleteAllCookies();
            browser.prefer(scheme, false);
            browser.open(bench.url());
            Await.until("the question", () -> browser.byId("token").isDisplayed());
            check(scheme + ", asked for the token", found);
            browser.byId("token").sendKeys(TOKEN, Keys.ENTER);
            bench.awaitText("contact", "live");
            bench.birch().tellJob(Birch.PRINTING, 40);
            bench.awaitText("state", "printing");
            check(scheme + ", printing", found);
            bench.birch().tellJob(Birch.FAULT, 40);
            bench.awaitText("fault-title", "Fault, seen by nobody yet");
            Await.until("a word of warning", () -> browser.byId("flash-note").isDisplayed());
            check(scheme + ", a fault that flashes", found);
            bench.kill();
            bench.awaitText("contact", "connection lost");
            check(scheme + ", connection lost", found);
            bench.restart();
            bench.awaitText("contact", "live again");
            bench.birch().tellJob(Birch.IDLE, 0);
        }
        assertEquals(List.of(), found);
    }

    private static void check(String when, List<String> found) throws IOException {
        for (int width : List.of(1100, 360)) {
            browser.resize(width, 800, 1);
            browser.run(axe);
            JsonNode result = new ObjectMapper().readTree(String.valueOf(browser.await(AXE)));
            assertTrue(result.get("passes").asInt() > 20, "axe has looked at the page");
            for (JsonNode violation : result.get("violations")) {
                found.add(when + ", " + width + " px: " + violation.get("id") + " " + violation.get("help") + " "
                        + violation.get("nodes").findValuesAsText("html")
                        + violation.get("nodes").findValuesAsText("failureSummary"));
            }
        }
    }
}
