package dev.lampwright.rig;

import dev.lampwright.broker.Brokers;
import dev.lampwright.broker.Patience;
import dev.lampwright.broker.SharedBrokers;
import dev.lampwright.config.Config;
import dev.lampwright.config.Mistake;
import dev.lampwright.config.RigReading;
import dev.lampwright.config.Shop;
import dev.lampwright.engine.Daemon;
import dev.lampwright.engine.Phase;
import dev.lampwright.engine.RigPlace;
import dev.lampwright.upkeep.Crew;
import dev.lampwright.upkeep.RigName;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * All rigs of a process. Each starts, changes and stops with its own file in a shop. Any thread may call {@link #all}, {@link #find},
 * {@link #mistakes}, {@link #daemons} and {@link #pulse}; the rest is for the thread that reads the files.
 */
public final class Rigs implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Rigs.class);
    /** How long to wait for a controller to be free, because another rig may use it next. */
    private static final Duration LONGEST_END = Duration.ofMillis(1500);

    private final Maker maker;
    private final LongSupplier clock;
    private final Crew crew = new Crew();
    private final Brokers brokers = new SharedBrokers(Patience.USUAL, crew);
    private volatile Map<String, Rig> rigs = Map.of();
    private volatile List<Mistake> mistakes = List.of();
    private int made;
    private final AtomicLong looks = new AtomicLong();

    /** Builds daemons. */
    @FunctionalInterface
    public interface Maker {
        /**
         * Builds one; nothing of it runs yet.
         *
         * @param file the rig's file
         * @param config what to run
         * @param place its place among the rigs
         * @return the daemon
         */
        Daemon make(Path file, Config config, RigPlace place);
    }

    /**
     * Creates a process without rigs.
     *
     * @param maker builds a rig's daemon
     * @param clock monotonic, in ns
     */
    public Rigs(Maker maker, LongSupplier clock) {
        this.maker = maker;
        this.clock = clock;
    }

    /**
     * The rigs of a process.
     *
     * @return the current ones, by name
     */
    public List<Rig> all() {
        return List.copyOf(rigs.values());
    }

    /**
     * A rig.
     *
     * @param name its name
     * @return empty if there is none
     */
    public Optional<Rig> find(String name) {
        return Optional.ofNullable(rigs.get(name));
    }

    /**
     * The mistakes in what all rigs share.
     *
     * @return empty if nothing is; until they are fixed, all rigs run as before
     */
    public List<Mistake> mistakes() {
        return mistakes;
    }

    /**
     * The daemons.
     *
     * @return the daemons of the rigs that have one, by name
     */
    public Map<String, Daemon> daemons() {
        Map<String, Daemon> daemons = new TreeMap<>();
        rigs.forEach((name, rig) -> rig.daemon().ifPresent(daemon -> daemons.put(name, daemon)));
        return daemons;
    }

    /**
     * Follows the files of a shop. Rigs whose configuration is unchanged are left alone. Rigs whose files were removed stop first, for up
     * to a second and a half, because other rigs may now use their controllers.
     *
     * @param shop what was read
     */
    public void follow(Shop shop) {
        if (!mistakes.isEmpty()) {
            LOG.info("what all rigs share is valid again");
        }
        mistakes = List.of();
        Map<String, Rig> next = new TreeMap<>(rigs);
        Set<String> gone = new TreeSet<>(next.keySet());
        shop.rigs().stream().map(RigReading::name).forEach(gone::remove);
        List<Rig> ending = gone.stream().map(next::remove).toList();
        end(ending);
        for (RigReading reading : shop.rigs()) {
            next.computeIfAbsent(
                    reading.name(), name -> rig(name, reading.file().path()));
        }
        rigs = next;
        shop.rigs().forEach(reading -> next.get(reading.name()).follow(reading));
    }

    private Rig rig(String name, Path file) {
        RigPlace place = new RigPlace(Phase.of(made), brokers, crew);
        made++;
        return new Rig(name, file, config -> maker.make(file, config, place), clock, crew);
    }

    private void end(List<Rig> ending) {
        ending.forEach(rig -> RigName.during(rig.name(), () -> LOG.info("{} was removed; the rig stops", rig.file())));
        ending.forEach(Rig::close);
        await(ending, LONGEST_END);
    }

    private static void await(List<Rig> ending, Duration longest) {
        long end = System.nanoTime() + longest.toNanos();
        ending.forEach(rig -> rig.awaitEnd(Duration.ofNanos(end - System.nanoTime())));
    }

    /**
     * Records that what all rigs share is not valid. They keep running as before.
     *
     * @param wrong what is wrong, 1 or more
     */
    public void refused(List<Mistake> wrong) {
        if (!wrong.equals(mistakes)) {
            wrong.forEach(mistake -> LOG.warn("{}", mistake));
            LOG.warn("all rigs run as before");
        }
        mistakes = List.copyOf(wrong);
    }

    /** Checks that all rigs still run, and restarts those that have stalled. Call about every half second. */
    public void lookAround() {
        looks.incrementAndGet();
        rigs.values().forEach(Rig::lookAround);
    }

    /**
     * A count that changes while any rig makes frames; while no rig has a daemon, while {@link #lookAround} is called.
     *
     * @return 0 at first
     */
    public long pulse() {
        List<OptionalLong> frames = new ArrayList<>();
        rigs.values().stream().map(Rig::frames).filter(OptionalLong::isPresent).forEach(frames::add);
        return frames.isEmpty()
                ? looks.get()
                : frames.stream().mapToLong(OptionalLong::getAsLong).sum();
    }

    /** Stops all rigs cleanly, simultaneously, within a second and a half. */
    @Override
    public void close() {
        List<Rig> ending = all();
        ending.forEach(Rig::close);
        await(ending, LONGEST_END);
        crew.close();
    }
}
