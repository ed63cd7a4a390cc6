package dev.lampwright.tool.fit;

import dev.lampwright.link.Line;
import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Setup;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.LongSupplier;

/** The light of a real controller: one {@link LitSetup} at a time. For one thread, except for {@link #close}. */
public final class FittingLight implements ShownLight {
    private static final Duration PATIENCE = Duration.ofSeconds(6);
    private static final long LOOK_EVERY = TimeUnit.MILLISECONDS.toNanos(5);

    private final Line line;
    private final long id;
    private final LongSupplier clock;
    private final Duration patience;
    private Optional<LitSetup> lit = Optional.empty();
    private boolean closed;

    /**
     * Creates a dark light; nothing is opened yet.
     *
     * @param line the line to the controller
     * @param id the id that the controller must have, or 0
     * @param nanoClock a clock in ns that never goes back, such as {@link System#nanoTime}
     */
    public FittingLight(Line line, long id, LongSupplier nanoClock) {
        this(line, id, nanoClock, PATIENCE);
    }

    /** Creates one that waits this long for a scene to be shown. */
    FittingLight(Line line, long id, LongSupplier nanoClock, Duration patience) {
        this.line = line;
        this.id = id;
        clock = nanoClock;
        this.patience = patience;
    }

    @Override
    public Optional<Phrase> show(Setup setup, Scene scene) {
        Optional<LitSetup> now = setUp(setup);
        now.ifPresent(session -> session.show(scene));
        long started = clock.getAsLong();
        while (now.isPresent() && !now.get().shows() && clock.getAsLong() - started < patience.toNanos()) {
            LockSupport.parkNanos(this, LOOK_EVERY);
        }
        return now.isEmpty()
                ? Optional.of(Phrase.of("light_closing", "the light is being switched off"))
                : now.get().trouble();
    }

    @Override
    public synchronized boolean steady() {
        return lit.isPresent() && lit.get().steady();
    }

    @Override
    public synchronized Optional<Phrase> disturbance() {
        return lit.flatMap(LitSetup::disturbance);
    }

    @Override
    public synchronized Optional<Phrase> missing() {
        return lit.flatMap(LitSetup::missing);
    }

    @Override
    public synchronized void close() {
        closed = true;
        lit.ifPresent(LitSetup::close);
        lit = Optional.empty();
    }

    private synchronized Optional<LitSetup> setUp(Setup setup) {
        boolean inForce = lit.isPresent() && lit.get().setup().equals(setup);
        if (!inForce && !closed) {
            lit.ifPresent(LitSetup::close);
            LitSetup next = new LitSetup(line, setup, id, clock);
            next.start();
            lit = Optional.of(next);
        }
        return lit;
    }
}
