package dev.lampwright.payload;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class WordPatternTest {
    @ParameterizedTest
    @CsvSource({
        "RUN, RUN, true",
        "RUN, run, true",
        "RUN, RUNS, false",
        "RUN*, RUNS, true",
        "RUN*, RUN, true",
        "*RUN, DRY RUN, true",
        "*, anything, true",
        "A*C, ABBC, true",
        "A*C, ABB, false",
        "A**C, AC, true",
        "A.C, ABC, false",
        "[A], A, false",
        "\\E.*, x, false",
        "größe, GRÖSSE, false",
        "läuft, LÄUFT, true",
        "*A*B, xAyBzAqB, true",
        "*A*B, xAyBzAqBz, false",
        "A*A, A, false",
        "'', '', true",
        "'', x, false",
        "*, '', true",
        "ΣΤΟΠ, στοπ, true",
        "PREHEATING, preheating, true",
        "PREHEATING, preheatıng, false",
        "PREHEATING, PREHEATİNG, false",
        "f\u0131n, F\u0131N, true",
    })
    void matches(String pattern, String word, boolean matches) {
        assertEquals(matches, new WordPattern(pattern).matches(word));
    }

    /** Unicode, CaseFolding.txt: of status C or S, to one character; ı and İ are of status T alone, or not in it. */
    @Test
    void foldsCaseAsUnicodeDoes() {
        assertTrue(new WordPattern("ς").matches("Σ"));
        assertTrue(new WordPattern("K").matches("\u212A"), "the Kelvin sign");
        assertFalse(new WordPattern("i").matches("\u0131"));
        assertFalse(new WordPattern("I").matches("\u0131"));
    }

    @Test
    void takesNoLongerForManyStars() {
        assertFalse(new WordPattern("*a".repeat(5000) + "b").matches("a".repeat(5000)));
        assertTrue(new WordPattern("*a".repeat(5000)).matches("a".repeat(5000)));
    }
}
