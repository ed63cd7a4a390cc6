package dev.lampwright.tool.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class PixelSearchTest {
    private static int count(PixelSearch search, int pixels) {
        int questions = 0;
        while (!search.done()) {
            int pixel = search.next();
            search.answered(pixel, pixel < pixels);
            questions++;
        }
        return questions;
    }

    @Test
    void everyLengthIsCounted() {
        for (int most = 1; most <= 130; most++) {
            for (int pixels = 0; pixels <= most; pixels++) {
                PixelSearch search = new PixelSearch(most);
                count(search, pixels);
                assertEquals(pixels, search.pixels());
                assertEquals(pixels == most, search.full());
            }
        }
    }

    /** Doubling and halving ask for each bit of the number twice at most. */
    @Test
    void longStripsTakeFewQuestions() {
        for (int pixels = 1; pixels <= 2000; pixels++) {
            int bits = 32 - Integer.numberOfLeadingZeros(pixels);
            assertTrue(count(new PixelSearch(2000), pixels) <= 2 * bits + 2, pixels + " pixels");
        }
    }

    @Test
    void aWrongNoIsMendedByGoingOn() {
        for (int pixels = 10; pixels < 200; pixels++) {
            PixelSearch search = new PixelSearch(300);
            search.answered(search.next(), false);
            count(search, pixels);
            assertTrue(search.pixels() < pixels, "the first answer was wrong");
            search.goOn();
            count(search, pixels);
            assertEquals(pixels, search.pixels());
        }
    }

    @Test
    void aWrongYesIsMendedByStartingOver() {
        for (int pixels = 1; pixels < 200; pixels++) {
            PixelSearch search = new PixelSearch(300);
            search.answered(250, true);
            count(search, pixels);
            assertEquals(251, search.pixels());
            search.startOver();
            count(search, pixels);
            assertEquals(pixels, search.pixels());
        }
    }
}
