package dev.lampwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Whether a phone can read the code. */
class PageCodeTest {
    private static final String ADDRESS = "http://192.168.1.7:61117/#correct-horse-battery-staple%25";

    @Test
    void anotherLibraryReadsTheSameFromTerminalAndPicture() {
        PageCode code = PageCode.of(ADDRESS);
        assertEquals(ADDRESS, QrReading.ofLines(code.lines(false)));
        assertEquals(ADDRESS, QrReading.ofLines(code.lines(true)));
        assertEquals(ADDRESS, QrReading.ofSvg(code.svg()));
    }

    @Test
    void itFitsIntoAnOrdinaryTerminal() {
        List<String> lines = PageCode.of(ADDRESS).lines(false);
        assertTrue(lines.size() < 24 && lines.get(0).length() < 80, lines.size() + " lines");
        assertTrue(lines.stream().allMatch(line -> line.length() == lines.get(0).length()));
    }
}
