package dev.lampwright.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.cue.Wish;
import dev.lampwright.cue.Wishes;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WishLinesTest {
    private static final long START = -123_456_789;

    @Test
    void aLineReadIsTheLineWritten() {
        Wishes wishes = Wishes.NONE
                .withBrightness(0.1)
                .withQuiet(0.3)
                .withLevels(new float[] {Float.NaN, 0.7f})
                .withLook("done", START + 5_000_000_001L)
                .withPixels(new float[] {Float.NaN, 0, 0, 0, 0.1f, 0.2f, 0.3f, 1}, START + 7)
                .with(Wish.LOOK_FADE, new float[] {2.5f})
                .with(Wish.LEVELS_FADE, new float[] {Float.NaN, 600})
                .acknowledged()
                .reset();
        String line = WishLines.line(wishes, 12, START);
        WishLines.Entry entry = WishLines.read(line).orElseThrow();
        assertEquals(12, entry.tick());
        assertEquals(line, WishLines.line(entry.wishes(), 12, 0));
        assertEquals("done", entry.wishes().lookAt(5_000_000_000L));
        assertEquals("", entry.wishes().lookAt(5_000_000_001L));
        assertEquals(0.7f, entry.wishes().level(1));
        assertEquals(List.of(2.5f), entry.wishes().floats(Wish.LOOK_FADE));
        assertEquals(List.of(Float.NaN, 600f), entry.wishes().floats(Wish.LEVELS_FADE));
    }

    /** As recorded before there were fades. */
    @Test
    void aLineWithoutFadesHasNone() {
        String line =
                "{\"tick\":12,\"wishes\":{\"brightness\":0.1,\"quiet\":0.3,\"levels\":[null,0.7],\"look\":\"done\","
                        + "\"look_until_ns\":5000000001,\"pixels\":[],\"pixels_until_ns\":0,\"acknowledgements\":1,\"resets\":1}}";
        WishLines.Entry entry = WishLines.read(line).orElseThrow();
        assertEquals(List.of(), entry.wishes().floats(Wish.LOOK_FADE));
        assertEquals(line, WishLines.line(entry.wishes(), 12, 0));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"{\"tick\": 1, \"at_s\": 0}", "{\"wishes\": 3}", "nonsense", "{\"at_s\": 0} {}"})
    void linesAboutSomethingElse(String line) {
        assertEquals(Optional.empty(), WishLines.read(line));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"brightness\":0.5 | \"brightness\":2 | has wishes with brightness 2; write a number from 0 to 1",
                "\"levels\":[]      | \"levels\":[7]   | has wishes with 7 in levels; write numbers from 0 to 1, or null",
                "\"pixels\":[]      | \"pixel\":[]     | has wishes without pixels; write an array of numbers",
                "\"resets\":0       | \"resets\":\"no\" | has wishes with resets \"no\"; write a whole number",
                "\"look_fade\":[2.0] | \"look_fade\":[-1] | has wishes with -1 in look_fade; write numbers of 0 or more, or null",
                "\"tick\":4         | \"tick\":-1      | has wishes, which go with tick alone; leave such lines as they were"
                        + " recorded",
            })
    void aLineThatMakesNoSense(String right, String wrong, String complaint) {
        Wishes wishes = Wishes.NONE.withBrightness(0.5).with(Wish.LOOK_FADE, new float[] {2});
        String line = WishLines.line(wishes, 4, 0);
        assertTrue(line.contains(right), line);
        Exception e = assertThrows(IllegalArgumentException.class, () -> WishLines.read(line.replace(right, wrong)));
        assertEquals(complaint, e.getMessage());
    }
}
