package dev.lampwright.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.engine.Daemon;
import dev.lampwright.protocol.Frame;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.EnumSource.Mode;

/** Escape sequences: ECMA-48, 8.3; DEC's private modes 7 (DECAWM) and 25 (DECTCEM) as in xterm's control sequences, from memory. */
class ScreenTest {
    private static final int USUAL_WIDTH = 80;

    private static Screen screen(ColourDepth depth) {
        return screen(depth, List.of());
    }

    /** A screen of a strip whose first pixels have some bytes each, in the strip's own order of green, red and blue; the rest is dark. */
    private static Screen screen(ColourDepth depth, List<byte[]> pixels) {
        Config config = Demo.config("mqtt://127.0.0.1:1883");
        CheckingDisplay display = new CheckingDisplay(config.setup());
        Frame frame =
                new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
        for (int i = 0; i < pixels.size(); i++) {
            System.arraycopy(pixels.get(i), 0, frame.strip(), 3 * i, 3);
        }
        display.show(MemoryController.Light.WHOLE, 0, frame, 0);
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

    private static final List<byte[]> GREEN_RED_BLUE_WHITE_AND_DIM = List.of(
            new byte[] {(byte) 255, 0, 0},
            new byte[] {0, (byte) 255, 0},
            new byte[] {0, 0, (byte) 255},
            new byte[] {(byte) 255, (byte) 255, (byte) 255},
            new byte[] {55, 55, 55});

    /** The colours of the cells of each line that has any, as sent to the terminal. */
    private static List<List<String>> cells(String picture) {
        Pattern cell = Pattern.compile("\u001b\\[38;([0-9;]+)m\u2588");
        return picture.lines()
                .map(line -> cell.matcher(line)
                        .results()
                        .map(match -> match.group(1))
                        .toList())
                .filter(cells -> !cells.isEmpty())
                .toList();
    }

    private static List<String> andDark(List<String> first, String dark) {
        List<String> all = new ArrayList<>(first);
        all.addAll(Collections.nCopies(60 - first.size(), dark));
        return all;
    }

    /** A byte is linear light: 55 of 255 is 0.5 in sRGB (IEC 61966-2-1), 128 of 255. */
    @Test
    void eachPixelIsACellOfItsColour() {
        List<String> line =
                andDark(List.of("2;0;255;0", "2;255;0;0", "2;0;0;255", "2;255;255;255", "2;128;128;128"), "2;0;0;0");
        assertEquals(
                List.of(line, line),
                cells(screen(ColourDepth.FULL, GREEN_RED_BLUE_WHITE_AND_DIM).next()));
    }

    /** Of xterm's 256 colours, 16 is black, 46 green, 196 red, 21 blue and 231 white. */
    @Test
    void aTerminalOf256ColoursGetsThoseOfItsCube() {
        List<String> line = andDark(List.of("5;46", "5;196", "5;21", "5;231"), "5;16");
        assertEquals(
                List.of(line, line),
                cells(screen(ColourDepth.INDEXED, GREEN_RED_BLUE_WHITE_AND_DIM.subList(0, 4))
                        .next()));
    }

    @Test
    void withoutColoursBrighterPixelsHaveMoreInk() {
        String line = screen(ColourDepth.PLAIN, GREEN_RED_BLUE_WHITE_AND_DIM).next();
        assertEquals("@@@@+" + " ".repeat(55), line.substring(line.indexOf('|') + 1, line.lastIndexOf('|')));
        assertTrue(
                line.endsWith("|" + System.lineSeparator()),
                "the drawing comes last, so that a screen reader can stop before it");
    }

    /** A line that wraps would become two, and the next picture would be a line too low. */
    @ParameterizedTest
    @EnumSource(mode = Mode.EXCLUDE, names = "PLAIN")
    void noLineWrapsInANarrowTerminalAndTheTerminalIsGivenBack(ColourDepth depth) {
        assertEquals("\u001b[?25l\u001b[?7l", screen(depth).begin());
        assertEquals("\u001b[?7h\u001b[?25h", screen(depth).end());
    }

    /** Nothing has been counted yet: any number would be made up. */
    @ParameterizedTest
    @EnumSource
    void theFirstPictureShowsNoRate(ColourDepth depth) {
        assertTrue(screen(depth).next().contains("? frames/s"));
    }
}
