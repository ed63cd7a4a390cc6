package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.Axe;
import dev.lampwright.testing.Browser;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WindowType;

/**
 * Whether everybody can use the live page, and only those who know its token. Source: WCAG 2.2, levels A and AA, as far as axe-core
 * (Deque Systems) can check it.
 */
@Timeout(240)
class PageAccessIT {
    private static final int PLACES = 4;
    private static final String TOKEN = "correct-horse-battery-staple";
    private static final String VIEW_TOKEN = "only-to-have-a-look-at-it";

    /** As if another tab or program were in front, which never happens in a browser without a window. */
    private static final String HIDE = """
            Object.defineProperty(document, 'hidden', { value: arguments[0], configurable: true });
            document.dispatchEvent(new Event('visibilitychange'));
            """;

    private static PageBench bench;
    private static Browser browser;

    @BeforeAll
    static void start(@TempDir Path folder) throws IOException {
        Path token = Files.writeString(folder.resolve("token"), TOKEN + "\n");
        Path viewToken = Files.writeString(folder.resolve("view-token"), VIEW_TOKEN + "\n");
        bench = new PageBench(
                folder,
                "token_file = \"" + token + "\"",
                "view_token_file = \"" + viewToken + "\"",
                "viewers = " + PLACES);
        browser = bench.browser();
    }

    @AfterAll
    static void stop() {
        bench.close();
    }

    @BeforeEach
    void beAStranger() {
        browser.driver().manage().deleteAllCookies();
        browser.open("about:blank");
        browser.prefer("dark", false);
        browser.resize(1100, 900, 1);
        Await.until("a free place, once the daemon has noticed who left", PageAccessIT::thereIsAPlace);
    }

    private static boolean thereIsAPlace() {
        HttpRequest ask = HttpRequest.newBuilder(URI.create(bench.url() + "door"))
                .header("Authorization", "Bearer " + TOKEN)
                .build();
        try {
            return HttpClient.newHttpClient()
                            .send(ask, BodyHandlers.discarding())
                            .statusCode()
                    == 200;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        } catch (IOException e) {
            return false;
        }
    }

