package dev.lampwright.tool.survey;

import dev.lampwright.printer.PrinterState;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * What the words of a place stand for. What the printer did at the time is proof; the word itself is a hint, and the only one for what
 * readings cannot show: a pause, a fault, a cancelled job.
 */
final class Meanings {
    private static final double MOSTLY = 0.7;
    private static final double NOW_AND_THEN = 0.1;
    private static final double OFTEN = 0.3;
    private static final double LEAST_S = 3;
    private static final int MANY_TIMES = 4;

    private final Runs runs;
    private final double seenAfterSeconds;
    private final List<Map<Doing, Double>> during;
    private final List<Said> said = new ArrayList<>();

    private Meanings(Runs runs, Doings doings) {
        this.runs = runs;
        seenAfterSeconds = doings.seenAfterSeconds();
        during = doings.during(runs);
        List<String> texts = runs.texts();
        for (int i = 0; i < texts.size(); i++) {
            said.add(said(i, texts.get(i)));
        }
        bindTheOtherStandstill();
    }

    /**
     * Of two words for a standstill, one is known as a fault's. The other, if it also comes directly after work, is a state of its own and not
     * the rest of that fault: a pause, unless it is a second fault, which is rarer. Without a binding the fault would stay on show through
     * every pause that follows it.
     */
    private void bindTheOtherStandstill() {
        boolean hasFault = said.stream().anyMatch(Meanings::isHeardFault);
        boolean hasPause = said.stream()
                .anyMatch(one -> one.state().filter(PrinterState.HELD::equals).isPresent());
        List<Integer> open = IntStream.range(0, said.size())
                .filter(i -> said.get(i).state().isEmpty() && said.get(i).isStandstill())
                .boxed()
                .toList();
        if (hasFault && !hasPause && open.size() == 1 && comesDirectlyAfterWork(open.get(0))) {
            said.set(open.get(0), said.get(open.get(0)).meaning(PrinterState.HELD));
        }
    }

    private static boolean isHeardFault(Said one) {
        return one.state().filter(PrinterState.FAULT::equals).isPresent() && one.isStandstill();
    }

    private boolean comesDirectlyAfterWork(int index) {
        return IntStream.range(1, runs.size())
                .filter(run -> runs.text(run) == index)
                .mapToObj(run -> said.get(runs.text(run - 1)).state())
                .anyMatch(before -> before.filter(PrinterState.PRINTING::equals).isPresent());
    }

    /**
     * The meanings of what a place reported.
     *
     * @param runs which text it reported when
     * @param doings what the printer did when
     * @return each text with what it stands for, in order of first appearance
     */
    static List<Said> of(Runs runs, Doings doings) {
        return List.copyOf(new Meanings(runs, doings).said);
    }

    private Said said(int index, String word) {
        int times = 0;
        for (int run = 0; run < runs.size(); run++) {
            times += runs.text(run) == index ? 1 : 0;
        }
        Said plain = new Said(word, during.get(index), times, Optional.empty(), false);
        Optional<PrinterState> shown = shown(index, plain);
        Optional<PrinterState> told = StateWords.stateOf(word);
        Optional<PrinterState> state = together(told, shown, plain);
        return new Said(word, plain.seconds(), times, state, shown.isPresent() && shown.equals(state));
    }

    /** What the readings show. */
    private Optional<PrinterState> shown(int index, Said said) {
        double clear = said.clear();
        if (clear < LEAST_S) {
            return Optional.empty();
        }
        double ahead = said.seconds(Doing.ADVANCING) / clear;
        double heats = said.seconds(Doing.HEATING) / clear;
        double prepares = said.seconds(Doing.PREPARING) / clear;
        double off = (said.seconds(Doing.RESTING) + said.seconds(Doing.FINISHED) + said.seconds(Doing.OFF)) / clear;
        if (ahead >= OFTEN && off <= NOW_AND_THEN) {
            return isLong(said) ? Optional.of(PrinterState.PRINTING) : Optional.empty();
        }
        if (heats >= OFTEN && heats + prepares >= MOSTLY && ahead <= NOW_AND_THEN) {
            return Optional.of(PrinterState.WARMING);
        }
        return off >= MOSTLY && ahead <= NOW_AND_THEN ? shownWhileOff(index, said) : Optional.empty();
    }

    /** A pause shorter than one step of the job's number looks as if the job went on. */
    private boolean isLong(Said said) {
        return said.total() >= seenAfterSeconds * Math.min(said.times(), MANY_TIMES);
    }

    /** A word that appears only directly after work refers to the job that has ended. */
    private Optional<PrinterState> shownWhileOff(int index, Said said) {
        int afterWork = 0;
        int otherwise = 0;
        for (int run = 0; run < runs.size(); run++) {
            if (runs.text(run) == index) {
                boolean work = run > 0 && isWork(runs.text(run - 1));
                afterWork += work ? 1 : 0;
                otherwise += work ? 0 : 1;
            }
        }
        boolean isComplete = said.seconds(Doing.FINISHED) >= MOSTLY * said.clear();
        if (otherwise == 0) {
            return isComplete ? Optional.of(PrinterState.DONE) : Optional.empty();
        }
        boolean isEnd = afterWork > 0 && isComplete && someOtherRests(index);
        return Optional.of(isEnd ? PrinterState.DONE : PrinterState.IDLE);
    }

    private boolean isWork(int index) {
        Map<Doing, Double> seconds = during.get(index);
        double work = seconds.entrySet().stream()
                .filter(entry -> entry.getKey().isWork())
                .mapToDouble(Map.Entry::getValue)
                .sum();
        double off = seconds.entrySet().stream()
                .filter(entry -> entry.getKey().isOff())
                .mapToDouble(Map.Entry::getValue)
                .sum();
        return work > off;
    }

    private boolean someOtherRests(int index) {
        for (int i = 0; i < during.size(); i++) {
            if (i != index && during.get(i).getOrDefault(Doing.RESTING, 0.0) >= LEAST_S && !isWork(i)) {
                return true;
            }
        }
        return false;
    }

    private static Optional<PrinterState> together(
            Optional<PrinterState> told, Optional<PrinterState> shown, Said said) {
        if (told.isEmpty() || shown.isEmpty() || told.equals(shown)) {
            return told.or(() -> shown);
        }
        boolean work = shown.get() == PrinterState.PRINTING || shown.get() == PrinterState.WARMING;
        return switch (told.get()) {
            case FAULT -> shown.get() == PrinterState.PRINTING ? shown : told;
            case HELD, STOPPED -> work || isRestful(shown.get(), said) ? shown : told;
            case IDLE, DONE -> shown.get() == PrinterState.PRINTING ? shown : told;
            case PRINTING -> shown.get() == PrinterState.WARMING && said.times() == 1 ? told : shown;
            default -> shown;
        };
    }

    private static boolean isRestful(PrinterState shown, Said said) {
        return shown == PrinterState.IDLE && StateWords.saysWaiting(said.word());
    }
}
