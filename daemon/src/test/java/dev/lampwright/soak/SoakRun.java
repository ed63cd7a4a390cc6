package dev.lampwright.soak;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.Heartbeat;
import dev.lampwright.testing.Recoveries;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Collectors;

/** One soak: trouble after trouble, occasionally two at once, each followed by a moment of calm. */
final class SoakRun {
    private static final Duration LONGEST_START = Duration.ofSeconds(60);
    private static final long LONGEST_RECOVERY = TimeUnit.SECONDS.toNanos(30);
    private static final long SECOND = TimeUnit.SECONDS.toNanos(1);
    private static final int ONE_PAIR_IN = 4;

    private final Settings settings;
    private final SplittableRandom chance;
    private final Violations violations = new Violations();
    private final Heartbeat heartbeat = new Heartbeat();
    private final Recoveries recoveries = new Recoveries();
    private final Deque<Kind> deck = new ArrayDeque<>();
    private Rowan.State state = Rowan.State.IDLE;
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
        try (Bench bench = new Bench(settings.folder(), settings.board());
                Watcher watcher = new Watcher(bench.controller(), heartbeat, violations)) {
            Runtime.getRuntime().addShutdownHook(new Thread(bench::close, "end of the bench"));
            watcher.start();
            return run(bench, watcher);
        } finally {
            heartbeat.close();
        }
    }

    private Summary run(Bench bench, Watcher watcher) throws IOException {
        begin(bench, watcher);
        Troubles troubles = new Troubles(bench, chance.split());
        Resources resources = new Resources(bench.daemon(), settings.length());
        FrameRate rate = new FrameRate(bench.metricsPort());
        long started = System.nanoTime();
        int first = troubles.possible().size();
        while (System.nanoTime() - started < settings.length().toNanos() || troublesMade < first) {
            if (!bench.daemon().isAlive()) {
                violations.add("the daemon has ended");
                break;
            }
            makeTrouble(bench, watcher, troubles, draw(troubles));
            calmDown(watcher);
            resources.measure();
        }
        bench.log().stream()
                .filter(line -> line.startsWith("\tat "))
                .findFirst()
                .ifPresent(line -> violations.add("a stack trace is in the log: " + line));
        rate.end(troubles.stoppedNanos());
        resources.judge(violations);
        return summary(bench, watcher, troubles, resources, rate, System.nanoTime() - started);
    }

    private Summary summary(
            Bench bench, Watcher watcher, Troubles troubles, Resources resources, FrameRate rate, long nanos) {
        List<Kind> left = new ArrayList<>(List.of(Kind.values()));
        left.removeAll(troubles.possible());
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
                bench.controller().figures(),
                rate,
                resources,
                violations.count());
        return new Summary(text, troublesMade, watcher.frames(), rate.rate(), violations.count());
    }

    private void begin(Bench bench, Watcher watcher) {
        bench.rowan().tell(state);
        watcher.want(new Marker(state, bench.edition()), System.nanoTime());
        Await.until(
                () -> "the first light; shown " + watcher.shown() + "; log " + bench.log(),
                () -> watcher.rightSince().isPresent(),
                LONGEST_START);
    }

    /** From a deck of all kinds, shuffled again when it is used up. */
    private List<Kind> draw(Troubles troubles) {
        Kind one = next(troubles);
        boolean single =
                deck.isEmpty() || !mixes(one) || chance.nextInt(ONE_PAIR_IN) > 0 || troublesMade < Kind.values().length;
        if (single || !mixes(deck.peek())) {
            return List.of(one);
        }
        return List.of(one, deck.remove());
    }

    private Kind next(Troubles troubles) {
        if (deck.isEmpty()) {
            List<Kind> kinds = new ArrayList<>(troubles.possible());
            Collections.shuffle(kinds, new Random(chance.nextLong()));
            deck.addAll(kinds);
        }
        return deck.remove();
    }

    /** Those that take their own time, or are waited for through the log, come alone. */
    private static boolean mixes(Kind kind) {
        return switch (kind) {
            case STARVED, STORMED, FLOODED, BAD_CONFIGURATION, CONFIGURATION_GONE, DISK_FULL -> false;
            default -> true;
        };
    }

    private void makeTrouble(Bench bench, Watcher watcher, Troubles troubles, List<Kind> kinds) {
        watcher.expectTrouble();
        Rowan.State next = Rowan.next(state, chance);
        boolean during = kinds.stream().allMatch(Troubles::canTellDuring) && chance.nextBoolean();
        kinds.forEach(kind -> troubles.begin(kind, state));
        if (during) {
            bench.rowan().tell(next);
        }
        hold(kinds.stream().mapToLong(troubles::heldMillis).max().orElseThrow());
        if (kinds.contains(Kind.STARVED)) {
            awaitSilence(bench, watcher);
        }
        long ended = end(troubles, kinds);
        if (!during) {
            bench.rowan().tell(next);
        }
        state = next;
        troublesMade++;
        awaitRight(bench, watcher, kinds, ended);
        kinds.forEach(troubles::tidyUp);
    }

    /** What began last ends first. Returns when everything was over. */
    private static long end(Troubles troubles, List<Kind> kinds) {
        for (int i = kinds.size() - 1; i >= 0; i--) {
            troubles.end(kinds.get(i));
        }
        return System.nanoTime();
    }

    private static void hold(long millis) {
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(millis));
    }

    private static void awaitSilence(Bench bench, Watcher watcher) {
        watcher.want(new Marker(Rowan.State.SILENT, bench.edition()), System.nanoTime());
        Await.until(
                () -> "silence; shown " + watcher.shown(),
                () -> watcher.rightSince().isPresent(),
                LONGEST_START);
    }

    private void awaitRight(Bench bench, Watcher watcher, List<Kind> kinds, long ended) {
        Marker marker = new Marker(state, bench.edition());
        watcher.want(marker, ended);
        OptionalLong right = watcher.rightSince();
        while (right.isEmpty() && System.nanoTime() - ended < LONGEST_RECOVERY) {
            Await.pause();
            right = watcher.rightSince();
        }
        String names = kinds.stream().map(Kind::toString).collect(Collectors.joining(" + "));
        if (right.isEmpty()) {
            violations.add("after " + names + " not " + marker + " in half a minute but " + watcher.shown() + "; log "
                    + lastOf(bench.log()));
        } else {
            note(bench, kinds, names, ended, right.getAsLong());
        }
    }

    private void note(Bench bench, List<Kind> kinds, String names, long ended, long right) {
        Duration promise =
                kinds.stream().map(Kind::promise).max(Duration::compareTo).orElseThrow();
        long nanos = right - ended;
        Optional<String> wrong = recoveries.add(names, promise, nanos, heartbeat.sumBetween(ended, right));
        wrong.ifPresent(what -> violations.add(what + "; log " + lastOf(bench.log())));
        System.out.printf(Locale.ROOT, "%4d %-40s %.2f s%n", troublesMade, names, nanos * 1e-9);
    }

    private static List<String> lastOf(List<String> log) {
        return log.subList(Math.max(0, log.size() - 8), log.size());
    }

    private void calmDown(Watcher watcher) {
        if (watcher.rightSince().isPresent()) {
            watcher.expectCalm();
        }
        LockSupport.parkNanos(chance.nextLong(SECOND / 2, 3 * SECOND / 2));
    }
}
