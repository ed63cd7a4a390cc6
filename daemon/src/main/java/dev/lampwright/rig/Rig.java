package dev.lampwright.rig;

import dev.lampwright.config.Config;
import dev.lampwright.config.Mistake;
import dev.lampwright.config.RigReading;
import dev.lampwright.engine.Daemon;
import dev.lampwright.upkeep.Hands;
import dev.lampwright.upkeep.RigName;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A rig of the process, by its name: whether it runs, and what is wrong with it. If its file has a mistake, it keeps running as before, or
 * stays off if it is new. A stalled rig is closed and restarted. Any thread may call the public methods; none of them blocks.
 */
public final class Rig {
    private static final Logger LOG = LoggerFactory.getLogger(Rig.class);

    private final String name;
    private final Path file;
    private final Function<Config, Daemon> maker;
    private final LongSupplier clock;
    private final Hands hands;
    private volatile Optional<RigRun> run = Optional.empty();
    private volatile List<Mistake> mistakes = List.of();
    private volatile boolean still;
    private Optional<Config> wanted = Optional.empty();
    private final Stillness stillness;

    Rig(String name, Path file, Function<Config, Daemon> maker, LongSupplier clock, Hands hands) {
        this.name = name;
        this.file = file;
        this.maker = maker;
        this.clock = clock;
        this.hands = hands;
        stillness = new Stillness(clock.getAsLong(), 2);
    }

    /**
     * Its name.
     *
     * @return the name; empty for the only rig of a process
     */
    public String name() {
        return name;
    }

    /**
     * Its file.
     *
     * @return the path, as given
     */
    public Path file() {
        return file;
    }

    /**
     * Its daemon.
     *
     * @return empty while its file has never been valid, or has only just been found; a new one after a restart
     */
    public Optional<Daemon> daemon() {
        return run.flatMap(RigRun::daemon);
    }

    /**
     * The mistakes in its current file.
     *
     * @return empty if it is valid
     */
    public List<Mistake> mistakes() {
        return mistakes;
    }

    /**
     * Whether it has stalled: it should make frames, but does not, or the work that looks after it hangs.
     *
     * @return true from ten seconds after the last frame until the first new one
     */
    public boolean isStill() {
        return still;
    }

    /**
     * What is wrong with it.
     *
     * @return in one line; empty if nothing is
     */
    public String trouble() {
        if (still) {
            return "it has stalled";
        }
        if (!mistakes.isEmpty()) {
            return (daemon().isPresent() ? "its file is rejected and it runs as before: " : "its file is rejected: ")
                    + mistakes.get(0)
                    + (mistakes.size() > 1 ? " (and " + (mistakes.size() - 1) + " more)" : "");
        }
        return run.map(RigRun::failure).orElse("");
    }

    /** Applies what was read from its file. For the thread that reads the files. */
    void follow(RigReading reading) {
        RigName.during(name, () -> take(reading));
    }

    private void take(RigReading reading) {
        List<Mistake> before = mistakes;
        mistakes = reading.mistakes();
        if (!mistakes.isEmpty()) {
            if (!mistakes.equals(before)) {
                mistakes.forEach(mistake -> LOG.warn("{}", mistake));
                LOG.warn("{} is rejected; {}", file, wanted.isPresent() ? "the rig runs as before" : "the rig is off");
            }
            return;
        }
        Config next = reading.config().orElseThrow();
        if (wanted.filter(next::equals).isPresent()) {
            if (!before.isEmpty()) {
                LOG.info("{} is valid again, and unchanged", file);
            }
            return;
        }
        LOG.info("{} is active", file);
        boolean isNew = wanted.isEmpty();
        wanted = Optional.of(next);
        if (isNew) {
            begin();
        } else {
            run.orElseThrow().change(next);
        }
    }

    private void begin() {
        RigRun begun = new RigRun(name, maker, wanted.orElseThrow(), hands);
        run = Optional.of(begun);
        stillness.restarted();
        begun.start();
    }

    /** Checks that it still makes frames, and restarts it if it does not. One thread calls this about every half second. */
    void lookAround() {
        run.ifPresent(now -> RigName.during(name, () -> lookAt(now)));
    }

    private void lookAt(RigRun now) {
        Stillness.Verdict verdict = stillness.look(clock.getAsLong(), now.frames(), now.steps());
        boolean before = still;
        still = verdict != Stillness.Verdict.RUNNING || (before && now.frames() == 0);
        if (before && !still) {
            LOG.info("the rig runs again");
        }
        if (verdict == Stillness.Verdict.RESTART) {
            LOG.error("the rig has stalled and is started again; the other rigs carry on. Please report it");
            now.close();
            begin();
        }
    }

    /** How many frames it has made; empty while there is no daemon. */
    OptionalLong frames() {
        Optional<Daemon> daemon = daemon();
        return daemon.isPresent() ? OptionalLong.of(daemon.get().pulse()) : OptionalLong.empty();
    }

    /** Starts stopping it, and returns at once. */
    void close() {
        run.ifPresent(RigRun::close);
    }

    /** Waits until it has stopped, and returns whether it has. */
    boolean awaitEnd(Duration most) {
        return run.map(now -> now.awaitEnd(most)).orElse(true);
    }
}
