package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.Browser;
import dev.lampwright.testing.Recording.Entry;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;

/** The live page in a real browser, between the real jar, a real broker and a controller behind a device node. */
@Timeout(240)
class PageIT {
    private static final Duration LONG = Duration.ofSeconds(30);
    private static final int FULL_DUTY = 65_535;

    private static PageBench bench;
    private static Browser browser;

    @BeforeAll
    static void start(@TempDir Path folder) {
        bench = new PageBench(folder);
        browser = bench.browser();
    }

    @AfterAll
    static void stop() {
        bench.close();
    }

    @BeforeEach
    void beIdle() {
        browser.prefer("dark", false);
        browser.resize(1100, 900, 1);
        bench.open();
        bench.birch().tellJob(Birch.IDLE, 0);
        bench.awaitText("state", "idle");
    }

    /** Of scripts that fail, and of what the content security policy forbids; refusals and lost connections are the tests' own. */
    @AfterEach
    void thePageHasComplainedOfNothing() {
        List<String> complaints = browser.complaints().stream()
                .filter(line -> line.startsWith("SEVERE") && !line.contains("Failed to load resource"))
                .toList();
        assertEquals(List.of(), complaints);
    }

    private static void awaitFrame(String description, Predicate<Entry> so) {
        Await.until(
                () -> description + "; the page says " + browser.text("answer"),
                () -> bench.controller().recording().lastIs(entry -> entry.fromHost() && so.test(entry)),
                LONG);
    }

    private static void press(String id) {
        browser.byId(id).sendKeys(Keys.ENTER);
    }

    @Test
    void whatIsShownIsWhatTheControllerShows() {
        bench.awaitOnBoth(Birch.still(Birch.IDLE));
        bench.birch().tellHeat(36, 62, 107, 222);
        bench.birch().tellJob(Birch.WARMING, 0);
        bench.awaitOnBoth(Birch.warming((36 - 22) / 40.0, (107 - 22) / 200.0));
        bench.birch().tellJob(Birch.PRINTING, 33);
        bench.awaitOnBoth(Birch.printing(0.33));
        bench.birch().tellJob(Birch.STOPPED, 33);
        bench.awaitOnBoth(Birch.still(Birch.STOPPED));
    }

    /**
     * While a bar grows, whatever the page draws is a frame that arrived, or lies between two that followed one another: the line leaves
     * out frames for which there is a newer one.
     */
    @Test
    void nothingIsDrawnThatWasNotMade() {
        bench.birch().tellJob(Birch.PRINTING, 0);
        bench.awaitOnBoth(Birch.printing(0));
        bench.controller().recording().clear();
        bench.birch().tellJob(Birch.PRINTING, 80);
        Set<List<Long>> drawn = new HashSet<>();
        Await.until("the bar at its end, on the page too", () -> {
            List<Long> now = bench.drawn();
            drawn.add(now);
            return bench.controller()
                    .recording()
                    .lastIs(frame -> Birch.printing(0.8).isOn(frame.strip()) && now.equals(PageBench.screen(frame)));
        });
        List<List<Long>> sent = new ArrayList<>(List.of(screenOf(Birch.printing(0))));
        bench.controller().recording().entries().forEach(frame -> sent.add(PageBench.screen(frame)));
        for (List<Long> picture : drawn) {
            assertTrue(
                    IntStream.range(1, sent.size()).anyMatch(i -> isBetween(sent.get(i - 1), picture, sent.get(i))),
                    () -> "drawn and never made: " + picture);
        }
    }

    private static boolean isBetween(List<Long> low, List<Long> picture, List<Long> high) {
        return IntStream.range(0, picture.size())
                .allMatch(i -> low.get(i) <= picture.get(i) && picture.get(i) <= high.get(i));
    }

    private static List<Long> screenOf(Picture picture) {
        return PageBench.screen(new Entry(null, 0, 0, picture.bytes(), List.of()));
    }

    @Test
    void thePageIsNamedAfterItsPrinter() {
        bench.awaitText("name", "birch");
        Await.until("the title", () -> ((String) browser.run("return document.title")).endsWith(" · birch"));
    }

    @Test
    void readingsAreToldWithTheirUnitsAndTheUnknownAsUnknown() {
        bench.birch().tellHeat(36, 62, 107, 222);
        bench.birch().tellJob(Birch.WARMING, 0);
        bench.awaitText("state", "warming");
        Await.until("the bed's temperature", () -> browser.text("readings").contains("36.0 °C"));
        String readings = browser.text("readings").replaceAll("\\s+", " ");
        assertTrue(readings.contains("setpoint 62.0 °C"), readings);
        assertTrue(readings.contains("Chamber unknown"), readings);
        assertTrue(browser.text("lamps").startsWith("work "), browser.text("lamps"));
        assertTrue(browser.text("current-words").contains("of 600 mA at most"), browser.text("current-words"));
        Await.until("the current", () -> browser.text("current-now").matches("\\d+ mA"));
        assertTrue(browser.text("broker").startsWith("connected"), browser.text("broker"));
        assertTrue(browser.text("link").contains("lit"), browser.text("link"));
    }

