package dev.lampwright.tool.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class PlanTextTest {
    private static final String RIG = """
            strip.pixels = 30
            dimmers.work = { channel = 0, volts = 24, full_mA = 800 }
            wiring.strip.wire = "18 AWG"
            """;

    @Test
    void defaultsAreTold() {
        List<String> lines = PlanText.of(Rigs.plan(RIG));
        assertTrue(lines.contains("  wiring.dimmers.work.wire = 20 AWG"), lines.toString());
        assertTrue(lines.contains("  wiring.strip.copper_um = 35"), lines.toString());
        assertTrue(lines.stream().noneMatch(line -> line.contains("wiring.strip.wire =")), lines.toString());
    }

    @Test
    void cautionsAreTold() {
        String words = String.join(" ", PlanText.of(Rigs.plan(RIG))).replaceAll("\\s+", " ");
        Cautions.ALL.forEach(caution -> assertTrue(words.contains(caution), caution));
    }

    @Test
    void linesFitTheTerminal() {
        PlanText.of(Rigs.plan(RIG)).forEach(line -> assertTrue(line.length() <= 100, line));
    }

    @Test
    void wrapping() {
        assertEquals(List.of("one two", "  three", "  four"), LineBreaker.wrapped("one two three four", 7, 2));
        assertEquals(List.of("unbreakable"), LineBreaker.wrapped("unbreakable", 5, 2));
        assertEquals(List.of("  * a", "    bcdefgh", "    i"), LineBreaker.wrapped("  * a bcdefgh i", 6, 4));
        assertEquals(List.of(""), LineBreaker.wrapped("", 5, 2));
    }

    @Test
    void columns() {
        PlanText.Columns columns = new PlanText.Columns("light", "A");
        columns.row("x", "10.5");
        columns.row("longer", "-1");
        assertEquals(List.of("  light   A", "  x       10.5", "  longer    -1"), columns.lines());
    }
}
