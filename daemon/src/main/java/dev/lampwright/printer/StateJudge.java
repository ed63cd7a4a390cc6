package dev.lampwright.printer;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * What the printer is doing, by what it told and by its readings. A printer that tells no state is judged by {@link StateGuess} alone. One
 * that does is believed; only where it has no word for a state does {@link StateGuess} speak for it: warming instead of idle or
 * printing, and printing or done instead of idle.
 */
final class StateJudge {
    private final boolean isTold;
    private final Set<PrinterState> wordless =
            EnumSet.of(PrinterState.WARMING, PrinterState.PRINTING, PrinterState.DONE);

    /**
     * Makes a judge.
     *
     * @param bindings where the printer tells its state
     */
    StateJudge(List<Bindings.OfState> bindings) {
        isTold = !bindings.isEmpty();
        bindings.forEach(binding -> wordless.removeAll(binding.words().keySet()));
    }

    /**
     * Judges.
     *
     * @param status what is known
     * @param before the state up to now
     * @return the state
     */
    PrinterState judge(PrinterStatus status, PrinterState before) {
        PrinterState told = status.toldState();
        PrinterState guess = StateGuess.of(status, before);
        if (!isTold) {
            return guess;
        }
        return wordless.contains(guess) && gives(told, guess) ? guess : told;
    }

    private static boolean gives(PrinterState told, PrinterState guess) {
        return told == PrinterState.IDLE || (told == PrinterState.PRINTING && guess == PrinterState.WARMING);
    }
}
