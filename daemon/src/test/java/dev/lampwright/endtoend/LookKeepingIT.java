package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Browser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/** What the look editor keeps, whatever happens: versions to undo, drafts, saved looks and cues. In a real browser, with the real jar. */
@Timeout(180)
class LookKeepingIT {
    private static PageBench bench;
    private static Browser browser;
    private static Editor editor;
    private static String before;

    @BeforeAll
    static void start(@TempDir Path folder) throws IOException {
        bench = new PageBench(folder);
        browser = bench.browser();
        editor = new Editor(bench);
        browser.resize(1440, 900, 1);
        before = Files.readString(bench.config());
    }

    @AfterAll
    static void stop() {
        bench.close();
    }

    @BeforeEach
    void beIdle() {
        bench.birch().tellJob(Birch.IDLE, 0);
    }

    @AfterEach
    void thePageHasComplainedOfNothing() {
        assertEquals(List.of(), editor.complaints());
    }

    private static String file() {
        try {
            return Files.readString(bench.config());
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** Somebody else writes the file, in an editor of text. */
    private static void replaceInFile(String text, String other) throws IOException {
        String now = file();
        assertTrue(now.contains(text), now);
        Files.writeString(bench.config(), now.replace(text, other));
    }

    private static void openNew(String name) {
        editor.press("#other");
        browser.run(
                "document.getElementById('new-name').value = arguments[0]; document.getElementById('new-from').value = ''",
                name);
        editor.press("#new-form button");
        editor.awaitName(name);
    }

    /** Opens a look without whatever an earlier test has left of it. */
    private static void openAsInFile(String look) {
        editor.open(look);
        if (!editor.content("keep-draft").isEmpty()) {
            editor.press("#drop-draft");
            editor.awaitNoDraft();
        }
    }

    @Test
    void layersAreMovedByDraggingAndByKeys() {
        openAsInFile("moss-bank");
        browser.run(
                "while (document.querySelectorAll('.sentence').length > 0) { document.querySelector('.sentence').click();"
                        + " [...document.querySelectorAll('.body:not([hidden]) > .row button')].at(-1).click(); }");
        for (String kind : List.of("colour", "bar", "mark")) {
            editor.add(kind);
        }
        editor.press(".sentence[aria-expanded=true]");
        List<String> made = editor.sentences();
        List<WebElement> handles = browser.all(".handle");
        WebElement below = handles.get(2);
        new Actions(browser.driver())
                .clickAndHold(handles.get(0))
                .moveToElement(below, 0, below.getSize().height / 2 + 20)
                .release()
                .perform();
        List<String> dragged = List.of(made.get(1), made.get(2), made.get(0));
        editor.await("the topmost is the lowest", () -> editor.sentences().equals(dragged));
        assertTrue(editor.content("news").endsWith("now 3 of 3"), editor.content("news"));
        browser.all(".handle").get(2).sendKeys(Keys.ARROW_UP);
        editor.await(
                "it is one higher", () -> editor.sentences().equals(List.of(made.get(1), made.get(0), made.get(2))));
        assertTrue(editor.isFocused(".layer:nth-child(2) .handle"), "the focus goes along");
        browser.driver().switchTo().activeElement().sendKeys(Keys.HOME);
        editor.await("it is the topmost", () -> editor.sentences().equals(made));
        editor.press("#undo");
        editor.press("#undo");
        editor.press("#undo");
        editor.await("as it was made", () -> editor.sentences().equals(made));
        editor.press("#redo");
        editor.await("dragged again", () -> editor.sentences().equals(dragged));
    }

    @Test
    void everyChangeCanBeUndoneAndDoneAgain() {
        openAsInFile("sea-mist");
        List<String> first = editor.sentences();
        editor.add("band");
        editor.give(".layer:first-child [data-key=colour] .picker input[type=text]", "crimson");
        editor.give(".layer:first-child [data-key=width_px] input[type=number]", "4");
        editor.press(".layer:first-child [data-key=zone] [data-value=bed]");
        editor.press(".layer:first-child .eye");
        editor.give(".layer:first-child .strength", "0.5");
        editor.give("#light-work", "0.3");
        String made = state();
        for (int i = 0; i < 7; i++) {
            editor.press("#undo");
        }
        editor.await("as it was opened", () -> editor.sentences().equals(first));
        assertEquals("true", browser.byId("undo").getDomAttribute("aria-disabled"), "nothing more to undo");
        for (int i = 0; i < 7; i++) {
            editor.press("#redo");
        }
        editor.await("all of it again", () -> state().equals(made));
        assertEquals("true", browser.byId("redo").getDomAttribute("aria-disabled"), "nothing more to do again");
    }

    private static String state() {
        return editor.sentences() + " " + editor.texts(".layer output") + " " + editor.texts("#lights output")
                + browser.run(
                        "return [...document.querySelectorAll('.eye')].map((e) => e.getAttribute('aria-pressed'))");
    }

    @Test
    void whatIsChangedWhileItIsSavedIsKept() {
        openAsInFile("held");
        browser.run("document.querySelector('[data-add=bar]').click(); document.getElementById('save').click();"
                + " document.querySelector('[data-add=mark]').click()");
        editor.awaitAnswer("held is saved in ");
        assertEquals(3, editor.sentences().size(), "the change stays on the bench");
        assertFalse(look("held").contains("pointer"), "what was sent is in the file: " + look("held"));
        assertTrue(look("held").contains("bar"), look("held"));
        editor.awaitDraft();
        editor.open("held");
        editor.await("the draft with the change", () -> editor.sentences().size() == 3);
        editor.save("held");
        editor.awaitNoDraft();
        assertTrue(look("held").contains("pointer"), look("held"));
        editor.open("held");
        assertEquals("", editor.content("keep-draft"), "no draft comes back after the look was saved");
    }

    /** The lines of a look of the user's own. */
    private static String look(String name) {
        String text = file();
        int own = text.indexOf("[looks." + name + "]");
        return own >= 0
                ? text.substring(own, text.indexOf("\n]\n", own))
                : text.lines()
                        .filter(line -> line.startsWith(name + " = {"))
                        .findFirst()
                        .orElse("");
    }

    @Test
    void aNewLooksDraftComesBackAndItsCreationCanBeTakenBack() {
        openAsInFile("idle");
        openNew("attic-lamp");
        editor.addAndAwaitDraft("embers");
        editor.open("attic-lamp");
        editor.await("the layer", () -> editor.sentences().size() == 1);
        assertEquals("New look", editor.content("look-from"));
        editor.open("idle");
        editor.await(
                "it is among the drafts",
                () -> editor.texts("#open-look option").contains("attic-lamp"));
        editor.open("attic-lamp");
        editor.save("attic-lamp");
        openVersions();
        editor.await("its creation", () -> firstVersion().contains("attic-lamp saved"));
        editor.press("#versions button");
        editor.answer("Undo this change");
        editor.awaitName("idle");
        assertFalse(file().contains("attic-lamp"), file());
        editor.await(
                "the list is up to date",
                () -> !editor.texts("#open-look option").contains("attic-lamp"));
        assertEquals("true", browser.byId("undo").getDomAttribute("aria-disabled"), "nothing of it can be undone");
    }

    private static void openVersions() {
        browser.run("document.getElementById('versions-part').open = true");
    }

    private static String firstVersion() {
        List<String> all = editor.texts("#versions li > span");
        return all.isEmpty() ? "" : all.get(0);
    }

    @Test
    void aLookIsRenamedDeletedAndRestored() {
        openAsInFile("idle");
        openNew("cellar-lamp");
        editor.add("glints");
        editor.save("cellar-lamp");
        rename("loft-lamp");
        assertTrue(file().contains("[looks.loft-lamp]") && !file().contains("cellar-lamp"), file());
        editor.await(
                "the list has the new name",
                () -> editor.texts("#open-look option").contains("loft-lamp"));
        assertFalse(editor.texts("#open-look option").contains("cellar-lamp"));
        editor.add("mark");
        editor.save("loft-lamp");
        String whole = file();

        editor.press("#remove");
        editor.answer("Delete the look");
        editor.awaitAnswer("loft-lamp is deleted.");
        editor.awaitName("idle");
        assertFalse(file().contains("loft-lamp"), file());
        openVersions();
        editor.await("that it was deleted", () -> firstVersion().contains("loft-lamp deleted"));
        editor.press("#versions button");
        editor.answer("Undo this change");
        editor.awaitName("loft-lamp");
        assertEquals(whole, file());
        assertEquals(2, editor.sentences().size());
    }

    @Test
    void aNewNameIsUndone() {
        openAsInFile("idle");
        openNew("landing-lamp");
        editor.add("glints");
        editor.save("landing-lamp");
        String whole = file();
        rename("yard-light");
        openVersions();
        editor.await("that it was renamed", () -> firstVersion().contains("yard-light renamed"));
        editor.press("#versions button");
        editor.answer("Undo this change");
        editor.awaitName("landing-lamp");
        assertEquals(whole, file());
        assertEquals(1, editor.sentences().size());
    }

    private static void rename(String to) {
        editor.press("#rename");
        editor.await("a question", () -> !browser.all("#wanted-name").isEmpty());
        browser.run("document.getElementById('wanted-name').value = '" + to + "'");
        editor.press("#question-answers .main");
        editor.awaitName(to);
        editor.awaitAnswer("The look is now called " + to + ".");
    }

    @Test
    void aLookThatACueNamesIsNotDeleted() {
        openAsInFile("idle");
        openNew("yard-lamp");
        editor.add("mark");
        editor.save("yard-lamp");
        editor.give("#cue-state", "held");
        editor.press("#cue-form button");
        editor.press("#cues-save");
        editor.awaitAnswer("Saved in ");
        editor.press("#remove");
        editor.answer("Delete the look");
        editor.awaitAnswer("Not done: a cue still names this look; change the cue first.");
        assertEquals("yard-lamp", browser.text("name"));
        assertTrue(file().contains("[looks.yard-lamp]"), file());
        editor.press("[data-cue='0 remove']");
        editor.press("#cues-save");
        editor.awaitAnswer("Saved in ");
        assertFalse(file().contains("look = \"yard-lamp\""), file());
    }

    @Test
    void mineIsSavedOverWhatSomebodyElseHasWrittenIfIWantThat() throws IOException {
        openAsInFile("done");
        editor.add("mark");
        replaceInFile("colour = \"#ffffff\" }] }", "colour = \"#fffff0\" }] }");
        editor.press("#save");
        editor.await("a question", () -> editor.content("question-title").equals("done has been changed elsewhere"));
        List<String> texts = editor.texts("#question-body pre");
        assertEquals(3, texts.size(), "three columns");
        assertTrue(texts.get(0).contains("pointer") && texts.get(0).contains("#ffffff"), texts.get(0));
        assertTrue(texts.get(1).contains("#fffff0"), texts.get(1));
        assertTrue(texts.get(2).contains("#ffffff") && !texts.get(2).contains("pointer"), texts.get(2));
        assertEquals(List.of(), editor.violations("the question"));
        editor.answer("Save your version");
        editor.awaitAnswer("done is saved in ");
        assertTrue(look("done").contains("pointer") && !look("done").contains("#fffff0"), look("done"));
    }

    @Test
    void whatSomebodyElseHasWrittenIsKeptIfIWantThat() throws IOException {
        openAsInFile("silent");
        editor.addAndAwaitDraft("mark");
        replaceInFile("\"#004080\"", "\"#004090\"");
        editor.press("#save");
        editor.answer("Keep the current version");
        editor.await("what is there", () -> editor.sentences().size() == 1);
        editor.awaitNoDraft();
        editor.press(".sentence");
        editor.await(
                "its colour",
                () -> browser.run("return document.querySelector('.picker input[type=text]').value")
                        .equals("#004090"));
        assertTrue(file().contains("\"#004090\"") && !look("silent").contains("pointer"), look("silent"));
    }

    @Test
    void cuesAreChangedAsSentencesAndShowWhichOneHolds() throws IOException {
        openAsInFile("idle");
        editor.await(
                "the one that is on",
                () -> editor.texts("#cues [data-on=true] .words").equals(List.of("when “Idle” → idle, fade 0 s")));
        bench.birch().tellJob(Birch.PRINTING, 40);
        editor.await(
                "another is on",
                () -> editor.texts("#cues [data-on=true] .words")
                        .equals(List.of("when “Printing” → printing, fade 0 s")));
        bench.birch().tellJob(Birch.IDLE, 0);

        editor.give("#cue-state", "warming");
        editor.press("#cue-form button");
        editor.give("[data-cue='field signal']", "nozzle.actual_C");
        editor.give("[data-cue='field above']", "40");
        editor.give("[data-cue='field fade_s']", "1.5");
        editor.give("[data-cue='field look']", "done");
        String sentence = "when “Heating” and nozzle temperature above 40 °C → done, fade 1.5 s";
        editor.await("the sentence", () -> editor.texts("#cues .words").get(0).equals(sentence));
        editor.press("[data-cue='0 down']");
        editor.await(
                "it is the second", () -> editor.texts("#cues .words").get(1).equals(sentence));
        assertTrue(editor.isFocused("[data-cue='1 down']"), "the focus goes along");

        editor.press("[data-add=mark]");
        editor.save("idle");
        assertEquals(sentence, editor.texts("#cues .words").get(1), "saving a look leaves them alone");

        editor.press("#cues-save");
        editor.awaitAnswer("Saved in ");
        String text = file();
        assertTrue(
                text.contains("signal = \"nozzle.actual_C\"")
                        && text.contains("above = 40")
                        && text.contains("fade_s = 1.5"),
                text);
        editor.await(
                "saved",
                () -> browser.run("return document.getElementById('cues-acts').hidden")
                        .equals(true));

        editor.press("[data-cue='1 remove']");
        replaceInFile("above = 40", "above = 50");
        editor.press("#cues-save");
        editor.await(
                "a question", () -> editor.content("question-title").equals("The cues have been changed elsewhere"));
        assertTrue(
                editor.texts("#question-body pre").get(1).contains("above 50 °C"),
                editor.texts("#question-body pre").toString());
        editor.answer("Keep the current version");
        editor.await("theirs", () -> editor.texts("#cues .words").get(1).contains("above 50 °C"));
        editor.press("[data-cue='1 remove']");
        editor.press("#cues-save");
        editor.awaitAnswer("Saved in ");
        assertFalse(file().contains("nozzle.actual_C\""), file());
        assertTrue(before.lines().filter(line -> line.startsWith("#")).allMatch(file()::contains), "comments stay");
    }

    @Test
    void otherZonesInTheFileAreOfferedAtOnce() throws IOException {
        openAsInFile("sea-mist");
        editor.add("colour");
        editor.await(
                "the zones",
                () -> editor.texts(".layer:first-child [data-key=zone] button").contains("nozzle"));
        List<String> made = editor.sentences();
        replaceInFile("[zones]\n", "[zones]\nlid = \"3-5\"\n");
        editor.await(
                "the new zone",
                () -> editor.texts(".layer:first-child [data-key=zone] button").contains("lid"));
        assertEquals(made, editor.sentences(), "what was made is still there");
        editor.press(".layer:first-child [data-key=zone] [data-value=lid]");
        editor.await("it is on it", () -> editor.sentences().get(0).contains("lid"));
        editor.press("#undo");
        editor.await("it can be undone", () -> editor.sentences().equals(made));
    }
}
