package dev.lampwright.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.engine.Daemon;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.EnumSource.Mode;

/** Escape sequences: ECMA-48, 8.3; DEC's private modes 7 (DECAWM) and 25 (DECTCEM) as in xterm's control sequences, from memory. */
class ScreenTest {
    private static final int USUAL_WIDTH = 80;

    private static Screen screen(ColourDepth depth) {
        Config config = Demo.config("mqtt://127.0.0.1:1883");
        CheckingDisplay display = new CheckingDisplay(config.setup());
        MemoryController controller = new MemoryController(MemoryController.BOARD, display);
        Daemon daemon = new Daemon(
                config, same -> new MemoryLine(controller, config.controller().baud(), System::nanoTime));
        return new Screen(config, daemon, display, depth);
    }

    private static List<String> lines(String text) {
        return text.replaceAll("\u001b\\[[0-9;?]*[A-Za-z]", "").lines().toList();
    }

    @ParameterizedTest
    @EnumSource(mode = Mode.EXCLUDE, names = "PLAIN")
    void eachPictureFitsIntoTheUsualTerminalAndIsDrawnOverTheOneBefore(ColourDepth depth) {
        Screen screen = screen(depth);
        String first = screen.next();
        assertTrue(lines(first).stream().allMatch(line -> line.length() <= USUAL_WIDTH), first);
        assertTrue(
                screen.next()
                        .startsWith("\u001b["
                                + first.chars()
                                        .filter(character -> character == '\n')
                                        .count() + "A"),
                "up by as many lines");
    }

    /** A line that wraps would be two, and the next picture a line too low. */
    @ParameterizedTest
    @EnumSource(mode = Mode.EXCLUDE, names = "PLAIN")
    void noLineWrapsInANarrowTerminalAndTheTerminalIsGivenBack(ColourDepth depth) {
        assertEquals("\u001b[?25l\u001b[?7l", screen(depth).begin());
        assertEquals("\u001b[?7h\u001b[?25h", screen(depth).end());
    }
}
