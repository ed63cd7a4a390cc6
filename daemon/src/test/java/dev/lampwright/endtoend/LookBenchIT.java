package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.Browser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
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

/**
 * The look editor in a real browser, between the real jar and a controller behind a device node. Source for accessibility: WCAG 2.2, levels A
 * and AA, as far as axe-core (Deque Systems) can check it.
 */
@Tag("alone")
@Timeout(180)
class LookBenchIT {
    /** What has no text of its own where there should be one, or the bare code of one. */
    private static final String UNSAID = """
            return [...document.querySelectorAll('[data-say]')]
              .filter((element) => element.textContent === '' || element.textContent === element.dataset.say)
              .map((element) => element.dataset.say);
            """;

    private static PageBench bench;
    private static Browser browser;
    private static Editor editor;

    @BeforeAll
    static void start(@TempDir Path folder) {
        bench = new PageBench(folder);
        browser = bench.browser();
        editor = new Editor(bench);
    }

    @AfterAll
    static void stop() {
        bench.close();
    }

    @BeforeEach
    void beIdle() {
        browser.prefer("dark", false);
        browser.resize(1440, 900, 1);
        bench.birch().tellJob(Birch.IDLE, 0);
    }

    @AfterEach
    void thePageHasComplainedOfNothing() {
        assertEquals(List.of(), editor.complaints());
    }

    private static void open(String look) {
        browser.open(bench.url() + "bench.html?look=" + look);
        Await.until("the bench", () -> browser.byId("workbench").isDisplayed());
        awaitMeter();
    }

    private static void awaitMeter() {
        Await.until("the current", () -> current() >= 0);
    }

    /** In mA, as the meter says; below 0 while it says nothing. */
    private static int current() {
        String words =
                String.valueOf(browser.run("return document.querySelector('#meter-current .value').textContent"));
        return words.matches("\\d+ of \\d+ mA") ? Integer.parseInt(words.substring(0, words.indexOf(' '))) : -1;
    }

    private static void key(CharSequence... keys) {
        browser.driver().switchTo().activeElement().sendKeys(keys);
    }

    /** Goes there with the Tab key alone. */
    private static void tabTo(String selector) {
        go(actions -> actions.sendKeys(Keys.TAB), selector);
    }

    /** The same, backwards. */
    private static void tabBackTo(String selector) {
        go(actions -> actions.keyDown(Keys.SHIFT).sendKeys(Keys.TAB).keyUp(Keys.SHIFT), selector);
    }

    /** By the keyboard itself, since what is sent to a field for files must be the name of one. */
    private static void go(UnaryOperator<Actions> press, String selector) {
        Await.until("the focus on " + selector, () -> {
            press.apply(new Actions(browser.driver())).perform();
            return isFocused(selector);
        });
    }

    private static boolean isFocused(String selector) {
        return (Boolean) browser.run("return document.activeElement.matches(arguments[0])", selector);
    }

    private static List<?> sentences() {
        return (List<?>) browser.run("return [...document.querySelectorAll('.sentence')].map(e => e.textContent)");
    }

    /** The light of all pixels that the stage draws, added up. */
    private static long light() {
        return bench.drawn().stream().mapToLong(Long::longValue).sum();
    }

    @Test
    void aLookIsMadeWithoutAPointer() throws IOException {
        String before = Files.readString(bench.config());
        bench.open();
        tabTo("#to-bench a");
        key(Keys.ENTER);
        Await.until("the look that is on", () -> browser.text("name").equals("idle"));
        tabTo("#other");
        key(Keys.ENTER);
        tabTo("#new-name");
        key("shelf-glow");
        tabTo("#new-form button");
        key(Keys.ENTER);
        Await.until("an empty bench", () -> browser.text("name").equals("shelf-glow"));
        Await.until("nothing is drawn", () -> light() == 0);
        Await.until("there is no current to tell", () -> current() < 0);

        tabTo("[data-add=colour]");
        key(Keys.ENTER);
        assertTrue(isFocused(".sentence"), "the focus is on the new layer");
        Await.until("current", () -> current() > 50);
        Await.until("light", () -> light() > 2000);
        int half = current();
        tabTo(".strength");
        key(Keys.HOME);
        key(Keys.ARROW_RIGHT);
        Await.until("less current", () -> current() < half / 2);
        key(Keys.END);
        Await.until("more current", () -> current() > half);

        tabBackTo("[data-add=mark]");
        key(Keys.ENTER);
        Await.until("two layers", () -> sentences().size() == 2);
        List<?> made = sentences();
        assertEquals("A mark of white on the whole strip, at job progress", made.get(0));
        tabBackTo(".handle");
        key(Keys.ARROW_DOWN);
        Await.until("the other order", () -> sentences().equals(List.of(made.get(1), made.get(0))));
        assertTrue(browser.text("news").contains("now 2 of 2"), browser.text("news"));
        assertTrue(isFocused(".handle"), "the focus stays where it was");
        key(Keys.chord(Keys.CONTROL, "z"));
        Await.until("the order from before", () -> sentences().equals(made));
        key(Keys.chord(Keys.CONTROL, "z"));
        Await.until("one layer", () -> sentences().size() == 1);
        tabTo("#redo");
        key(Keys.ENTER);
        Await.until("both again", () -> sentences().equals(made));

        Await.until("it has been checked", () -> current() > half);
        tabTo("#save");
        key(Keys.ENTER);
        Await.until(
                () -> "it is saved; the page says " + browser.text("answer"),
                () -> browser.text("answer").startsWith("shelf-glow is saved in "),
                Duration.ofSeconds(20));
        String after = Files.readString(bench.config());
        assertTrue(after.contains("[looks.shelf-glow]"), after);
        List<String> added = new ArrayList<>(after.lines().toList());
        before.lines().toList().forEach(added::remove);
        assertTrue(
                added.stream()
                        .anyMatch(line -> line.contains("extent = \"pointer\"") && line.contains("colour = \"white\"")),
                added.toString());
        assertTrue(before.lines().allMatch(line -> after.lines().anyMatch(line::equals)), "all else is as it was");
    }

