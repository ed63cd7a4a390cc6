package dev.lampwright.upkeep;

import java.util.function.LongSupplier;

/** Who does repeated work: a thread for each piece of it, or a {@link Crew} for all. */
public interface Hands {
    /** Returned by a step that has nothing more to do until it is {@linkplain Job#hurry hurried}. */
    long UNTIL_HURRIED = Long.MAX_VALUE;

    /** Returned by the last step of a job. */
    long DONE = -1;

    /** A piece of repeated work, one step of which runs at a time. */
    interface Job {
        /** Starts with the first step at once. Call it once. */
        void start();

        /** Brings the next step forward to now, or if a step is running, to its end. */
        void hurry();

        /** Whether it has been started and is not done. */
        boolean isAlive();

        /** Whether the calling thread is doing one of its steps. */
        boolean isCurrent();

        /**
         * Waits until it is done.
         *
         * @param nanos how long to wait, in ns
         * @throws InterruptedException if the thread is interrupted
         */
        void join(long nanos) throws InterruptedException;
    }

    /**
     * Takes on repeated work for the rig that the calling thread works for; nothing runs yet.
     *
     * @param name what it does
     * @param step one step. It returns how long to wait before the next, in ns, {@link #UNTIL_HURRIED} or {@link #DONE}, and does not fail
     * @param interrupted called if the thread is interrupted while it waits for the next step, which then follows at once
     * @return the work
     */
    Job take(String name, LongSupplier step, Runnable interrupted);

    /**
     * A thread for each job, of its name.
     *
     * @return hands that share nothing
     */
    static Hands ofItsOwn() {
        return OwnThread::new;
    }
}
