package dev.lampwright.soak;

import dev.lampwright.testing.Await;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;

/** Causes trouble of each kind, and ends it. */
final class Troubles {
    private static final int FLOOD = 2000;
    private static final int STORM = 100;
    private static final long SECONDS_A_YEAR = 31_557_600;
    private static final List<String> BAD = List.of(
            "",
            "frames_per_s = 0\n",
            "[broker\nurl = ",
            "broker.url = \"http://nowhere\"\nstrip.pixels = -1\n",
            "\u0000\u0001\uffff",
            "strip = { pixels = 30, colour = \"red\" }\n");

    private final Bench bench;
    private final SplittableRandom chance;
    private long stoppedAt;
    private long stoppedNanos;

    Troubles(Bench bench, SplittableRandom chance) {
        this.bench = bench;
        this.chance = chance;
    }

    /** The kinds that can be made here. */
    Set<Kind> possible() {
        Set<Kind> kinds = EnumSet.allOf(Kind.class);
        if (!bench.clock().canBeSet()) {
            kinds.remove(Kind.CLOCK_SET);
        }
        if (!bench.disk().canBeFilled()) {
            kinds.remove(Kind.DISK_FULL);
        }
        if (!bench.controller().canRefuse()) {
            kinds.remove(Kind.FRAMES_REFUSED);
        }
        return kinds;
    }

    /** Whether the printer can report its state during trouble of a kind. */
    static boolean canTellDuring(Kind kind) {
        return switch (kind) {
            case BROKER_KILLED, BROKER_STILL, FLOODED, STORMED, STARVED -> false;
            default -> true;
        };
    }

    /**
     * Begins.
     *
     * @param kind of what kind
     * @param state what the printer is doing
     */
    void begin(Kind kind, Rowan.State state) {
        switch (kind) {
            case BROKER_KILLED -> bench.broker().kill();
            case BROKER_STILL -> bench.broker().freeze();
            case UNPLUGGED -> bench.controller().unplug();
            case CORRUPTED -> bench.controller().corrupt(chance.nextLong());
            case CONTROLLER_HANGS -> bench.controller().hang();
            case FLOODED -> bench.rowan().flood(state, FLOOD, chance.split());
            case STORMED -> bench.rowan().storm(STORM, chance.split());
            case STOPPED -> stop();
            case CLOCK_SET -> bench.clock().set(chance.nextLong(-SECONDS_A_YEAR, SECONDS_A_YEAR));
            case DISK_FULL -> bench.disk().fill();
            case GOOD_CONFIGURATION -> bench.turnEdition();
            case BAD_CONFIGURATION -> writeBad();
            case CONFIGURATION_GONE -> goneConfiguration();
            case STRANGE_TOPICS -> bench.rowan().strangeTopics(chance.nextInt(100));
            case FRAMES_REFUSED -> bench.controller().refuse();
            case STARVED, CONTROLLER_RESET -> {}
        }
    }

    /** Ends it. */
    void end(Kind kind) {
        switch (kind) {
            case BROKER_KILLED -> bench.broker().restart();
            case BROKER_STILL -> bench.broker().thaw();
            case UNPLUGGED -> bench.controller().plug();
            case CORRUPTED -> bench.controller().restore();
            case CONTROLLER_RESET -> bench.controller().restart();
            case CONTROLLER_HANGS -> bench.controller().goOn();
            case STOPPED -> goOn();
            case CLOCK_SET -> bench.clock().set(chance.nextLong(-10, 10));
            case DISK_FULL -> bench.disk().empty();
            case GOOD_CONFIGURATION -> writeGood();
            case CONFIGURATION_GONE -> comesBack();
            case FRAMES_REFUSED -> bench.controller().restore();
            case STRANGE_TOPICS, FLOODED, STORMED, STARVED, BAD_CONFIGURATION -> {}
        }
    }

    private void stop() {
        bench.daemon().signal("STOP");
        stoppedAt = System.nanoTime();
    }

    private void goOn() {
        stoppedNanos += System.nanoTime() - stoppedAt;
        bench.daemon().signal("CONT");
    }

    /** For how long the daemon has been stopped so far, at least, in ns. */
    long stoppedNanos() {
        return stoppedNanos;
    }

    /** Tidies up after the light has been right again. */
    void tidyUp(Kind kind) {
        if (kind == Kind.BAD_CONFIGURATION) {
            writeGood();
        }
    }

    /** How long it lasts, in ms, before its end. */
    long heldMillis(Kind kind) {
        return switch (kind) {
            case FLOODED, STORMED, STRANGE_TOPICS, GOOD_CONFIGURATION, CONTROLLER_RESET -> chance.nextLong(200);
            case STARVED -> Rowan.SILENT_AFTER_S * 1000L + 500;
            default -> chance.nextLong(300, 4000);
        };
    }

    /** Half of the time with the file watch alone, half with a signal as well. */
    private void writeGood() {
        write(bench.configuration());
        if (chance.nextBoolean()) {
            bench.hangUp();
        }
    }

    private void goneConfiguration() {
        bench.turnEdition();
        try {
            bench.deleteConfiguration();
            if (chance.nextBoolean()) {
                bench.pipeForConfiguration();
                bench.hangUp();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void comesBack() {
        try {
            bench.deleteConfiguration();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        writeGood();
    }

    private void writeBad() {
        int before = refusals();
        write(BAD.get(chance.nextInt(BAD.size())));
        bench.hangUp();
        Await.until("the configuration to be refused", () -> refusals() > before);
    }

    private int refusals() {
        return (int) bench.log().stream()
                .filter(line -> line.contains(" is rejected"))
                .count();
    }

    private void write(String text) {
        try {
            bench.write(text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
