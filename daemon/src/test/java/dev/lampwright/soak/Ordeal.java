package dev.lampwright.soak;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.Heartbeat;
import dev.lampwright.testing.Recoveries;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Collectors;

/** What one rig goes through, and how its light is afterwards. */
final class Ordeal implements AutoCloseable {
    private static final Duration LONGEST_START = Duration.ofSeconds(60);
    private static final long LONGEST_RECOVERY = TimeUnit.SECONDS.toNanos(30);

    private final Bench bench;
    private final RigBench rig;
    private final Judges judges;
    private final Watcher watcher;
    private final Troubles troubles;
    private final SplittableRandom chance;
    private Rowan.State state = Rowan.State.IDLE;
    private boolean inTrouble;

    /**
     * Those who judge, for all rigs together.
     *
     * @param heartbeat how late threads are on this machine
     * @param recoveries how soon light was right again
     * @param violations what was wrong
     */
    record Judges(Heartbeat heartbeat, Recoveries recoveries, Violations violations) {}

    /**
     * Begins to watch.
     *
     * @param bench the process
     * @param rig one of its rigs
     * @param judges who judge
     * @param chance of all that is left to chance
     */
    Ordeal(Bench bench, RigBench rig, Judges judges, SplittableRandom chance) {
        this.bench = bench;
        this.rig = rig;
        this.judges = judges;
        this.chance = chance;
        watcher = new Watcher(rig.controller(), judges.heartbeat(), judges.violations());
        troubles = new Troubles(bench, rig, chance.split());
        watcher.start();
    }

    RigBench rig() {
        return rig;
    }

    Watcher watcher() {
        return watcher;
    }

    Troubles troubles() {
        return troubles;
    }

    /** Waits for the first light. */
    void begin() {
        rig.rowan().tell(state);
        watcher.want(rig.marker(state), System.nanoTime());
        Await.until(
                () -> "the first light of " + rig.name() + "; shown " + watcher.shown() + "; log " + bench.log(),
                () -> watcher.rightSince().isPresent(),
                LONGEST_START);
    }

    /**
     * Makes trouble, and waits until the light is right again.
     *
     * @param kinds of what kinds, together
     * @param meanwhile what is done while it lasts
     * @return the line that says how soon it was right
     */
    String make(List<Kind> kinds, Runnable meanwhile) {
        beInTrouble(true);
        watcher.expectTrouble();
        Rowan.State next = Rowan.next(state, chance);
        boolean during = kinds.stream().allMatch(Troubles::canTellDuring) && chance.nextBoolean();
        kinds.stream()
                .sorted(Comparator.comparing(Troubles::stopsTheBroker))
                .forEach(kind -> troubles.begin(kind, state));
        if (during) {
            rig.rowan().tell(next);
        }
        long held = System.nanoTime()
                + TimeUnit.MILLISECONDS.toNanos(
                        kinds.stream().mapToLong(troubles::heldMillis).max().orElseThrow());
        meanwhile.run();
        LockSupport.parkNanos(Math.max(1, held - System.nanoTime()));
        if (kinds.contains(Kind.STARVED)) {
            awaitSilence();
        }
        long ended = end(kinds);
        if (!during) {
            rig.rowan().tell(next);
        }
        state = next;
        String line = awaitRight(kinds, ended);
        kinds.forEach(troubles::tidyUp);
        beInTrouble(false);
        return line;
    }

    private synchronized void beInTrouble(boolean now) {
        inTrouble = now;
    }

    /** The printer reports again what it reported last, so that it does not count as silent; in trouble it reports nothing by itself. */
    synchronized void tellAgain() {
        if (!inTrouble) {
            rig.rowan().tell(state);
        }
    }

    /** What began last ends first. Returns when all was over. */
    private long end(List<Kind> kinds) {
        for (int i = kinds.size() - 1; i >= 0; i--) {
            troubles.end(kinds.get(i));
        }
        return System.nanoTime();
    }

    private void awaitSilence() {
        watcher.want(rig.marker(Rowan.State.SILENT), System.nanoTime());
        Await.until(
                () -> "silence; shown " + watcher.shown(),
                () -> watcher.rightSince().isPresent(),
                LONGEST_START);
    }

    /** Goes on to another state without any trouble of its own, which must be shown as soon as after the least of troubles. */
    void goOnInPeace(String name, Duration promise) {
        long told = System.nanoTime();
        tellNext();
        watcher.want(rig.marker(state), told);
        OptionalLong right = right(told);
        if (right.isEmpty()) {
            notRight(name);
        } else {
            note(name, promise, told, right.getAsLong());
            watcher.expectCalm();
        }
    }

    private synchronized void tellNext() {
        watcher.expectTrouble();
        state = Rowan.next(state, chance);
        rig.rowan().tell(state);
    }

    private String awaitRight(List<Kind> kinds, long ended) {
        watcher.want(rig.marker(state), ended);
        OptionalLong right = right(ended);
        String names = kinds.stream().map(Kind::toString).collect(Collectors.joining(" + "));
        if (right.isEmpty()) {
            notRight(names);
            return names + " not right again";
        }
        Duration promise =
                kinds.stream().map(Kind::promise).max(Duration::compareTo).orElseThrow();
        note(names, promise, ended, right.getAsLong());
        return String.format(Locale.ROOT, "%-40s %.2f s", names, (right.getAsLong() - ended) * 1e-9);
    }

    private OptionalLong right(long from) {
        OptionalLong right = watcher.rightSince();
        while (right.isEmpty() && System.nanoTime() - from < LONGEST_RECOVERY) {
            Await.pause();
            right = watcher.rightSince();
        }
        return right;
    }

    private void notRight(String names) {
        judges.violations()
                .add(rig.name() + ": after " + names + " not " + rig.marker(state) + " in half a minute but "
                        + watcher.shown() + "; log " + lastOf(bench.log()));
    }

    private void note(String names, Duration promise, long ended, long right) {
        long stood = judges.heartbeat().sumBetween(ended, right);
        Optional<String> wrong = judges.recoveries().add(names, promise, right - ended, stood);
        wrong.ifPresent(what -> judges.violations().add(rig.name() + ": " + what + "; log " + lastOf(bench.log())));
    }

    private static List<String> lastOf(List<String> log) {
        return log.subList(Math.max(0, log.size() - 8), log.size());
    }

    /** From now on nothing else may be shown, if what is shown is right. */
    void calmDown() {
        if (watcher.rightSince().isPresent()) {
            watcher.expectCalm();
        }
    }

    @Override
    public void close() {
        watcher.close();
    }
}
