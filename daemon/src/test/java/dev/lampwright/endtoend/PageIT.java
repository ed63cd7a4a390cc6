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
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;

/** The live page in a real browser, between the real jar, a real broker and a controller behind a device node. */
@Tag("alone")
@Timeout(240)
class PageIT {
    private static final Duration LONG = Duration.ofSeconds(30);
    private static final int FULL_DUTY = 65_535;

    /** Elements without their text, or with the bare code of one. */
    private static final String UNSAID = """
            return [...document.querySelectorAll('[data-say]')]
              .filter((element) => element.textContent === '' || element.textContent === element.dataset.say)
              .map((element) => element.dataset.say);
            """;

    private static final String INFO_LINES = "return document.querySelectorAll('#troubles [data-level=info]').length";

    /** So that no test inherits asks from another. */
    private static final String GIVE_ALL_BACK = """
            const done = arguments[0];
            fetch('ask/lights', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: '{"lights": "auto"}' })
              .then(() => done());
            """;

    /**
     * Replaces the browser's own notifications, which one without a window does not show: by its worker, or by the page if there is none.
     */
    private static final String NOTICES = """
            window.told = [];
            window.Notification = class {
              static permission = 'granted';
              static requestPermission() { return Promise.resolve('granted'); }
              constructor(title, { body }) { window.told.push(['page', title, body]); }
            };
            ServiceWorkerRegistration.prototype.showNotification = (title, { body }) => window.told.push(['worker', title, body]);
            """;

    private static final String NO_WORKER =
            "navigator.serviceWorker.register = () => Promise.reject(new Error('none here'))";

