package dev.lampwright.soak;

import dev.lampwright.testing.Heartbeat;
import dev.lampwright.testing.Recoveries;
import dev.lampwright.upkeep.Worker;
import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * One soak of several rigs in one process: one of them, another each time, has trouble, and all others have to carry on as if nothing had
 * happened. Each rig has a printer, a broker and a pseudo-terminal of its own, so that any trouble but that of the whole process can come to
 * one of them alone.
 */
final class RigsRun {
    /** Well before a printer counts as silent. */
    private static final Duration TELL_EVERY = Duration.ofSeconds(2);

    private static final Duration NEW_STATE = Duration.ofSeconds(2);
    private static final long SECOND = TimeUnit.SECONDS.toNanos(1);

    private final SoakRun.Settings settings;
    private final int count;
    private final Set<Kind> kinds;
    private final SplittableRandom chance;
    private final Violations violations = new Violations();
    private final Heartbeat heartbeat = new Heartbeat();
    private final Recoveries recoveries = new Recoveries();
    private final Ordeal.Judges judges = new Ordeal.Judges(heartbeat, recoveries, violations);
    private int troublesMade;
    private long leftOut;

    /**
     * Prepares.
     *
     * @param settings how long and where; every kind of trouble comes at least once
     * @param count how many rigs, 2 or more
     * @param kinds the kinds of trouble; those that cannot come to one rig alone are left out
     */
    RigsRun(SoakRun.Settings settings, int count, Set<Kind> kinds) {
        this.settings = settings;
        this.count = count;
        this.kinds = kinds;
        chance = new SplittableRandom(settings.seed());
    }

    /**
     * Runs it.
     *
     * @return what came of it
     */
    Summary run() throws IOException {
        heartbeat.start();
        List<String> names =
                IntStream.rangeClosed(1, count).mapToObj(i -> "rowan" + i).toList();
        List<Ordeal> ordeals = new ArrayList<>();
        try (Bench bench = new Bench(settings.folder(), settings.board(), names)) {
            Runtime.getRuntime().addShutdownHook(new Thread(bench::close, "end of the bench"));
            bench.rigs().forEach(rig -> ordeals.add(new Ordeal(bench, rig, judges, chance.split())));
            try (Worker printers = new Worker("printers", TELL_EVERY, () -> ordeals.forEach(Ordeal::tellAgain))) {
                ordeals.forEach(Ordeal::begin);
                ordeals.forEach(Ordeal::calmDown);
                printers.start();
                return run(bench, ordeals);
            }
        } finally {
            ordeals.forEach(Ordeal::close);
            heartbeat.close();
        }
    }

    private Summary run(Bench bench, List<Ordeal> ordeals) throws IOException {
        Set<Kind> possible = ordeals.get(0).troubles().possible();
        possible.retainAll(kinds);
        Deck deck = new Deck(possible, chance.split());
        Resources resources = new Resources(bench.daemon(), settings.length());
        List<Ordeal> turns = new ArrayList<>(ordeals);
        Collections.shuffle(turns, new Random(chance.nextLong()));
        long started = System.nanoTime();
        while (System.nanoTime() - started < settings.length().toNanos() || troublesMade < possible.size()) {
            if (!bench.daemon().isAlive()) {
                violations.add("the daemon has ended");
                break;
            }
            troubleOne(bench, turns, deck.draw());
            LockSupport.parkNanos(chance.nextLong(SECOND / 2));
            resources.measure();
        }
        violations.addStackTraces(bench.log());
        resources.judge(violations);
        return summary(ordeals, resources, System.nanoTime() - started);
    }

    private void troubleOne(Bench bench, List<Ordeal> turns, List<Kind> kinds) throws IOException {
        Ordeal unlucky = turns.get(troublesMade % turns.size());
        List<Ordeal> others = turns.stream().filter(one -> one != unlucky).toList();
        Ordeal busy = others.get(chance.nextInt(others.size()));
        String names = kinds.stream().map(Kind::toString).collect(Collectors.joining(" + "));
        Neighbours neighbours = new Neighbours(
                bench,
                others.stream().map(Ordeal::rig).toList(),
                judges,
                names + " of " + unlucky.rig().name());
        String line = unlucky.make(kinds, () -> {
            busy.goOnInPeace("a new state beside trouble", NEW_STATE);
            neighbours.ask();
        });
        leftOut += neighbours.judge();
        troublesMade++;
        System.out.printf(
                Locale.ROOT, "%4d %s %s%n", troublesMade, unlucky.rig().name(), line);
        unlucky.calmDown();
    }

    private Summary summary(List<Ordeal> ordeals, Resources resources, long nanos) {
        long frames = ordeals.stream().mapToLong(one -> one.watcher().frames()).sum();
        String text = String.format(
                Locale.ROOT,
                """
                soak of %d rigs: %.1f minutes, seed %d, %d troubles of one rig each, and how soon its light was right after their end:
                %sinconclusive, as this machine stood still: %d (its longest stand was %.0f ms)
                frames judged: %d of the host; most current %d of %d mA; ticks left out by the rigs without trouble: %d
                flashes: %s
                resources of the daemon, in moments of calm:
                %s
                violations: %d
                """,
                count,
                nanos / 60e9,
                settings.seed(),
                troublesMade,
                recoveries,
                recoveries.inconclusive(),
                heartbeat.longest() * 1e-6,
                frames,
                ordeals.stream()
                        .mapToLong(one -> one.watcher().mostMilliamps())
                        .max()
                        .orElseThrow(),
                Rowan.CEILING_MILLIAMPS,
                leftOut,
                ordeals.stream()
                        .map(one -> one.rig().name() + " " + one.watcher().flashStretches())
                        .collect(Collectors.joining("; ")),
                resources,
                violations.count());
        return new Summary(text, troublesMade, frames, Double.NaN, violations.count());
    }
}
