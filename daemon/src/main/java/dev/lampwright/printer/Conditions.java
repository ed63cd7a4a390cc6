package dev.lampwright.printer;

import dev.lampwright.payload.WordPattern;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** The conditions of a printer that shows states by flags, codes or texts. */
final class Conditions {
    private final List<Condition> all;
    private final boolean alsoFaultText;

    private record Condition(PrinterState state, List<Sign> signs) {
        static Condition of(Bindings.OfCondition binding) {
            return new Condition(
                    binding.state(), binding.all().stream().map(Sign::of).toList());
        }

        boolean isMet(PrinterStatus status) {
            return signs.stream().allMatch(sign -> sign.isMet(status));
        }

        String words(PrinterStatus status) {
            return signs.stream()
                    .map(sign -> status.sign(sign.binding.source()).orElse(""))
                    .collect(Collectors.joining(", "));
        }
    }

    private record Sign(Bindings.Sign binding, List<WordPattern> is, List<WordPattern> not) {
        static Sign of(Bindings.Sign binding) {
            return new Sign(binding, patterns(binding.is()), patterns(binding.not()));
        }

        private static List<WordPattern> patterns(List<String> words) {
            return words.stream().map(WordPattern::new).toList();
        }

        boolean isMet(PrinterStatus status) {
            String word = status.sign(binding.source()).orElse("");
            return !word.isEmpty()
                    && (is.isEmpty() || is.stream().anyMatch(pattern -> pattern.matches(word)))
                    && not.stream().noneMatch(pattern -> pattern.matches(word));
        }

        boolean isHeard(PrinterStatus status) {
            return status.sign(binding.source()).isPresent();
        }
    }

    /**
     * Prepares.
     *
     * @param bindings in the order in which they count
     * @param alsoFaultText whether the value that meets a condition for a fault is the printer's only text about it
     */
    Conditions(List<Bindings.OfCondition> bindings, boolean alsoFaultText) {
        all = bindings.stream().map(Condition::of).toList();
        this.alsoFaultText = alsoFaultText;
    }

    /**
     * The state that is shown.
     *
     * @param status with the newest values of the places
     * @return that of the first condition that is met; empty if none is
     */
    Optional<PrinterState> shown(PrinterStatus status) {
        return first(status).map(Condition::state);
    }

    private Optional<Condition> first(PrinterStatus status) {
        return all.stream().filter(condition -> condition.isMet(status)).findFirst();
    }

    /** The states that conditions can show. */
    Set<PrinterState> states() {
        Set<PrinterState> states = EnumSet.noneOf(PrinterState.class);
        all.forEach(condition -> states.add(condition.state()));
        return states;
    }

    /** Whether something has been reported at each of the places. */
    boolean areHeard(PrinterStatus status) {
        return all.stream().allMatch(condition -> condition.signs.stream().allMatch(sign -> sign.isHeard(status)));
    }

    /**
     * The value that meets a condition for a fault is the printer's text for it, if it has no other; the text goes when the fault goes.
     *
     * @param before the status up to now
     * @param after the status with a message in it
     * @param atNanos when the message came
     * @return {@code after}, or the same with another text
     */
    PrinterStatus withFaultText(PrinterStatus before, PrinterStatus after, long atNanos) {
        if (!alsoFaultText || all.isEmpty()) {
            return after;
        }
        Optional<Condition> now = first(after).filter(Conditions::isFault);
        boolean was = first(before).filter(Conditions::isFault).isPresent();
        if (now.isPresent()) {
            return after.withFaultText(now.get().words(after), atNanos);
        }
        boolean saysOne = after.toldState() == PrinterState.FAULT;
        return was && !saysOne ? after.withFaultText("", atNanos) : after;
    }

    private static boolean isFault(Condition condition) {
        return condition.state == PrinterState.FAULT;
    }
}
