package dev.lampwright.tool.survey;

import dev.lampwright.printer.PrinterState;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** Looks for flags, codes and texts that show a state by themselves, for the states that the state's place has no word for. */
final class ConditionSearch {
    /** If several are met, the first in this order counts. */
    private static final List<PrinterState> ORDER = List.of(
            PrinterState.FAULT,
            PrinterState.STOPPED,
            PrinterState.HELD,
            PrinterState.DONE,
            PrinterState.WARMING,
            PrinterState.PRINTING,
            PrinterState.IDLE);

    private final List<Trail> trails;
    private final Function<Trail, List<Said>> said;
    private final Doings doings;
    private final Set<PrinterState> known;
    private final Map<PrinterState, FoundCondition> found = new LinkedHashMap<>();
    private final List<StatePlace> open = new ArrayList<>();

    /**
     * Searches.
     *
     * @param trails the values that may be the printer's, without those whose role is known
     * @param said what a value reported, and what the printer did during that time
     * @param doings what the printer did when
     * @param known the states for which words are bound already
     */
    ConditionSearch(List<Trail> trails, Function<Trail, List<Said>> said, Doings doings, Set<PrinterState> known) {
        this.trails = trails.stream()
                .filter(trail -> trail.said().complete())
                .sorted(Comparator.comparing(Trail::order))
                .toList();
        this.said = said;
        this.doings = doings;
        this.known = EnumSet.noneOf(PrinterState.class);
        this.known.addAll(known);
        lookForFlags();
        lookForFaults();
        lookForUnnamedFlags();
    }

    /** What was found, in the order in which it counts. */
    List<FoundCondition> found() {
        return ORDER.stream().filter(found::containsKey).map(found::get).toList();
    }

    /** Flags that were on only while the job stood still: a pause or a fault, which readings cannot distinguish. */
    List<StatePlace> open() {
        return List.copyOf(open);
    }

    private boolean isWanted(PrinterState state) {
        return !known.contains(state) && !found.containsKey(state);
    }

    private List<Flag> flags() {
        return trails.stream()
                .map(trail -> Flag.of(trail, said.apply(trail)))
                .flatMap(Optional::stream)
                .toList();
    }

    private void lookForFlags() {
        for (Flag flag : flags()) {
            flag.named()
                    .filter(state -> isWanted(state) && flag.canShow(state, doings))
                    .filter(state -> state != PrinterState.FAULT || FaultSigns.speaksOfFaultNow(flag.trail()))
                    .ifPresent(state -> add(
                            state,
                            flag,
                            "“" + String.join(" ", flag.trail().names().own())
                                    + "” speaks of it"
                                    + flag.said()
                                            .map(one -> ", and while it was on the printer " + one.meanwhile())
                                            .orElse(", but it was never on")));
        }
    }

    private void lookForFaults() {
        if (isWanted(PrinterState.FAULT)) {
            trails.stream()
                    .map(trail -> FaultSigns.of(trail, said.apply(trail)))
                    .flatMap(Optional::stream)
                    .findFirst()
                    .ifPresent(condition -> found.put(PrinterState.FAULT, condition));
        }
    }

    private void lookForUnnamedFlags() {
        for (Flag flag : flags()) {
            if (flag.named().isPresent() || flag.said().isEmpty()) {
                continue;
            }
            if (flag.isStandstill()) {
                open.add(new StatePlace(flag.trail().source(), said.apply(flag.trail()), 0, false));
                continue;
            }
            flag.said()
                    .filter(Said::certain)
                    .flatMap(Said::state)
                    .filter(state -> isWanted(state) && flag.canShow(state, doings))
                    .ifPresent(state -> add(
                            state,
                            flag,
                            "while it was on the printer " + flag.said().get().meanwhile()));
        }
    }

    private void add(PrinterState state, Flag flag, String reason) {
        found.put(
                state,
                new FoundCondition(state, flag.trail().source(), List.of(flag.on()), List.of(), List.of(reason)));
    }
}