    /** In the words of “check”, at the layer that is to blame. */
    @Test
    void whatFlashesTooOftenIsNotSaved() throws IOException {
        String before = Files.readString(bench.config());
        open("porch-lamp");
        browser.all("[data-add=colour]").get(0).sendKeys(Keys.ENTER);
        browser.all("[data-key=rhythm] input")
                .get(0)
                .sendKeys(Keys.chord(Keys.CONTROL, "a"), "on 0.1s off 0.1s", Keys.ENTER);
        Await.until(
                "the words at the layer",
                () -> browser.all(".layer").get(0).getText().contains("flashes"));
        browser.byId("save").sendKeys(Keys.ENTER);
        Await.until("a refusal", () -> browser.text("answer").startsWith("Not saved: "));
        assertTrue(isFocused(".layer:first-child .sentence"), "the layer to blame");
        assertEquals(before, Files.readString(bench.config()));
    }

    @Test
    void aLookIsTriedOnTheStripAndEnds() {
        open("linen");
        awaitIdle();
        browser.byId("try").sendKeys(Keys.ENTER);
        Await.until("a countdown", () -> browser.text("try-words").matches("Stop, \\d+ s left"));
        Await.until(
                "all of the strip is lit",
                () -> bench.controller()
                        .recording()
                        .lastIs(frame ->
                                frame.fromHost() && frame.strip().stream().allMatch(duty -> duty > 0)));
        browser.byId("try").sendKeys(Keys.ENTER);
        awaitIdle();
        assertEquals("Try on the strip", browser.text("try-words"));
    }

    private static void awaitIdle() {
        Await.until(
                "the strip as it is when nothing happens",
                () -> bench.controller()
                        .recording()
                        .lastIs(frame ->
                                frame.fromHost() && Birch.still(Birch.IDLE).isOn(frame.strip())));
    }

    /** In dark and light, on a phone: with nothing, with each kind of layer opened, with every part opened, and with each dialog. */
    @Test
    void everybodyCanUseItInEachOfItsStates() {
        List<String> found = new ArrayList<>();
        for (String scheme : List.of("dark", "light")) {
            browser.prefer(scheme, false);
            browser.resize(360, 740, 1);
            open("honey-jar");
            found.addAll(editor.violations(scheme + ", as it is opened"));
            for (String kind : List.of("gradient", "bar", "band", "glints", "embers")) {
                editor.add(kind);
                found.addAll(editor.violations(scheme + ", " + kind));
                assertEquals(360L, width(), "no scrolling sideways with " + kind);
            }
            openAllParts();
            found.addAll(editor.violations(scheme + ", all parts"));
            assertEquals(360L, width(), "no scrolling sideways with all parts");
            for (String opener : List.of("#other", "#copy", "#save-as")) {
                editor.press(opener);
                editor.await("a dialog", () -> !browser.all("dialog[open]").isEmpty());
                found.addAll(editor.violations(scheme + ", " + opener));
                browser.run("document.querySelector('dialog[open]').close()");
            }
        }
        assertEquals(List.of(), found);
    }

    private static long width() {
        return (Long) browser.run("return document.documentElement.scrollWidth");
    }

    /** The printer that is played, the recordings, older versions, and a cue. */
    private static void openAllParts() {
        browser.run("document.querySelectorAll('details').forEach((part) => { part.open = true; })");
        editor.press("[data-cue='0 edit']");
        editor.give("[data-cue='field signal']", "nozzle.actual_C");
    }

    @Test
    void itSpeaksTheBrowsersLanguageAndFitsAPhone() {
        browser.resize(360, 740, 1);
        for (String language : List.of("en-GB", "de-DE", "es-ES", "fr-FR", "zh-CN")) {
            browser.speak(language);
            browser.open(bench.url() + "bench.html?look=honey-jar");
            Await.until("the layers", () -> !browser.all(".sentence").isEmpty());
            assertEquals(List.of(), browser.run(UNSAID), language);
            for (String kind : List.of("gradient", "band", "glints")) {
                editor.add(kind);
                assertEquals(360L, width(), language + ", " + kind);
            }
            openAllParts();
            assertEquals(360L, width(), language);
            Object codes =
                    browser.run("return document.body.innerText.match(/\\b(bench|why|state|signal)\\.[a-z_.]+/g)");
            assertEquals(null, codes, language);
        }
        browser.speak("en-GB");
    }

    /** So that a person who edits a layer far down sees what it costs. */
    @Test
    void theLimitsStayInViewWhileALayerIsEdited() {
        for (int[] size : new int[][] {{360, 740}, {1440, 900}}) {
            browser.resize(size[0], size[1], 1);
            open("honey-jar");
            editor.add("band");
            for (String key : List.of("colour", "zone", "rhythm", "blend")) {
                browser.run(
                        "const box = document.querySelector(`.layer:first-child [data-key=${arguments[0]}]`);"
                                + " box.querySelector('input, select, button').focus(); box.scrollIntoView({ block: 'nearest' });",
                        key);
                for (String meter : List.of("current", "flashes", "alike")) {
                    assertTrue(editor.isSeen("#meter-" + meter + " .value"), size[0] + " px, " + key + ": " + meter);
                }
                assertTrue(
                        editor.isSeen(".layer:first-child [data-key=" + key + "] :is(input, select, button)"),
                        size[0] + " px: " + key);
            }
        }
    }
}