    @Test
    void brightnessDimsTheStrip() {
        bench.birch().tellJob(Birch.STOPPED, 0);
        bench.awaitOnBoth(Birch.still(Birch.STOPPED));
        browser.byId("brightness").sendKeys(Keys.HOME);
        awaitFrame("a dark strip", frame -> frame.strip().stream().allMatch(duty -> duty == 0));
        browser.byId("brightness").sendKeys(Keys.END);
        bench.awaitOnBoth(Birch.still(Birch.STOPPED));
        bench.awaitText("answer", "Done: brightness 1.");
    }

    @Test
    void theWhiteLightIsAskedForAndGivenBack() {
        browser.byId("work-0").sendKeys(Keys.END);
        awaitFrame("full white light", frame -> frame.duties().get(0) == FULL_DUTY);
        Await.until("the page says so", () -> browser.text("lamps").equals("work 100 %"));
        browser.byId("work-0").findElement(By.xpath("../button")).sendKeys(Keys.ENTER);
        awaitFrame(
                "none, as the look of an idle printer has it",
                frame -> frame.duties().get(0) == 0);
    }

    @Test
    void aLookIsTriedForAWhile() {
        browser.all("#try option[value=held]").get(0).click();
        press("try-button");
        bench.awaitOnBoth(Birch.still(Birch.HELD));
        Await.until(
                "how long it stays",
                () -> browser.text("look").matches("look held, asked for, \\d+ s left|.*1 min 0 s left"));
        press("try-end");
        bench.awaitOnBoth(Birch.still(Birch.IDLE));
    }

    @Test
    void lightIsDimmedForTheQuietOfTheNight() {
        bench.birch().tellJob(Birch.HELD, 0);
        bench.awaitOnBoth(Birch.still(Birch.HELD));
        int full = bench.controller().recording().last().strip().get(1);
        browser.all("[data-quiet=on]").get(0).sendKeys(Keys.ENTER);
        awaitFrame("dimmed", frame -> frame.strip().get(1) > 0 && frame.strip().get(1) < full / 2);
        Await.until("the page says so", () -> browser.text("quiet-words").startsWith("It is quiet"));
        browser.all("[data-quiet=off]").get(0).sendKeys(Keys.ENTER);
        bench.awaitOnBoth(Birch.still(Birch.HELD));
    }

    /** By keyboard alone. The fault goes as ISA-18.1 sequence M has it: seen, it stands steady; over, it waits for its reset. */
    @Test
    void aFaultIsSeenAndResetByKeyboard() {
        bench.birch().tellJob(Birch.FAULT, 0);
        bench.awaitText("fault-title", "Fault, seen by nobody yet");
        tabTo("acknowledge");
        browser.driver().switchTo().activeElement().sendKeys(Keys.ENTER);
        bench.awaitText("fault-title", "Fault, seen");
        awaitFrame(
                "steady red of 0.35",
                frame -> frame.strip().get(1) >= 88 && frame.strip().get(1) <= 90);
        assertEquals("fault-title", focused());
        bench.birch().tellJob(Birch.IDLE, 0);
        bench.awaitText("state", "idle");
        tabTo("reset");
        browser.driver().switchTo().activeElement().sendKeys(Keys.SPACE);
        bench.awaitText("fault-title", "No fault");
        bench.awaitOnBoth(Birch.still(Birch.IDLE));
    }

    private static String focused() {
        return String.valueOf(browser.run("return document.activeElement.id"));
    }

    private static void tabTo(String id) {
        Await.until("the focus on " + id, () -> {
            browser.driver().switchTo().activeElement().sendKeys(Keys.TAB);
            return focused().equals(id);
        });
        assertTrue(
                (Boolean) browser.run("return getComputedStyle(document.activeElement).outlineStyle !== 'none'"),
                "the focus can be seen");
    }

    /** A refusal is told in the desk's own words. */
    @Test
    void whatCannotBeDoneIsToldSo() {
        browser.run("document.getElementById('acknowledge').hidden = false");
        browser.run("document.getElementById('acknowledge').click()");
        bench.awaitText("answer", "Not done: there is no fault to acknowledge.");
    }

    /** The built-in look for a fault is red once a second; the page draws it still until the viewer says otherwise. */
    @Test
    void flashingIsDrawnStillUntilItIsAskedFor() {
        bench.birch().tellJob(Birch.FAULT, 0);
        bench.awaitText("state", "fault");
        Await.until("a word of warning", () -> browser.text("flash-words").contains("photosensitive epilepsy"));
        Await.until(
                () -> "as bright as it gets; drawn is " + bench.drawn(),
                () -> bench.drawn().get(0) == 255,
                LONG);
        assertEquals(0, turnsIn(4), "changes of direction while it is drawn still");
        press("flash-button");
        Await.until("flashes, once they are asked for", () -> turnsIn(3) >= 2);
        int turns = turnsIn(3);
        assertTrue(turns <= 2 * 3 * 3 + 1, "more than three flashes a second (WCAG 2.3.1): " + turns + " turns in 3 s");
        press("flash-button");
        Await.until("still again", () -> turnsIn(3) == 0);
        calmDown();
    }

