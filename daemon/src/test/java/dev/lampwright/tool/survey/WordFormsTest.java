package dev.lampwright.tool.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.payload.WordPattern;
import dev.lampwright.printer.PrinterState;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Words for states with another ending than in the list. */
class WordFormsTest {
    private static Map<PrinterState, List<String>> guessed(String... heard) {
        List<String> words = List.of(heard);
        return GuessedWords.of(words, StateWords.of(words));
    }

    private static boolean isGuessed(Map<PrinterState, List<String>> guesses, PrinterState state, String word) {
        return guesses.get(state).stream().anyMatch(pattern -> new WordPattern(pattern).matches(word));
    }

    @ParameterizedTest
    @CsvSource({
        "wstrzymana, HELD",
        "wstrzymane, HELD",
        "anulowana, STOPPED",
        "pozastavena, HELD",
        "pozastavený, HELD",
        "en pausa: pausadas, HELD",
        "cancelada, STOPPED",
        "terminada, DONE",
        "annullata, STOPPED",
        "annulée, STOPPED",
        "завершена, DONE",
        "приостановлена, HELD",
        "suspendată, HELD"
    })
    void anotherEndingIsTheSameWord(String word, PrinterState state) {
        assertEquals(Optional.of(state), StateWords.stateOf(word));
    }

    /** What is guessed as a fault when it was not heard is one when it was. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "ERROR",
                "ERR",
                "FAULT",
                "FAIL",
                "ALARM",
                "EMERGENCY",
                "CRITICAL",
                "JAM",
                "BLOCKED",
                "TROUBLE",
                "TROUBLE 5"
            })
    void aGuessedFaultIsKnownOnceItIsHeard(String word) {
        assertEquals(Optional.of(PrinterState.FAULT), StateWords.stateOf(word));
    }

    /** A part of a word in the list, another word that begins alike, a noun with another ending, and a form that two states share. */
    @ParameterizedTest
    @ValueSource(strings = {"lista", "wstrzym", "wstrzas", "pauzo", "gotowa", "fallas"})
    void anotherWordIsNotTheSame(String word) {
        assertEquals(Optional.empty(), StateWords.stateOf(word));
    }

    @Test
    void aGuessHoldsForEveryEnding() {
        Map<PrinterState, List<String>> guesses = guessed("bezczynna", "nagrzewanie", "drukowanie");
        for (String word : List.of("wstrzymana", "wstrzymano", "Wstrzymany")) {
            assertTrue(isGuessed(guesses, PrinterState.HELD, word), guesses.toString());
        }
    }

    /** What could show a false fault is guessed as it is in the list. */
    @Test
    void aGuessForAFaultHasNoOtherEnding() {
        Map<PrinterState, List<String>> guesses = guessed("bezczynna", "nagrzewanie", "drukowanie");
        assertTrue(guesses.get(PrinterState.FAULT).contains("*awaria*"), guesses.toString());
    }

    @ParameterizedTest
    @CsvSource({
        "END, DONE",
        "ENDED, DONE",
        "FINISHED, DONE",
        "HOLD, HELD",
        "STOP, STOPPED",
        "ABORTED, STOPPED",
        "ALARM, FAULT"
    })
    void shortEnglishWordsAreGuessed(String word, PrinterState state) {
        assertTrue(isGuessed(guessed("STBY", "HEAT", "RUN"), state, word));
    }
}
