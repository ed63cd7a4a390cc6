package dev.lampwright.tool.picture;

import static dev.lampwright.testing.Bounds.assertAbove;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LetteringTest {
    private static final Lettering LETTERING = new Lettering(2);

    private static List<Integer> drawn(String text) {
        try (Paper paper = new Paper(40, 40, 0)) {
            paper.write(LETTERING, text, 8, 24, Paper.Side.RIGHT, 0xFFFFFF);
            return IntStream.range(0, 1600)
                    .mapToObj(i -> paper.image().getRGB(i % 40, i / 40))
                    .toList();
        }
    }

    /** The characters of bare keys in TOML 1.0, plus those in file names and the pictures' own words. */
    @Test
    void everyLetterOfAnOrdinaryNameIsThereAndUnlikeAllOthers() {
        String names = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_.,:;()[]+=<>%/'\"*!?#&";
        Set<List<Integer>> seen = new HashSet<>();
        seen.add(drawn("\u2603"));
        names.codePoints().forEach(c -> assertTrue(seen.add(drawn(Character.toString(c))), Character.toString(c)));
    }

    @Test
    void aLetterThatIsNotThereIsABox() {
        assertEquals(drawn("\u2603"), drawn("\ud83d\ude00"));
        assertNotEquals(drawn(" "), drawn("\u2603"));
    }

    @Test
    void widthsAddUp() {
        assertEquals(0, LETTERING.width(""));
        double gap = LETTERING.width("aa") - 2 * LETTERING.width("a");
        assertAbove(0, gap);
        double letters = LETTERING.width("a") + LETTERING.width("i") + LETTERING.width("W");
        assertEquals(letters + 2 * gap, LETTERING.width("aiW"), 1e-9);
        assertEquals(letters + 2 * gap, LETTERING.width("Wai"), 1e-9);
        assertEquals(12, LETTERING.height());
    }
}