    private static void calmDown() {
        press("acknowledge");
        bench.awaitText("fault-title", "Fault, seen");
        bench.birch().tellJob(Birch.IDLE, 0);
        bench.awaitText("state", "idle");
        press("reset");
        bench.awaitText("fault-title", "No fault");
    }

    /** How often light of the first pixel turns from up to down or back by a tenth of full (relative luminance would be less). */
    private static int turnsIn(int seconds) {
        Object turns = browser.await("""
                const [seconds, done] = arguments;
                const canvas = document.getElementById('strip');
                const begin = performance.now();
                let turns = 0, way = 0, low = null, high = null;
                const look = (now) => {
                  const y = Math.round(canvas.height * 66 / canvas.clientHeight);
                  const light = Math.pow(canvas.getContext('2d').getImageData(40, y, 1, 1).data[0] / 255, 2.2);
                  low = Math.min(low ?? light, light); high = Math.max(high ?? light, light);
                  if (way <= 0 && light - low > 0.1) { turns += way < 0 ? 1 : 0; way = 1; high = light; low = light; }
                  if (way >= 0 && high - light > 0.1) { turns += way > 0 ? 1 : 0; way = -1; high = light; low = light; }
                  if (way > 0) { low = light; } else if (way < 0) { high = light; }
                  now - begin > 1000 * seconds ? done(turns) : requestAnimationFrame(look);
                };
                requestAnimationFrame(look);
                """, seconds);
        return ((Number) turns).intValue();
    }

    /** What is drawn when, calculated with made-up times by the page's own script: counts of drawn frames, and how bright they are. */
    @Test
    void drawingLeavesFramesOutAndAddsNone() {
        Object counts = browser.await("""
                const done = arguments[arguments.length - 1];
                import('/still.js').then(({ Pace }) => {
                  const frame = (at, value) => ({ at, strip: Uint8Array.of(value, 0, 0), duties: [] });
                  const play = (frames, end, show, calm, flashes) => {
                    const pace = new Pace();
                    const drawn = [];
                    for (let now = 0; now <= end; now += 10) {
                      frames.filter(([comes]) => comes === now).forEach(([, f]) => pace.take(f, now, flashes));
                      const next = pace.next(now, show, calm);
                      if (next !== null) { drawn.push([now, next.frame.strip[0], next.fade]); }
                    }
                    return drawn;
                  };
                  const every = (step, end, value) =>
                    Array.from({ length: end / step }, (_, i) => [i * step, frame(i * step, value(i))]);
                  const quick = play(every(10, 1000, (i) => i % 250), 1000, false, false, false);
                  const calm = play(every(50, 5000, (i) => i), 5000, false, true, false);
                  const still = play(every(250, 6000, (i) => i % 2 * 255), 6000, false, false, true);
                  const stalled = Array.from({ length: 40 }, (_, i) => [i < 20 ? i * 50 : Math.max(i * 50, 2000 + i), frame(i * 50, i)])
                    .map(([comes, f]) => [Math.ceil(comes / 10) * 10, f]);
                  const burst = play(stalled, 3000, false, false, false).filter(([now]) => now >= 2000);
                  done([quick.length, calm.length, calm.every(([, , fade]) => fade === 1000) ? 1 : 0,
                    Math.min(...still.filter(([now]) => now >= 1500).map(([, value]) => value)), burst.length]);
                });
                """);
        List<Integer> found = ((List<?>) counts)
                .stream().map(count -> ((Number) count).intValue()).toList();
        assertTrue(found.get(0) <= 21, "twenty a second at most: " + found);
        assertTrue(found.get(1) <= 6 && found.get(1) >= 4, "one a second where motion is to be reduced: " + found);
        assertEquals(1, found.get(2), "and each is faded into");
        assertEquals(255, found.get(3), "a flashing look is drawn as bright as it gets");
        assertTrue(found.get(4) <= 2, "what comes late and close together is left out: " + found);
    }

    @Test
    void aLostConnectionIsToldAndComesBackByItself() {
        bench.kill();
        Await.until("word of the loss", () -> browser.text("alert").startsWith("Connection lost at "));
        bench.awaitText("contact", "connection lost");
        Await.until(
                "a grey picture",
                () -> browser.run("return getComputedStyle(document.getElementById('stage')).filter")
                        .equals("grayscale(1)"));
        bench.restart();
        bench.awaitText("contact", "live again");
        assertFalse(browser.byId("alert").isDisplayed());
        bench.birch().tellJob(Birch.HELD, 0);
        bench.awaitOnBoth(Birch.still(Birch.HELD));
    }

    @Test
    void onAPhoneNothingHasToBeScrolledSideways() {
        for (int width : List.of(360, 320)) {
            browser.resize(width, 740, 1);
            Await.until("as wide as the screen: " + width, () ->
                    (Boolean) browser.run("return document.documentElement.scrollWidth <= arguments[0]", width));
        }
        bench.awaitOnBoth(Birch.still(Birch.IDLE));
    }
}