    @Test
    void aStrangerIsAskedForTheTokenAndAWrongOneIsNotTaken() {
        browser.open(bench.url());
        Await.until("the question", () -> browser.byId("token").isDisplayed());
        assertFalse(browser.byId("state").isDisplayed());
        browser.byId("token").sendKeys("something else entirely", Keys.ENTER);
        Await.until(
                "the refusal", () -> browser.text("entry-answer").startsWith("Not accepted: that is not the token"));
        assertEquals("true", browser.byId("token").getAttribute("aria-invalid"));
        browser.byId("token-shown").click();
        assertEquals("text", browser.byId("token").getAttribute("type"), "it may be looked at");
        browser.byId("token").clear();
        browser.byId("token").sendKeys(TOKEN, Keys.ENTER);
        bench.awaitText("contact", "live");
        Await.until(
                "the focus on the answer",
                () -> browser.run("return document.activeElement.id").equals("state"));
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

    /** So it can be appended to the address of the page that requires it. */
    @Test
    void theTokenMayBeAddedToTheAddressOfAPageThatIsOpen() {
        browser.open(bench.url());
        Await.until("the question", () -> browser.byId("token").isDisplayed());
        browser.open(bench.url() + "#" + TOKEN);
        bench.awaitText("contact", "live");
        assertEquals(bench.url(), browser.driver().getCurrentUrl());
    }

    /** Somebody who may only watch sees everything, but no control that would be refused. */
    @Test
    void theWeakerTokenShowsThePageWithoutControls() {
        browser.open(bench.url() + "#" + VIEW_TOKEN);
        bench.awaitText("contact", "live");
        Await.until("why there are none", () -> browser.text("watching").startsWith("Your token lets you watch."));
        assertFalse(browser.byId("brightness").isDisplayed());
        assertTrue(browser.byId("state").isDisplayed());
        Object status = browser.await("""
                const done = arguments[0];
                fetch('ask/brightness', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: '{"brightness": 0}' })
                  .then((response) => done(response.status));
                """);
        assertEquals(403L, status);
        browser.run("document.getElementById('row-device').open = true");
        browser.byId("leave").click();
        Await.until(
                "the question of the page that is opened again",
                () -> Boolean.TRUE.equals(
                        browser.run("return document.getElementById('token')?.checkVisibility() ?? false")));
    }

    /** The page's own address, for a phone's camera; only this machine can reach this one, so it says so. */
    @Test
    void aPageForThisMachineAloneHasNoCode() {
        browser.open(bench.url() + "#" + TOKEN);
        bench.awaitText("contact", "live");
        browser.run("document.getElementById('row-device').open = true");
        Await.until("why", () -> browser.text("code-words").startsWith("Only this machine can reach the page."));
    }

    /** A percent sign that escapes nothing must not stop anything. */
    @Test
    void anAddressWithABadEscapeStillLeadsToTheQuestion() {
        browser.open(bench.url() + "#100%");
        Await.until("the question", () -> browser.byId("token").isDisplayed());
    }

    /** Browsers keep six connections to a page, and there are four places here: eight tabs use one. A hidden tab uses none. */
    @Test
    void tabsShareOneStreamAndHiddenOnesGiveItBack() throws IOException {
        browser.open(bench.url() + "#" + TOKEN);
        bench.awaitText("contact", "live");
        for (int i = 0; i < 7; i++) {
            browser.driver().switchTo().newWindow(WindowType.WINDOW);
            bench.open();
        }
        browser.resize(1440, 900, 1);
        browser.byId("brightness").sendKeys(Keys.HOME);
        bench.awaitText("answer", "Brightness changed.");
        Await.until("it is listed", () -> browser.text("standing").contains("Strip: 0 %"));
        browser.all("#standing button").get(0).sendKeys(Keys.ENTER);
        bench.awaitText("answer", "Back to automatic.");
        for (String window : browser.driver().getWindowHandles()) {
            browser.driver().switchTo().window(window);
            browser.run(HIDE, true);
        }
        awaitAllPlacesFree();
        browser.run(HIDE, false);
        bench.birch().tellJob(Birch.PRINTING, 77);
        bench.awaitText("share", "77 %");
        bench.birch().tellJob(Birch.IDLE, 0);
    }

    @AfterEach
    void closeAllWindowsButOne() {
        List<String> windows = List.copyOf(browser.driver().getWindowHandles());
        windows.subList(1, windows.size())
                .forEach(window -> browser.driver().switchTo().window(window).close());
        browser.driver().switchTo().window(windows.get(0));
    }

    /** Takes one place after another until it has all of them. */
    private static void awaitAllPlacesFree() throws IOException {
        HttpRequest watch = HttpRequest.newBuilder(URI.create(bench.url() + "events"))
                .header("Authorization", "Bearer " + TOKEN)
                .build();
        List<InputStream> watching = new ArrayList<>();
        Await.until("all places free", () -> {
            InputStream events = stream(watch);
            if (events != null) {
                watching.add(events);
            }
            return watching.size() == PLACES;
        });
        for (InputStream events : watching) {
            events.close();
        }
    }

    /** Its events; null if no place is free. */
    private static InputStream stream(HttpRequest watch) {
        try {
            HttpResponse<InputStream> response = HttpClient.newHttpClient().send(watch, BodyHandlers.ofInputStream());
            return response.statusCode() == 200 ? response.body() : null;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    @Test
    void nothingKeepsAnybodyOut() {
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
            bench.awaitText("state", "Printing");
            check(scheme + ", printing", found);
            bench.birch().tellJob(Birch.FAULT, 40);
            bench.awaitText("fault-title", "Fault");
            check(scheme + ", a fault", found);
            browser.byId("motion").sendKeys(Keys.ENTER);
            check(scheme + ", asked about flashes", found);
            browser.byId("motion-keep").sendKeys(Keys.ENTER);
            bench.kill();
            bench.awaitText("contact", "connection lost");
            check(scheme + ", connection lost", found);
            bench.restart();
            bench.awaitText("contact", "live again");
            bench.birch().tellJob(Birch.IDLE, 0);
            bench.awaitText("fault-title", "Fault, over now");
            check(scheme + ", a fault that nobody has seen is over", found);
            browser.byId("acknowledge").sendKeys(Keys.ENTER);
            bench.awaitText("fault-title", "The fault is over");
            browser.byId("reset").sendKeys(Keys.ENTER);
            bench.awaitText("state", "Idle");
        }
        assertEquals(List.of(), found);
    }

    private static void check(String when, List<String> found) {
        for (int width : List.of(1440, 360)) {
            browser.resize(width, 800, 1);
            browser.run("document.getElementById('controls').dataset.open = 'colour'");
            found.addAll(Axe.violations(browser, when + ", " + width + " px", 21));
        }
    }
}
