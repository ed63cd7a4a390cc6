package dev.lampwright.history;

import dev.lampwright.printer.PrinterState;
import java.util.ArrayList;
import java.util.List;

/**
 * The printer's states over time. If there are too many to keep, the shortest is merged into the previous one, so that a state that
 * flickers does not push out the rest of the day. For one thread.
 */
final class Spans {
    /** The maximum number kept. */
    static final int MOST = 600;

    private final List<StateSpan> spans = new ArrayList<>();
    /** Whether the newest span continues. */
    private boolean going;

    /** Restores what earlier runs have seen, the oldest first. */
    void restore(List<StateSpan> before) {
        spans.clear();
        spans.addAll(before.subList(Math.max(0, before.size() - MOST), before.size()));
        going = false;
    }

    /**
     * Adds a state.
     *
     * @param at when it was seen
     * @param state which
     */
    void see(Stamp at, PrinterState state) {
        int last = spans.size() - 1;
        if (going) {
            spans.set(last, spans.get(last).to(at));
        }
        if (!going || spans.get(last).state() != state) {
            spans.add(new StateSpan(state, at, at));
            going = true;
        }
        if (spans.size() > MOST) {
            shorten();
        }
    }

    /** Removes one span, never the newest. */
    private void shorten() {
        int shortest = 0;
        for (int i = 1; i < spans.size() - 1; i++) {
            boolean joins = spans.get(i - 1).meets(spans.get(i));
            if (joins
                    && (shortest == 0
                            || spans.get(i).millis() < spans.get(shortest).millis())) {
                shortest = i;
            }
        }
        StateSpan gone = spans.remove(shortest);
        if (shortest > 0) {
            spans.set(shortest - 1, spans.get(shortest - 1).to(gone.to()));
            join(shortest);
        }
    }

    /** Joins two spans of one state that now meet. */
    private void join(int second) {
        StateSpan one = spans.get(second - 1);
        StateSpan next = spans.get(second);
        if (one.state() == next.state() && one.meets(next)) {
            spans.set(second - 1, one.to(next.to()));
            spans.remove(second);
        }
    }

    /**
     * The spans that are not too old.
     *
     * @param wallAhead as in {@link Stamp#wall(long)}
     * @return the oldest first
     */
    List<StateSpan> all(long wallAhead) {
        return spans.stream().map(span -> span.wall(wallAhead)).toList();
    }
}