    /** As if another tab or program were in front. */
    private static final String HIDE = """
            Object.defineProperty(document, 'hidden', { value: arguments[0], configurable: true });
            document.dispatchEvent(new Event('visibilitychange'));
            """;

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
        browser.resize(1440, 900, 1);
        bench.open();
        browser.await(GIVE_ALL_BACK);
        bench.birch().tellJob(Birch.IDLE, 0);
        bench.awaitText("state", "Idle");
    }

    /** About failing scripts, and what the content security policy forbids; refusals and lost connections are caused by the tests. */
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

    private static void pressFirst(String selector) {
        browser.all(selector).get(0).sendKeys(Keys.ENTER);
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
     * While a bar grows, everything that the page draws is a frame that arrived, or lies between two consecutive ones: the line skips
     * frames for which there is a newer one.
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
                    .lastIs(frame ->
                            Birch.printing(0.8).isOn(frame.strip()) && PageBench.alike(now, PageBench.screen(frame)));
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
                .allMatch(i -> low.get(i) - 1 <= picture.get(i) && picture.get(i) <= high.get(i) + 1);
    }

    private static List<Long> screenOf(Picture picture) {
        return PageBench.screen(new Entry(null, 0, 0, picture.bytes(), List.of()));
    }

    @Test
    void theAnswerComesFirstAndThenItsReasons() {
        bench.awaitText("name", "birch");
        bench.birch().tellHeat(36, 62, 107, 222);
        bench.birch().tellJob(Birch.WARMING, 0);
        bench.awaitText("state", "Heating");
        bench.awaitText("heat", "Bed 36 of 62 °C\nNozzle 107 of 222 °C");
        Await.until("how far the heat-up is", () -> browser.text("share").matches("\\d+ %"));
        bench.birch().tellJob(Birch.PRINTING, 42);
        bench.awaitText("state", "Printing");
        bench.awaitText("share", "42 %");
        bench.awaitText("when", "time left not known yet");
        Await.until("the title", () -> browser.run("return document.title").equals("42 % Printing · birch"));
        Await.until(
                "the white light as the look has it",
                () -> browser.text("lamps").equals("work 100 %"));
        Await.until("the current", () -> browser.text("current-now").matches("\\d+ of 600 mA"));
        bench.awaitText("links-sum", "all well");
        Await.until(
                "in words, for whoever cannot see it",
                () -> browser.byId("strip").getAttribute("aria-label").contains("job green to 4"));
    }

    /** User-defined readings are shown in the file's words and units. */
    @Test
    void readingsOfOnesOwnAreShownWithTheirUnits() {
        Await.until("the rows", () -> browser.byId("row-readings").isDisplayed());
        bench.birch().broker().publish("shop/birch/more", "{\"speed\":112.5,\"damp\":38}", true);
        bench.awaitText("readings-sum", "Print speed 113 % · Box humidity 38 % rh");
        browser.byId("row-readings").click();
        bench.awaitText("readings", "Print speed\n113 %\nBox humidity\n38 % rh");
    }

    /** What may come and go is not part of the layout flow: whatever happens, everything below stays in place. */
    @Test
    void nothingThatComesAndGoesMovesAnythingElse() {
        for (int width : List.of(1440, 360)) {
            browser.resize(width, 740, 1);
            bench.birch().tellJob(Birch.IDLE, 0);
            bench.awaitText("state", "Idle");
            long before = top("rows");
            bench.birch().tellJob(Birch.PRINTING, 42);
            bench.awaitText("share", "42 %");
            assertEquals(before, top("rows"), "printing, " + heights(width));
            bench.birch().tellJob(Birch.FAULT, 42);
            bench.awaitText("fault-title", "Fault");
            assertEquals(before, top("rows"), "a fault, " + heights(width));
            press("acknowledge");
            bench.awaitText("fault-title", "Fault, acknowledged");
            assertEquals(before, top("rows"), "acknowledged, " + heights(width));
            bench.birch().tellJob(Birch.IDLE, 0);
            bench.awaitText("fault-title", "The fault is over");
            press("reset");
            Await.until("no fault", () -> !browser.byId("fault-title").isDisplayed());
            assertEquals(before, top("rows"), "over, " + heights(width));
        }
    }

    /** What may have moved it. */
    private static String heights(int width) {
        return width + " px wide; " + browser.run("""
                const parts = [...document.querySelectorAll('#stage, #now, #now > *, #controls, #controls > *, #rows, #rows > *')];
                return parts.map((part) => `${part.id || part.className} ${part.offsetHeight}`).join(', ');
                """);
    }

    /** On the page, regardless of scrolling; rounded to pixels, because a browser divides room in steps of 1/64. */
    private static long top(String id) {
        return ((Number) browser.run(
                        "return Math.round(scrollY + document.getElementById(arguments[0]).getBoundingClientRect().top)",
                        id))
                .longValue();
    }

    /** On the smallest common screen, upright: what must be visible at a glance needs no scrolling, nor does a fault. */
    @Test
    void aPhoneShowsAllThatMattersAtOnce() {
        browser.resize(360, 740, 1);
        bench.birch().tellHeat(60, 60, 215, 215);
        bench.birch().tellJob(Birch.PRINTING, 42);
        bench.awaitText("share", "42 %");
        pressFirst("#bar [data-panel=light]");
        browser.byId("brightness").sendKeys(Keys.HOME);
        Await.until("it is listed", () -> browser.text("standing").contains("Strip: 0 %"));
        pressFirst("#bar [data-panel=light]");
        assertOnScreen("stage", "motion", "state", "share", "when", "heat", "standing", "bar");
        bench.birch().tellJob(Birch.FAULT, 42);
        bench.awaitText("fault-title", "Fault");
        bench.awaitText("fault-words", "ALARM tip blocked");
        assertOnScreen("stage", "fault-title", "fault-words", "acknowledge", "heat", "standing", "bar");
        long high = ((Number) browser.run("return document.getElementById('acknowledge').offsetHeight")).longValue();
        assertTrue(high >= 56, "large enough for a thumb: " + high + " px");
        pressFirst("#standing button");
        calmDown();
    }

    private static void assertOnScreen(String... ids) {
        for (String id : ids) {
            Object room = browser.run(
                    "const { top, bottom } = document.getElementById(arguments[0]).getBoundingClientRect();"
                            + "const bar = document.getElementById('bar').getBoundingClientRect().top;"
                            + "return [top, arguments[0] === 'bar' ? bottom - innerHeight : bottom - bar]",
                    id);
            double above = ((Number) ((List<?>) room).get(0)).doubleValue();
            double below = ((Number) ((List<?>) room).get(1)).doubleValue();
            assertTrue(above >= 0 && below <= 0.5, id + " is off the screen: " + room);
        }
    }

    /** On a large screen everything is visible at once, including the controls. */
    @Test
    void aLargeScreenShowsAllControlsAtOnce() {
        bench.birch().tellJob(Birch.PRINTING, 42);
        bench.awaitText("share", "42 %");
        for (String id : List.of("stage", "state", "heat", "brightness", "hue", "try-button", "panel-night", "rows")) {
            Object bottom = browser.run(
                    "return document.getElementById(arguments[0]).getBoundingClientRect().bottom <= innerHeight", id);
            assertEquals(true, bottom, id + " needs scrolling");
        }
    }

    /** Each step of the slider is one of lightness (CIE L*), so half of it is 18 % of the light; and it is lit while it is dragged. */
    @Test
    void brightnessIsLitWhileItIsDragged() {
        bench.birch().tellJob(Birch.STOPPED, 0);
        bench.awaitOnBoth(Birch.still(Birch.STOPPED));
        browser.run("window.sent = performance.getEntriesByType('resource').length");
        browser.run("""
                const range = document.getElementById('brightness');
                for (let step = 100; step >= 50; step--) {
                  range.value = step;
                  range.dispatchEvent(new Event('input'));
                }
                """);
        bench.awaitText("answer", "Brightness changed.");
        awaitFrame(
                "a dimmer strip, before the slider is let go",
                frame -> frame.strip().get(1) >= 9 && frame.strip().get(1) <= 11);
        Object asked = browser.run(
                "return performance.getEntriesByType('resource').filter(({ name }) => name.includes('ask/')).length");
        assertTrue(((Number) asked).intValue() <= 3, "of 51 steps, only the newest: " + asked + " were asked for");
        browser.run("document.getElementById('brightness').dispatchEvent(new Event('change'))");
        assertEquals("18 % of full light", browser.byId("brightness").getAttribute("aria-valuetext"));
        Await.until("it is listed", () -> browser.text("standing").contains("Strip: 18 %, until changed"));
        pressFirst("#standing button");
        bench.awaitOnBoth(Birch.still(Birch.STOPPED));
        bench.awaitText("standing", "");
    }

    @Test
    void theWhiteLightIsAskedForAndGivenBack() {
        browser.byId("work-0").sendKeys(Keys.END);
        awaitFrame("full white light", frame -> frame.duties().get(0) == FULL_DUTY);
        Await.until("the page says so", () -> browser.text("lamps").equals("work 100 %"));
        Await.until("it is listed", () -> browser.text("standing").contains("work: 100 %, until changed"));
        pressFirst("#standing button");
        awaitFrame(
                "none, as the look of an idle printer has it",
                frame -> frame.duties().get(0) == 0);
    }

    @Test
    void allIsOffAndAutomaticAgainInOnePressEach() {
        bench.birch().tellJob(Birch.STOPPED, 0);
        bench.awaitOnBoth(Birch.still(Birch.STOPPED));
        browser.resize(360, 740, 1);
        press("bar-lights");
        awaitFrame("a dark strip", frame -> frame.strip().stream().allMatch(duty -> duty == 0));
        bench.awaitText("bar-lights", "Automatic");
        press("bar-lights");
        bench.awaitOnBoth(Birch.still(Birch.STOPPED));
        bench.awaitText("standing", "");
    }

    /** By a tap on the picture, which chooses the zone. */
    @Test
    void aZoneIsLitInAColour() {
        bench.birch().tellJob(Birch.PRINTING, 0);
        bench.awaitOnBoth(Birch.printing(0));
        new Actions(browser.driver())
                .moveToElement(browser.byId("strip"), zoneX("bed"), zoneY())
                .click()
                .perform();
        Await.until(
                "the zone",
                () -> browser.text("targets").contains("bed")
                        && !browser.all("#targets [data-zone=bed][aria-checked=true]")
                                .isEmpty());
        browser.run("""
                document.getElementById('hue').value = 142;
                document.getElementById('hue').dispatchEvent(new Event('input'));
                document.getElementById('hue').dispatchEvent(new Event('change'));
                """);
        awaitFrame(
                "a green bed and nothing else",
                frame -> frame.strip().get(0) > 50
                        && frame.strip().get(1) < frame.strip().get(0) / 2
                        && frame.strip().subList(30, 60).stream().allMatch(duty -> duty == 0));
        Await.until(
                "it is listed, with its end",
                () -> browser.text("standing").matches("(?s)bed: oklch.*until \\d\\d:\\d\\d.*"));
        pressFirst("#standing button");
        bench.awaitOnBoth(Birch.printing(0));
    }

    private static int zoneX(String zone) {
        assertEquals("bed", zone, "pixels 0 to 9 of 30");
        long width = ((Number) browser.run("return document.getElementById('strip').clientWidth")).longValue();
        return (int) (width * -0.3);
    }

    private static int zoneY() {
        long height = ((Number) browser.run("return document.getElementById('strip').clientHeight")).longValue();
        return (int) (height * -0.04);
    }

    @Test
    void aLookIsTriedForAWhileAndReleased() {
        browser.all("#try option[value=held]").get(0).click();
        press("try-button");
        bench.awaitOnBoth(Birch.still(Birch.HELD));
        Await.until("until when", () -> browser.text("standing").matches("(?s)Look: held, until \\d\\d:\\d\\d.*"));
        pressFirst("#standing button");
        bench.awaitOnBoth(Birch.still(Birch.IDLE));
    }

    /** A chosen look is played only on the picture, until it is asked for, or for six seconds. */
    @Test
    void aLookIsSeenOnThePageBeforeItGoesOnTheStrip() {
        bench.awaitOnBoth(Birch.still(Birch.IDLE));
        browser.all("#try option[value=stopped]").get(0).click();
        bench.awaitText("preview", "Preview of stopped: not on the strip");
        Await.until("it is drawn", () -> PageBench.alike(bench.drawn(), screenOf(Birch.still(Birch.STOPPED))));
        assertTrue(
                bench.controller()
                        .recording()
                        .lastIs(frame -> Birch.still(Birch.IDLE).isOn(frame.strip())),
                "and not lit");
        Await.until("it ends by itself", () -> !browser.byId("preview").isDisplayed());
        bench.awaitOnBoth(Birch.still(Birch.IDLE));
    }

    /** The results of “check” and “plan” are one press away. */
    @Test
    void planAndCheckAreOnePressAway() {
        browser.byId("row-wiring").click();
        Await.until("the drawing of the wiring", () ->
                (Boolean) browser.run("return (document.querySelector('#plan img')?.naturalWidth ?? 0) > 100"));
        browser.byId("row-file").click();
        Await.until(
                "what there is to warn of",
                LONG,
                () -> browser.text("file").equals("no warnings")
                        || browser.text("file").contains("looks."));
    }

    /** Only warnings, until somebody wants to see the rest. */
    @Test
    void theLogShowsWarningsAndOnRequestEverything() {
        browser.run("document.getElementById('row-warnings').open = true");
        assertEquals(0L, browser.run(INFO_LINES));
        browser.byId("log-all").click();
        assertTrue((Long) browser.run(INFO_LINES) > 0, "the daemon has said that it is there");
        browser.byId("log-all").click();
        assertEquals(0L, browser.run(INFO_LINES));
    }

    @Test
    void aFinishedLookCanBeShownToo() {
        browser.all("#try option[value=linen]").get(0).click();
        press("try-button");
        Await.until("it is listed", () -> browser.text("standing").startsWith("Look: linen, until "));
        awaitFrame(
                "soft white light on all of the strip",
                frame -> frame.strip().stream().allMatch(duty -> duty > 0));
        pressFirst("#standing button");
        bench.awaitOnBoth(Birch.still(Birch.IDLE));
    }

    /** Nobody can show a false fault from a phone, nor that the printer is off. */
    @Test
    void aTapCannotRaiseAFalseAlarm() {
        List<String> looks = browser.all("#try option").stream()
                .map(option -> option.getAttribute("value"))
                .toList();
        assertTrue(looks.contains("held"), looks.toString());
        assertFalse(
                looks.stream()
                        .anyMatch(look -> look.startsWith("fault")
                                || List.of("silent", "red-lantern", "tripped-fuse")
                                        .contains(look)),
                looks.toString());
    }

    @Test
    void lightIsDimmedForTheQuietOfTheNight() {
        bench.birch().tellJob(Birch.HELD, 0);
        bench.awaitOnBoth(Birch.still(Birch.HELD));
        int full = bench.controller().recording().last().strip().get(1);
        pressFirst("[data-quiet=on]");
        awaitFrame("dimmed", frame -> frame.strip().get(1) > 0 && frame.strip().get(1) < full / 2);
        Await.until("the page says so", () -> browser.text("quiet-words").startsWith("Light is dimmed now."));
        Await.until(
                "which is pressed",
                () -> "true".equals(browser.all("[data-quiet=on]").get(0).getAttribute("aria-pressed")));
        pressFirst("[data-quiet=off]");
        bench.awaitOnBoth(Birch.still(Birch.HELD));
        pressFirst("#standing button");
        bench.awaitText("standing", "");
    }

    /** Only by keyboard. The fault follows ISA-18.1 sequence M: seen, it is steady; over, it waits for its reset. */
    @Test
    void aFaultIsSeenAndResetByKeyboard() {
        bench.birch().tellJob(Birch.FAULT, 0);
        bench.awaitText("fault-title", "Fault");
        tabTo("acknowledge");
        browser.driver().switchTo().activeElement().sendKeys(Keys.ENTER);
        bench.awaitText("fault-title", "Fault, acknowledged");
        awaitFrame(
                "steady red of 0.35",
                frame -> frame.strip().get(1) >= 88 && frame.strip().get(1) <= 90);
        assertEquals("fault-title", focused());
        assertFalse(browser.byId("reset").isDisplayed(), "a reset is for a fault that is over");
        bench.birch().tellJob(Birch.IDLE, 0);
        bench.awaitText("fault-title", "The fault is over");
        tabTo("reset");
        browser.driver().switchTo().activeElement().sendKeys(Keys.SPACE);
        bench.awaitText("state", "Idle");
        Await.until("no fault", () -> !browser.byId("fault-title").isDisplayed());
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

    /** In the browser's language, if there is a word table for it: texts, numbers, times and plurals. */
    @Test
    void thePageSpeaksTheBrowsersLanguage() {
        bench.birch().tellJob(Birch.PRINTING, 42);
        Map<String, List<String>> wanted = Map.of(
                "de-AT",
                        List.of(
                                "de",
                                "Druckt",
                                "42 %",
                                "Helligkeit geändert.",
                                "Nicht ausgeführt: Es gibt keine Störung zu quittieren."),
                "es",
                        List.of(
                                "es",
                                "Imprimiendo",
                                "42 %",
                                "Brillo cambiado.",
                                "No se ha hecho: no hay ningún fallo que reconocer."),
                "fr-CH",
                        List.of(
                                "fr",
                                "Impression",
                                "42\u00a0%",
                                "Luminosité modifiée.",
                                "Non effectué\u00a0: il n’y a aucun défaut à acquitter."),
                "zh-CN", List.of("zh-Hans", "打印中", "42%", "亮度已更改。", "未执行：没有需要确认的故障。"),
                "sv",
                        List.of(
                                "en",
                                "Printing",
                                "42 %",
                                "Brightness changed.",
                                "Not done: there is no fault to acknowledge."));
        wanted.forEach((language, words) -> {
            browser.speak(language);
            bench.browser().open(bench.url());
            bench.awaitText("state", words.get(1));
            bench.awaitText("share", words.get(2));
            assertEquals(words.get(0), browser.run("return document.documentElement.lang"));
            assertEquals(List.of(), browser.run(UNSAID), language);
            browser.byId("brightness").sendKeys(Keys.HOME);
            bench.awaitText("answer", words.get(3));
            browser.run("document.getElementById('acknowledge').hidden = false");
            browser.run("document.getElementById('acknowledge').click()");
            bench.awaitText("answer", words.get(4));
            Await.until("it is listed", () -> !browser.all("#standing button").isEmpty());
            pressFirst("#standing button");
            bench.awaitText("standing", "");
            browser.resize(360, 740, 1);
            assertEquals(360L, browser.run("return document.documentElement.scrollWidth"), language);
            browser.resize(1440, 900, 1);
        });
        browser.speak("en-GB");
    }

    /** The page notifies of a fault while it is hidden, if somebody wants it to. */
    @Test
    void aFaultIsToldInANoticeWhileThePageIsOutOfSight() {
        browser.run(NOTICES);
        browser.run("document.getElementById('row-device').open = true");
        press("notify");
        Await.until("it is on", () -> "true".equals(browser.byId("notify").getAttribute("aria-pressed")));
        bench.birch().tellJob(Birch.HELD, 0);
        bench.awaitText("state", "Paused");
        awaitNotice("worker");
        browser.run(NO_WORKER);
        awaitNotice("page");
        press("notify");
        assertEquals("false", browser.byId("notify").getAttribute("aria-pressed"));
    }

    private static void awaitNotice(String from) {
        browser.run("window.told = []");
        browser.run(HIDE, true);
        bench.birch().tellJob(Birch.FAULT, 0);
        Await.until(
                "the notice",
                () -> browser.run("return told").equals(List.of(List.of(from, "Fault · birch", "ALARM tip blocked"))));
        browser.run(HIDE, false);
        calmDown();
    }

    /** A refusal is shown in the desk's own words. */
    @Test
    void whatCannotBeDoneIsToldSo() {
        browser.run("document.getElementById('acknowledge').hidden = false");
        browser.run("document.getElementById('acknowledge').click()");
        bench.awaitText("answer", "Not done: there is no fault to acknowledge.");
    }

    /** The built-in look for a fault is red once a second; the page draws it still until the viewer has read about the risk of flashing. */
    @Test
    void flashingIsDrawnStillUntilItIsAskedFor() {
        bench.birch().tellJob(Birch.FAULT, 0);
        bench.awaitText("fault-title", "Fault");
        Await.until(
                () -> "as bright as it gets; drawn is " + bench.drawn(),
                () -> bench.drawn().get(0) == 255,
                LONG);
        assertEquals(0, turnsIn(3), "changes of direction while it is drawn still");
        press("motion");
        assertTrue(browser.text("motion-warning").contains("photosensitive epilepsy"));
        press("motion-show");
        Await.until("flashes, once they are asked for", () -> turnsIn(3) >= 2);
        int turns = turnsIn(3);
        assertTrue(turns <= 2 * 3 * 3 + 1, "more than three flashes a second (WCAG 2.3.1): " + turns + " turns in 3 s");
        press("motion");
        Await.until("still again", () -> turnsIn(2) == 0);
        calmDown();
    }

    private static void calmDown() {
        press("acknowledge");
        bench.awaitText("fault-title", "Fault, acknowledged");
        bench.birch().tellJob(Birch.IDLE, 0);
        bench.awaitText("fault-title", "The fault is over");
        press("reset");
        Await.until("no fault", () -> !browser.byId("fault-title").isDisplayed());
    }

    /** How often the first pixel's light changes direction by a tenth of full (relative luminance would be less). */
    private static int turnsIn(int seconds) {
        Object turns = browser.await(PageModule.text("shape.js") + """
                const [seconds, done] = arguments;
                const canvas = document.getElementById('strip');
                const density = canvas.width / canvas.clientWidth;
                const { x, y } = places({ shape: 'straight', pixels: 30 }, canvas.clientWidth, canvas.clientHeight).points[0];
                const begin = performance.now();
                let turns = 0, way = 0, low = null, high = null;
                const look = (now) => {
                  const light = Math.pow(canvas.getContext('2d').getImageData(x * density, y * density, 1, 1).data[0] / 255, 2.2);
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

    /** What is drawn when, calculated with invented times by the page's own script: the number of drawn frames, and their brightness. */
    @Test
    void drawingLeavesFramesOutAndAddsNone() {
        Object counts = browser.run(PageModule.text("still.js") + """
                const frame = (at, value) => ({ at, strip: Uint8Array.of(value, 0, 0), duties: [] });
                const play = (frames, end, show, calm, flashes) => {
                  const pace = new Pace();
                  const drawn = [];
                  for (let now = 0; now <= end; now += 10) {
                    frames.filter(([comes]) => comes === now).forEach(([, f]) => pace.take(f, now, flashes ? 'beacon' : 'plain', flashes));
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
                const rare = play([[0, frame(0, 0)], [1000, frame(1000, 255)], [1200, frame(1200, 0)], [20000, frame(20000, 9)]],
                  30000, false, false, true).filter(([now]) => now > 3000);
                return [quick.length, calm.length, calm.every(([, , fade]) => fade === 1000) ? 1 : 0,
                  Math.min(...still.filter(([now]) => now >= 1500).map(([, value]) => value)), burst.length,
                  Math.min(...rare.map(([, value]) => value)), rare.length];
                """);
        List<Integer> found = ((List<?>) counts)
                .stream().map(count -> ((Number) count).intValue()).toList();
        assertTrue(found.get(0) <= 21, "twenty a second at most: " + found);
        assertTrue(found.get(1) <= 6 && found.get(1) >= 4, "one a second where motion is to be reduced: " + found);
        assertEquals(1, found.get(2), "and each is faded into");
        assertEquals(255, found.get(3), "a flashing look is drawn as bright as it gets");
        assertTrue(found.get(4) <= 2, "what comes late and close together is left out: " + found);
        assertEquals(255, found.get(5), "a light that shows once in twenty seconds stays in the picture");
        assertEquals(1, found.get(6), "nothing is drawn while nothing comes");
    }

    @Test
    void aLostConnectionIsToldAndComesBackByItself() {
        bench.kill();
        Await.until("word of the loss", () -> browser.text("veil").startsWith("Connection lost at "));
        bench.awaitText("contact", "connection lost");
        Await.until(
                "a grey picture",
                () -> browser.run("return getComputedStyle(document.getElementById('bench')).filter")
                        .equals("grayscale(1)"));
        assertTrue(
                browser.all("#controls button, #controls input, #controls select").stream()
                        .noneMatch(control -> control.isEnabled()),
                "nothing can be asked for");
        bench.restart();
        bench.awaitText("contact", "live again");
        assertTrue(browser.byId("brightness").isEnabled());
        bench.birch().tellJob(Birch.HELD, 0);
        bench.awaitOnBoth(Birch.still(Birch.HELD));
        Await.until("nothing is said of it any more", () -> browser.text("veil").isEmpty());
    }

    /** Source of the size of text: WCAG 2.2, 1.4.4; of the width: 1.4.10. */
    @Test
    void nothingHasToBeScrolledSideways() {
        browser.byId("brightness").sendKeys(Keys.HOME);
        Await.until("it is listed", () -> browser.text("standing").contains("Strip: 0 %"));
        for (int width : List.of(360, 320, 768)) {
            for (int text : List.of(16, 32)) {
                browser.resize(width, 740, 1);
                browser.run("document.documentElement.style.fontSize = arguments[0] + 'px'", text);
                for (String panel : List.of("light", "colour", "look", "night")) {
                    browser.run("document.getElementById('controls').dataset.open = arguments[0]", panel);
                    Object wide = browser.run("return document.documentElement.scrollWidth");
                    assertEquals((long) width, wide, text + " px text, " + panel + " open");
                }
            }
        }
    }

    /** If a person forces the colours, the picture keeps those of the light. */
    @Test
    void thePictureKeepsItsColoursWhereOthersAreForced() {
        browser.forceColours(true);
        bench.birch().tellJob(Birch.STOPPED, 0);
        bench.awaitOnBoth(Birch.still(Birch.STOPPED));
        assertEquals(
                "rgb(13, 16, 20)",
                browser.run("return getComputedStyle(document.getElementById('stage')).backgroundColor"));
        browser.forceColours(false);
    }
}
