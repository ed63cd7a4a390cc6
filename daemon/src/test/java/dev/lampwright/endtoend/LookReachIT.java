package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Browser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The look editor with the token for saving, and while the daemon is gone. In a real browser, with the real jar. */
@Timeout(180)
class LookReachIT {
    private static final String TOKEN = "only-for-those-who-make-looks";

    @TempDir
    private Path folder;

    @Test
    void whoeverHasTheTokenSavesAndADaemonThatRestartsLosesNothing() throws IOException {
        Path file = Files.writeString(folder.resolve("edit"), TOKEN + "\n");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
        try (PageBench bench = new PageBench(folder, "edit_token_file = \"edit\"")) {
            bench.birch().tellJob(Birch.IDLE, 0);
            bench.browser().resize(1440, 900, 1);
            Editor editor = new Editor(bench);
            viewersCannotSave(bench, editor);
            theTokenIsAskedForOnce(bench, editor);
            aDaemonThatRestartsLosesNothing(bench, editor);
            assertEquals(List.of(), editor.complaints());
        }
    }

    private static void viewersCannotSave(PageBench bench, Editor editor) throws IOException {
        String before = Files.readString(bench.config());
        editor.open("idle");
        editor.add("mark");
        editor.await(
                "the current",
                () -> editor.texts("#meter-current .value").get(0).endsWith(" mA"));
        editor.press("#save");
        editor.awaitAnswer("Looks can be saved on the computer that runs Lampwright, or with the token");
        for (String id : List.of("save-as", "rename", "remove", "versions-part", "cue-form")) {
            assertEquals(true, bench.browser().run("return document.getElementById(arguments[0]).hidden", id), id);
        }
        assertEquals(List.of(), editor.violations("for viewers"));
        assertEquals(before, Files.readString(bench.config()));
    }

    private static void theTokenIsAskedForOnce(PageBench bench, Editor editor) throws IOException {
        editor.give("#edit-token", "something-else-altogether");
        editor.press("#edit-form button");
        editor.awaitAnswer("Not done: that is not the token");
        editor.give("#edit-token", TOKEN);
        editor.press("#edit-form button");
        editor.awaitAnswer("Looks are saved in ");
        assertFalse(bench.browser().byId("edit-form").isDisplayed(), "it is not asked for any more");
        editor.awaitDraft();
        editor.open("idle");
        editor.await(
                "the draft, since the token is remembered",
                () -> editor.sentences().size() == 2);
        editor.save("idle");
        assertTrue(Files.readString(bench.config()).contains("pointer"));
    }

    private static void aDaemonThatRestartsLosesNothing(PageBench bench, Editor editor) throws IOException {
        Browser browser = bench.browser();
        editor.awaitNoDraft();
        editor.addAndAwaitDraft("bar");
        bench.kill();
        editor.await("the page is lost", () -> browser.text("contact").equals("connection lost"));
        editor.add("glints");
        editor.await("the draft is not kept", () -> editor.content("keep-draft").startsWith("The draft is not kept: "));
        editor.press("#save");
        editor.awaitAnswer("Not done: Lampwright is not responding.");
        editor.await(
                "the comparison does not last for ever",
                () -> editor.texts("#meter-alike .value").equals(List.of("–")));
        editor.press("#undo");
        editor.await("the page can be used meanwhile", () -> editor.sentences().size() == 3);
        editor.press("#redo");
        bench.restart();
        editor.await("it is there again", () -> browser.text("contact").startsWith("live"));
        editor.awaitDraft();
        assertEquals(4, editor.sentences().size(), "what was changed meanwhile is still there");
        editor.await(
                "the current",
                () -> editor.texts("#meter-current .value").get(0).endsWith(" mA"));
        editor.open("idle");
        editor.await(
                "the draft, from before and after", () -> editor.sentences().size() == 4);
        editor.save("idle");
        assertTrue(Files.readString(bench.config()).contains("grains"));
    }
}
