package dev.lampwright.payload;

import static org.junit.jupiter.api.Assertions.assertEquals;

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
    })
    void matches(String pattern, String word, boolean matches) {
        assertEquals(matches, new WordPattern(pattern).matches(word));
    }
}
