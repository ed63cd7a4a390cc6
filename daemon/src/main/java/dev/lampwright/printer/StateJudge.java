package dev.lampwright.printer;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/**
 * What the printer is doing, by its reports and its readings. A condition that is met counts first. A printer that reports no state is
 * judged by {@link StateGuess} alone. One that does is believed; {@link StateGuess} steps in only for states that it has no word for:
 * warming instead of idle or printing, printing or done instead of idle, and done instead of printing once the nozzle is switched off as
 * well. If conditions show that it prints, and none of them is met, it is idle.
 */
final class StateJudge {
    private final boolean isTold;
    private final Conditions conditions;
    private final StateGuess guesses;
    private final Set<PrinterState> wordless =
            EnumSet.of(PrinterState.WARMING, PrinterState.PRINTING, PrinterState.DONE);

    /**
     * Creates a judge.
     *
     * @param bindings where the printer reports its state and its readings
     * @param conditions what shows its state
     */
    StateJudge(Bindings bindings, Conditions conditions) {
        isTold = !bindings.states().isEmpty();
        this.conditions = conditions;
        guesses = new StateGuess(bindings.heaters());
        bindings.states().forEach(binding -> wordless.removeAll(binding.words().keySet()));
        wordless.removeAll(conditions.states());
    }

    /**
     * Judges.
     *
     * @param status what is known
     * @param before the state up to now
     * @return the state
     */
    PrinterState judge(PrinterStatus status, PrinterState before) {
        PrinterState guess = guesses.of(status, before);
        Optional<PrinterState> said = conditions.shown(status).or(() -> unconditional(status));
        return said.map(told -> wordless.contains(guess) && gives(told, guess, status) ? guess : told)
                .orElse(guess);
    }

    private Optional<PrinterState> unconditional(PrinterStatus status) {
        if (isTold) {
            return Optional.of(status.toldState());
        }
        boolean isShown = conditions.states().contains(PrinterState.PRINTING) && conditions.areHeard(status);
        return isShown ? Optional.of(PrinterState.IDLE) : Optional.empty();
    }

    private boolean gives(PrinterState told, PrinterState guess, PrinterStatus status) {
        boolean over = guess == PrinterState.DONE && guesses.isNozzleOff(status);
        return told == PrinterState.IDLE || (told == PrinterState.PRINTING && (guess == PrinterState.WARMING || over));
    }
}
