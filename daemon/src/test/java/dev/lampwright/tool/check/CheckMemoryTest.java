package dev.lampwright.tool.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.Examined;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whether a check draws only the looks whose result is not known. */
class CheckMemoryTest {
    private static final String FILE = """
            frames_per_s = 4
            [broker]
            url = "mqtt://127.0.0.1:1883"
            [printer.state]
            topic = "shop/rowan/job"
            printing = ["RUN"]
            [controller]
            port = "memory"
            [strip]
            pixels = 8
            [looks.waiting]
            layers = [{ colour = "navy" }]
            """;

    @TempDir
    private Path folder;

    private final CheckMemory memory = new CheckMemory();

    private Examined examined(String text) throws ConfigException {
        return ConfigFile.examine(folder.resolve("rowan.toml"), text, List.of());
    }

    /** How many frames are drawn to check a file that is read for that. */
    private int frames(String text) throws ConfigException {
        int[] frames = new int[1];
        Progress progress = new Progress() {
            @Override
            public void at(int done, int of) {
                // Only frames are counted.
            }

            @Override
            public void drawn() {
                frames[0]++;
            }
        };
        assertEquals(List.of(), LookMistakes.of(examined(text), progress, memory));
        return frames[0];
    }

    @Test
    void afterAnEditOfOneLookTheOthersAreNotDrawnAgain() throws ConfigException {
        int looks = examined(FILE).config().looks().size();
        int all = frames(FILE);
        int cues = frames(FILE);
        int edited = frames(FILE.replace("navy", "teal"));
        assertTrue(edited > cues, edited + " frames, and " + cues + " without the look");
        assertEquals(all - cues, looks * (edited - cues));
    }

    @Test
    void onOtherLightsAllAreDrawnAgain() throws ConfigException {
        int all = frames(FILE);
        assertEquals(all, frames(FILE.replace("pixels = 8", "pixels = 9")));
    }
}
