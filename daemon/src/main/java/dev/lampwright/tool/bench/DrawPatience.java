package dev.lampwright.tool.bench;

import dev.lampwright.tool.check.Progress;

/** Ends a drawing, between frames, once nobody waits for it any more or it has taken too long. */
interface DrawPatience {
    /**
     * Ends what is drawn if nobody waits for it any more.
     *
     * @throws BenchRefusal why it ends
     */
    void check() throws BenchRefusal;

    /** The same for a check, which ends with an {@link Ended}. */
    default Progress progress() {
        return new Progress() {
            @Override
            public void at(int done, int of) {
                // The page keeps showing the last verdict until there is a new one.
            }

            @Override
            public void drawn() {
                try {
                    check();
                } catch (BenchRefusal e) {
                    throw new Ended(e);
                }
            }
        };
    }

    /** Carries a refusal through code that does not declare it. */
    final class Ended extends RuntimeException {
        private static final long serialVersionUID = 1;

        private final transient BenchRefusal why;

        private Ended(BenchRefusal why) {
            super(why);
            this.why = why;
        }

        BenchRefusal why() {
            return why;
        }
    }
}
