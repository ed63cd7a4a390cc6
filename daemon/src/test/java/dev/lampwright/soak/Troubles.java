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

    /** Those that stop or blind the whole process, and so come to all of its rigs. */
    private static final Set<Kind> OF_THE_PROCESS = EnumSet.of(Kind.STOPPED, Kind.CLOCK_SET, Kind.DISK_FULL);

    private final Bench bench;
    private final RigBench rig;
    private final SplittableRandom chance;
    private long stoppedAt;
    private long stoppedNanos;

    /**
     * Makes none yet.
     *
     * @param bench the process
     * @param rig whose troubles; those of the process are its own if it is the only one
     * @param chance of all that is left to chance
     */
    Troubles(Bench bench, RigBench rig, SplittableRandom chance) {
        this.bench = bench;
        this.rig = rig;
        this.chance = chance;
    }

    /** The kinds that can be made here. */
    Set<Kind> possible() {
        Set<Kind> kinds = EnumSet.allOf(Kind.class);
        if (bench.rigs().size() > 1) {
            kinds.removeAll(OF_THE_PROCESS);
        }
        if (!bench.clock().canBeSet()) {
            kinds.remove(Kind.CLOCK_SET);
        }
        if (!bench.disk().canBeFilled()) {
            kinds.remove(Kind.DISK_FULL);
        }
        if (!rig.controller().canRefuse()) {
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

    /** Whether nothing can be published during trouble of a kind, so that another kind which publishes must begin first. */
    static boolean stopsTheBroker(Kind kind) {
        return kind == Kind.BROKER_KILLED || kind == Kind.BROKER_STILL;
    }

    /**
     * Begins.
     *
     * @param kind of what kind
     * @param state what the printer is doing
     */
    void begin(Kind kind, Rowan.State state) {
        switch (kind) {
            case BROKER_KILLED -> rig.broker().kill();
            case BROKER_STILL -> rig.broker().freeze();
            case UNPLUGGED -> rig.controller().unplug();
            case CORRUPTED -> rig.controller().corrupt(chance.nextLong());
            case CONTROLLER_HANGS -> rig.controller().hang();
            case FLOODED -> rig.rowan().flood(state, FLOOD, chance.split());
            case STORMED -> rig.rowan().storm(STORM, chance.split());
            case STOPPED -> stop();
            case CLOCK_SET -> bench.clock().set(chance.nextLong(-SECONDS_A_YEAR, SECONDS_A_YEAR));
            case DISK_FULL -> bench.disk().fill();
            case GOOD_CONFIGURATION -> rig.turnEdition();
            case BAD_CONFIGURATION -> writeBad();
            case CONFIGURATION_GONE -> goneConfiguration();
            case STRANGE_TOPICS -> rig.rowan().strangeTopics(chance.nextInt(100));
            case FRAMES_REFUSED -> rig.controller().refuse();
            case STARVED, CONTROLLER_RESET -> {}
        }
    }

    /** Ends it. */
    void end(Kind kind) {
        switch (kind) {
            case BROKER_KILLED -> rig.broker().restart();
            case BROKER_STILL -> rig.broker().thaw();
            case UNPLUGGED -> rig.controller().plug();
            case CORRUPTED -> rig.controller().restore();
            case CONTROLLER_RESET -> rig.controller().restart();
            case CONTROLLER_HANGS -> rig.controller().goOn();
            case STOPPED -> goOn();
            case CLOCK_SET -> bench.clock().set(chance.nextLong(-10, 10));
            case DISK_FULL -> bench.disk().empty();
            case GOOD_CONFIGURATION -> writeGood();
            case CONFIGURATION_GONE -> comesBack();
            case FRAMES_REFUSED -> rig.controller().restore();
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
        write(rig.configuration());
        if (chance.nextBoolean()) {
            bench.hangUp();
        }
    }

    private void goneConfiguration() {
        rig.turnEdition();
        try {
            rig.deleteConfiguration();
            if (chance.nextBoolean()) {
                rig.pipeForConfiguration();
                bench.hangUp();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void comesBack() {
        try {
            rig.deleteConfiguration();
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
            rig.write(text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
