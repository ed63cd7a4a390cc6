package dev.lampwright.tool.bench;

import dev.lampwright.tool.check.Progress;

/** Is asked between frames whether to go on: somebody still waits for them, and they have not taken too long. */
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
                // Whoever waits has the last verdict before them.
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

    /** A refusal on its way through code that knows none. */
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
