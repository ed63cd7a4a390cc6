package dev.lampwright.soak;

import dev.lampwright.testing.Heartbeat;
import dev.lampwright.testing.Recoveries;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** One soak of one rig: trouble after trouble, now and then two at once, each followed by a moment of calm. */
final class SoakRun {
    private static final long SECOND = TimeUnit.SECONDS.toNanos(1);

    private final Settings settings;
    private final SplittableRandom chance;
    private final Violations violations = new Violations();
    private final Heartbeat heartbeat = new Heartbeat();
    private final Recoveries recoveries = new Recoveries();
    private int troublesMade;

    /**
     * What to do.
     *
     * @param length minimum duration; every kind of trouble comes at least once
     * @param seed of everything random
     * @param board whether the controller is the emulated board
     * @param folder an empty folder for files
     */
    record Settings(Duration length, long seed, boolean board, Path folder) {}

    SoakRun(Settings settings) {
        this.settings = settings;
        chance = new SplittableRandom(settings.seed());
    }

    /**
     * Runs it.
     *
     * @return what came of it
     */
    Summary run() throws IOException {
        heartbeat.start();
        Ordeal.Judges judges = new Ordeal.Judges(heartbeat, recoveries, violations);
        try (Bench bench = new Bench(settings.folder(), settings.board(), List.of("rowan"));
                Ordeal ordeal = new Ordeal(bench, bench.rigs().get(0), judges, chance.split())) {
            Runtime.getRuntime().addShutdownHook(new Thread(bench::close, "end of the bench"));
            return run(bench, ordeal);
        } finally {
            heartbeat.close();
        }
    }

    private Summary run(Bench bench, Ordeal ordeal) throws IOException {
        ordeal.begin();
        Troubles troubles = ordeal.troubles();
        Deck deck = new Deck(troubles.possible(), chance.split());
        Resources resources = new Resources(bench.daemon(), settings.length());
        FrameRate rate = new FrameRate(bench.metricsPort());
        long started = System.nanoTime();
        int first = troubles.possible().size();
        while (System.nanoTime() - started < settings.length().toNanos() || troublesMade < first) {
            if (!bench.daemon().isAlive()) {
                violations.add("the daemon has ended");
                break;
            }
            String line = ordeal.make(deck.draw(), () -> {});
            troublesMade++;
            System.out.printf(Locale.ROOT, "%4d %s%n", troublesMade, line);
            ordeal.calmDown();
            LockSupport.parkNanos(chance.nextLong(SECOND / 2, 3 * SECOND / 2));
            resources.measure();
        }
        violations.addStackTraces(bench.log());
        rate.end(troubles.stoppedNanos());
        resources.judge(violations);
        return summary(ordeal, resources, rate, System.nanoTime() - started);
    }

    private Summary summary(Ordeal ordeal, Resources resources, FrameRate rate, long nanos) {
        Watcher watcher = ordeal.watcher();
        List<Kind> left = new ArrayList<>(List.of(Kind.values()));
        left.removeAll(ordeal.troubles().possible());
        String text = String.format(
                Locale.ROOT,
                """
                soak: %.1f minutes, seed %d, %d troubles, and how soon the light was right after their end:
                %sinconclusive, as this machine stood still: %d (its longest stand was %.0f ms)
                kinds that cannot be made here: %s
                frames judged: %d of the host, %d of the controller's own; most current %d of %d mA; flashes: %s
                %s
                frame rate: %s
                resources of the daemon, in moments of calm:
                %s
                violations: %d
                """,
                nanos / 60e9,
                settings.seed(),
                troublesMade,
                recoveries,
                recoveries.inconclusive(),
                heartbeat.longest() * 1e-6,
                left.isEmpty() ? "none" : left,
                watcher.frames(),
                watcher.ownFrames(),
                watcher.mostMilliamps(),
                Rowan.CEILING_MILLIAMPS,
                watcher.flashStretches(),
                ordeal.rig().controller().figures(),
                rate,
                resources,
                violations.count());
        return new Summary(text, troublesMade, watcher.frames(), rate.rate(), violations.count());
    }
}
