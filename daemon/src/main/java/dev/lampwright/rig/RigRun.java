package dev.lampwright.rig;

import dev.lampwright.config.Config;
import dev.lampwright.engine.Daemon;
import dev.lampwright.upkeep.Hands;
import dev.lampwright.upkeep.RigName;
import dev.lampwright.upkeep.Worker;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One run of a rig: a daemon, and the work {@code rig} that builds it, changes it and looks after it. Nobody else calls anything that might
 * wait for the daemon, so a stuck daemon delays nothing else.
 */
final class RigRun {
    private static final Logger LOG = LoggerFactory.getLogger(RigRun.class);
    private static final Duration LOOK_EVERY = Duration.ofMillis(500);
    private static final Duration LONGEST_STEP = Duration.ofMillis(500);

    private final String name;
    private final Function<Config, Daemon> maker;
    private final Worker worker;
    private final AtomicReference<Config> wanted;
    private final CountDownLatch closed = new CountDownLatch(1);
    private volatile Optional<Daemon> daemon = Optional.empty();
    private volatile Optional<Config> inForce = Optional.empty();
    private volatile String failure = "";
    private volatile boolean closing;
    private final AtomicLong steps = new AtomicLong();

    /**
     * Creates a run that has not started.
     *
     * @param name of the rig
     * @param maker builds the daemon
     * @param first the first configuration
     * @param hands who does the work
     */
    RigRun(String name, Function<Config, Daemon> maker, Config first, Hands hands) {
        this.name = name;
        this.maker = maker;
        wanted = new AtomicReference<>(first);
        worker = RigName.make(name, () -> new Worker(hands, "rig", LOOK_EVERY, this::tend, () -> {}));
    }

    /** Starts, and returns at once. */
    void start() {
        worker.start();
    }

    /** Has the rig switch to another configuration soon. */
    void change(Config next) {
        wanted.set(next);
    }

    /** The daemon; empty until it has been built, and permanently if that failed. */
    Optional<Daemon> daemon() {
        return daemon;
    }

    /** Why the newest configuration could not be used although it is valid; empty if it could. */
    String failure() {
        return failure;
    }

    /** A count that grows while it is looked after. */
    long steps() {
        return steps.get();
    }

    /** A count that grows while the daemon makes frames; {@link #steps} until there is a daemon. */
    long frames() {
        return daemon.map(Daemon::pulse).orElseGet(steps::get);
    }

    private void tend() {
        Config next = wanted.getAndSet(null);
        if (next != null && !closing) {
            takeUp(next);
        }
        if (!closing) {
            daemon.ifPresent(Daemon::lookAround);
        }
        steps.incrementAndGet();
    }

    private void takeUp(Config next) {
        try {
            if (daemon.isPresent()) {
                daemon.get().change(next);
            } else {
                begin(next);
            }
            inForce = Optional.of(next);
            failure = "";
        } catch (RuntimeException | StackOverflowError e) {
            failure = "hit an internal error, please report it (" + e + ")";
            LOG.error("the rig {}; {}", failure, goesBack() ? "it runs as before" : "start lampwright again", e);
        }
    }

    private void begin(Config first) {
        Daemon made = maker.apply(first);
        daemon = Optional.of(made);
        made.start();
    }

    private boolean goesBack() {
        if (daemon.isEmpty() || inForce.isEmpty()) {
            return false;
        }
        try {
            daemon.get().change(inForce.get());
            return true;
        } catch (RuntimeException | StackOverflowError e) {
            LOG.debug("going back failed too", e);
            return false;
        }
    }

    /** Starts a clean shutdown, and returns at once. A stuck daemon is abandoned. */
    void close() {
        closing = true;
        RigName.during(name, () -> {
            Thread end = new Thread(this::end, RigName.thread("rig end"));
            end.setDaemon(true);
            end.start();
        });
    }

    private void end() {
        try {
            worker.end(LONGEST_STEP);
            daemon.ifPresent(Daemon::close);
        } catch (RuntimeException e) {
            LOG.error("the rig could not be stopped cleanly", e);
        } finally {
            closed.countDown();
        }
    }

    /**
     * Waits until it has stopped.
     *
     * @param most how long to wait
     * @return whether it has stopped
     */
    boolean awaitEnd(Duration most) {
        try {
            return closed.await(Math.max(0, most.toNanos()), TimeUnit.NANOSECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
