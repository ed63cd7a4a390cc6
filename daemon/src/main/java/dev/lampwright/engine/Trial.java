package dev.lampwright.engine;

import dev.lampwright.cue.Wishes;
import dev.lampwright.look.LookSpec;
import java.time.Duration;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.LongSupplier;

/**
 * A look of no configuration that somebody sees on the strip for a short while, through the guards like any other. It ends by itself: after
 * its time, when whoever tries it does not say for a while that they still do, when there is a fault, or when the configuration changes. Safe
 * for many threads.
 */
public final class Trial {
    /** How long it lasts after whoever tries it last said so. */
    public static final Duration LEASE = Duration.ofSeconds(10);

    /** The longest time that a look is tried for. */
    public static final Duration LONGEST = Duration.ofMinutes(1);

    private static final String NAME_END = " (on trial)";

    private final Consumer<LookSpec> lender;
    private final Runnable changed;
    private final BooleanSupplier fault;
    private final LongSupplier clock;
    private Optional<Running> running = Optional.empty();
    private Over over = Over.NOTHING;

    /** What is being tried. */
    private record Running(String lease, String look, long endNanos, long leaseNanos) {}

    /** What came of a wish to try a look. */
    public enum Outcome {
        /** It is on. */
        BEGUN,
        /** Somebody else tries one. */
        TAKEN,
        /** There is a fault, which goes first. */
        FAULT
    }

    /** Why a trial is over. */
    public enum Over {
        /** None has begun. */
        NOTHING("nothing is being tried"),
        /** There is a fault. */
        FAULT("there is a fault"),
        /** It has lasted for its full time. */
        TIME("its time is up"),
        /** The person who tried it has not been heard from for a while. */
        LEFT("whoever tried it has left"),
        /** The person who tried it has ended it. */
        ENDED("it was ended"),
        /** The lights may have changed. */
        CHANGED("the configuration has changed");

        private final String words;

        Over(String words) {
            this.words = words;
        }

        /**
         * In a few words.
         *
         * @return English
         */
        public String words() {
            return words;
        }
    }

    /**
     * Makes one with nothing on.
     *
     * @param lender gives the chain a look, which wishes can name from then on
     * @param changed is called when {@link #over} gives something else than before; not to be waited for
     * @param fault whether there is a fault that is shown
     * @param clock monotonic, in ns
     */
    Trial(Consumer<LookSpec> lender, Runnable changed, BooleanSupplier fault, LongSupplier clock) {
        this.lender = lender;
        this.changed = changed;
        this.fault = fault;
        this.clock = clock;
    }

    /**
     * Puts a look on, or another in its place; the time starts again.
     *
     * @param look made for the lights of the running configuration
     * @param lease tells who tries it from others
     * @param time how long, {@link #LONGEST} at most
     * @return whether it is on
     */
    public synchronized Outcome begin(LookSpec look, String lease, Duration time) {
        lookAround();
        if (fault.getAsBoolean()) {
            return Outcome.FAULT;
        }
        if (running.filter(now -> !now.lease().equals(lease)).isPresent()) {
            return Outcome.TAKEN;
        }
        long now = clock.getAsLong();
        long nanos = Math.min(time.toNanos(), LONGEST.toNanos());
        LookSpec named = new LookSpec(look.name() + NAME_END, look.layers(), look.dimmers(), look.steadyForCamera());
        lender.accept(named);
        running = Optional.of(new Running(lease, named.name(), now + nanos, now + LEASE.toNanos()));
        changed.run();
        return Outcome.BEGUN;
    }

    /**
     * Says that a look is still being tried.
     *
     * @param lease of whoever tries it
     * @return how long it stays on; empty if it is over
     */
    public synchronized Optional<Duration> keep(String lease) {
        lookAround();
        long now = clock.getAsLong();
        running = running.map(mine -> mine.lease().equals(lease)
                ? new Running(lease, mine.look(), mine.endNanos(), now + LEASE.toNanos())
                : mine);
        return running.filter(mine -> mine.lease().equals(lease)).map(mine -> Duration.ofNanos(mine.endNanos() - now));
    }

    /**
     * Takes a look off; nothing happens if it is over already.
     *
     * @param lease of whoever tries it
     */
    public synchronized void end(String lease) {
        if (running.filter(mine -> mine.lease().equals(lease)).isPresent()) {
            end(Over.ENDED, true);
        }
    }

    /**
     * Why the last one is over.
     *
     * @return as it was when it ended
     */
    public synchronized Over whyOver() {
        return over;
    }

    /** Ends what is over by now. To be called every second or so. */
    synchronized void lookAround() {
        long now = clock.getAsLong();
        if (running.isEmpty()) {
            return;
        }
        if (fault.getAsBoolean()) {
            end(Over.FAULT, true);
        } else if (now - running.get().endNanos() >= 0) {
            end(Over.TIME, true);
        } else if (now - running.get().leaseNanos() >= 0) {
            end(Over.LEFT, true);
        }
    }

    /** Ends it because the chain that it was lent to is no more. */
    synchronized void configurationChanges() {
        end(Over.CHANGED, false);
    }

    private void end(Over why, boolean tell) {
        if (running.isPresent()) {
            over = why;
            running = Optional.empty();
            if (tell) {
                changed.run();
            }
        }
    }

    /** Wishes with the look that is being tried on top, until its time is up. */
    synchronized Wishes over(Wishes asked) {
        return running.map(now -> asked.withLook(now.look(), now.endNanos()).until(now.endNanos(), asked))
                .orElse(asked);
    }
}
