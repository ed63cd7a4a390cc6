package dev.lampwright.guard;

/**
 * One number over the last second, and the limit: no more than three flashes, each a pair of opposing transitions, so no more than seven
 * transitions. Moreover light goes down a last time only if it may soon go up again, so that light that is held is lit.
 */
final class Trace {
    private static final int MOST_TRANSITIONS = 7;

    private final Window window;
    private final long[] values;
    private final boolean[] marks;
    private final Swings sinceStart;
    private final Swings inWindow;

    /**
     * Makes an empty trace.
     *
     * @param window the last second, moved on by others
     * @param step the least change that is a transition
     */
    Trace(Window window, long step) {
        this.window = window;
        values = new long[window.capacity()];
        marks = new boolean[window.capacity()];
        sinceStart = new Swings(step);
        inWindow = new Swings(step);
    }

    /**
     * Whether a number may follow numbers that were all admitted. What goes on as before adds no transition, so it is not counted
     * again.
     *
     * @param value the number
     * @param mark whether it has a mark
     * @return false if it would break the limit
     */
    boolean admits(long value, boolean mark) {
        return !sinceStart.wouldMove(value, mark) || isWithin(value, mark);
    }

    /**
     * Whether the last second and a number keep the limit.
     *
     * @param value the number
     * @param mark whether it has a mark
     * @return false if they break it
     */
    boolean isWithin(long value, boolean mark) {
        int transitions = transitions(0, value, mark);
        return transitions < MOST_TRANSITIONS
                || (transitions == MOST_TRANSITIONS && (!inWindow.isDown() || maySoonRise(value, mark)));
    }

    private boolean maySoonRise(long value, boolean mark) {
        return transitions(window.firstAtNextRise(), value, mark) < MOST_TRANSITIONS;
    }

    private int transitions(int first, long value, boolean mark) {
        inWindow.restart();
        for (int i = first; i < window.size(); i++) {
            int place = window.place(i);
            inWindow.add(values[place], marks[place]);
        }
        inWindow.add(value, mark);
        return inWindow.count();
    }

    /**
     * Keeps a number, before the window takes its frame in.
     *
     * @param value the number
     * @param mark whether it has a mark
     */
    void keep(long value, boolean mark) {
        values[window.next()] = value;
        marks[window.next()] = mark;
        sinceStart.add(value, mark);
    }
}
