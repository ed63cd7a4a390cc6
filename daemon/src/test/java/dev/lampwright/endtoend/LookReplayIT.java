package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Browser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A recording of a printer, replayed in the preview of the look editor: in a real browser, by the real jar. */
@Timeout(120)
class LookReplayIT {
    private static final Path JOB = Path.of("doc/motions/job.jsonl");
    private static final String UPLOAD = """
            const files = new DataTransfer();
            files.items.add(new File([arguments[1]], arguments[0]));
            const chooser = document.getElementById('replay-file');
            chooser.files = files.files;
            chooser.dispatchEvent(new Event('change'));
            """;

    @TempDir
    private Path folder;

    @Test
    void aRecordingIsReplayedInThePreview() throws IOException {
        try (PageBench bench = new PageBench(folder)) {
            Browser browser = bench.browser();
            Editor editor = new Editor(bench);
            browser.resize(360, 740, 1);
            editor.open("jam-pan");
            browser.run("document.getElementById('play-part').open = true");
            thePrinterDoesAsItDid(browser, editor);
            whoeverScrubsSeesThatMoment(browser, editor);
            itEndsOrStartsOver(browser, editor);
            oneIsUploadedAndRemoved(browser, editor);
            assertEquals(360L, browser.run("return document.documentElement.scrollWidth"), "no scrolling sideways");
            assertEquals(List.of(), editor.violations("with a recording"));
            assertEquals(List.of(), editor.complaints());
        }
    }

    private static void thePrinterDoesAsItDid(Browser browser, Editor editor) {
        editor.give("#recording", "example");
        editor.give("#replay-speed", "4");
        editor.await("the slider spans the recording", () -> slider(browser, "max") > 30);
        Set<String> states = new TreeSet<>();
        editor.await("heating, then printing, then done", () -> {
            states.add(editor.content("play-sum"));
            return states.containsAll(Set.of("Recording: Heating", "Recording: Printing", "Recording: Done"));
        });
    }

    private static double slider(Browser browser, String what) {
        return Double.parseDouble(
                String.valueOf(browser.run("return document.getElementById('time')[arguments[0]]", what)));
    }

    private static void whoeverScrubsSeesThatMoment(Browser browser, Editor editor) {
        for (double second : new double[] {20, 4, 30}) {
            editor.give("#time", String.valueOf(second));
            editor.await("second " + second, () -> Math.abs(slider(browser, "value") - second) < 1);
        }
        assertEquals("false", browser.byId("play").getDomAttribute("aria-pressed"), "it stands still there");
    }

    private static void itEndsOrStartsOver(Browser browser, Editor editor) {
        editor.press("#replay-loop");
        editor.give("#replay-speed", "60");
        editor.press("#play");
        editor.await(
                "it ends",
                () -> browser.byId("play").getDomAttribute("aria-pressed").equals("false"));
        editor.press("#replay-loop");
        editor.give("#time", "0");
        editor.press("#play");
        editor.await("the end", () -> slider(browser, "value") > 30);
        editor.await("the beginning again", () -> slider(browser, "value") < 15);
        assertEquals("true", browser.byId("play").getDomAttribute("aria-pressed"), "it goes on");
    }

    private static void oneIsUploadedAndRemoved(Browser browser, Editor editor) throws IOException {
        browser.run(UPLOAD, "Notes.txt", "nothing of a printer\n");
        editor.awaitAnswer("Not done: line 1 is not from a recording");
        browser.run(UPLOAD, "My Job.jsonl", Files.readString(JOB));
        editor.awaitAnswer("my-job can be replayed now.");
        editor.await(
                "it is replayed", () -> options(browser).stream().anyMatch(option -> option.startsWith("my-job, ")));
        assertTrue(
                editor.content("play-sum").startsWith("Recording")
                        || editor.content("play-sum").startsWith("Replay"),
                editor.content("play-sum"));
        editor.press("#replay-remove");
        editor.awaitAnswer("my-job is removed.");
        assertFalse(options(browser).stream().anyMatch(option -> option.startsWith("my-job")));
        editor.await("the printer as it is", () -> editor.content("play-sum").equals("As it is now"));
    }

    private static List<String> options(Browser browser) {
        List<?> options = (List<?>)
                browser.run("return [...document.querySelectorAll('#recording option')].map((e) => e.textContent)");
        return options.stream().map(String::valueOf).toList();
    }
}
