package dev.lampwright.fuzz;

import dev.lampwright.look.Fitting;
import dev.lampwright.protocol.MalformedMessageException;
import dev.lampwright.protocol.Message;
import dev.lampwright.protocol.MessageReader;
import dev.lampwright.protocol.MessageType;
import dev.lampwright.protocol.Setup;
import dev.lampwright.testing.CeilingCheck;
import dev.lampwright.testing.FlashCheck;
import dev.lampwright.testing.Heartbeat;
import dev.lampwright.testing.PtyController;
import dev.lampwright.testing.Recording.Entry;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;

/** Judges everything that the controller shows by the set-up that the daemon gave it: the ceiling, the flash limit, and the right colour. */
final class LightWatch {
    private static final int LARGEST_PACKET = 4096;
    private static final List<Double> VOLTS = List.of(5.0, 24.0);

    private final PtyController controller;
    private final Heartbeat heartbeat;
    private final MessageReader reader = new MessageReader(LARGEST_PACKET);
    private final SetupTap tap = new SetupTap();
    private final Queue<String> faults = new ConcurrentLinkedQueue<>();
    private final Queue<SetUp> coming = new ConcurrentLinkedQueue<>();
    private Optional<Setup> inForce = Optional.empty();
    private Optional<Fitted> fitted = Optional.empty();
    private Optional<Colour> wanted = Optional.empty();
    private OptionalLong rightSince = OptionalLong.empty();
    private long wantedFrom;
    private long frames;
    private long judgedStretches;
    private long inconclusive;
    private String last = "nothing";

    /** A set-up sent by the daemon, and when. */
    private record SetUp(long nanos, Setup setup) {}

    /** A set-up and the judges of its frames. */
    private record Fitted(Setup setup, CeilingCheck ceiling, FlashCheck flashes) {
        static Fitted of(Setup setup, Heartbeat heartbeat) {
            List<Fitting.DimmerUse> dimmers = new ArrayList<>();
            for (int i = 0; i < setup.dimmers().size(); i++) {
                dimmers.add(Fitting.DimmerUse.white("d" + i));
            }
            Fitting fitting = new Fitting(setup.pixels(), Map.of(), dimmers);
            return new Fitted(setup, new CeilingCheck(setup), new FlashCheck(setup, fitting, VOLTS, heartbeat));
        }

        boolean isJudgedForFlashes() {
            return setup.pixels() == House.PIXELS && setup.ceilingsMilliamps().size() <= VOLTS.size();
        }
    }

    LightWatch(PtyController controller, Heartbeat heartbeat) {
        this.controller = controller;
        this.heartbeat = heartbeat;
        controller.fromHost(this::tapped);
    }

    /** On the controller's thread: what the daemon sends, before the controller has it. */
    private byte[] tapped(byte[] bytes) {
        reader.accept(bytes, 0, bytes.length, tap);
        return bytes;
    }

    private final class SetupTap implements MessageReader.Handler {
        @Override
        public void message(Message message) {
            if (message.type() == MessageType.SETUP) {
                try {
                    coming.add(new SetUp(System.nanoTime(), Setup.read(message)));
                } catch (MalformedMessageException e) {
                    faults.add("the daemon sent a set-up that cannot be read: " + e.getMessage());
                }
            }
        }

        @Override
        public void broken(int bytes) {
            // The cable was pulled in the middle of a packet.
        }
    }

    /**
     * Sets what must be shown.
     *
     * @param colour on the whole strip
     * @param fromNanos frames before this do not count
     */
    void want(Colour colour, long fromNanos) {
        look();
        wanted = Optional.of(colour);
        wantedFrom = fromNanos;
        rightSince = OptionalLong.empty();
    }

    /** Since when the right colour has been shown; empty if it is not. */
    OptionalLong rightSince() {
        look();
        return rightSince;
    }

    private void look() {
        controller.recording().drain().forEach(this::judge);
    }

    private void judge(Entry shown) {
        last = shown.toString();
        boolean right = wanted.map(colour -> colour.isOn(shown.strip())).orElse(false)
                && shown.fromHost()
                && shown.nanos() - wantedFrom >= 0;
        if (!right) {
            rightSince = OptionalLong.empty();
        } else if (rightSince.isEmpty()) {
            rightSince = OptionalLong.of(shown.nanos());
        }
        if (shown.fromHost()) {
            frames++;
            while (!coming.isEmpty() && shown.nanos() - coming.element().nanos >= 0) {
                inForce = Optional.of(coming.remove().setup);
            }
            judge(shown, inForce.orElseThrow());
        }
    }

    private void judge(Entry shown, Setup setup) {
        if (shown.strip().size() != setup.stripBytes()
                || shown.duties().size() != setup.dimmers().size()) {
            return; // shown just before another set-up came
        }
        if (fitted.isEmpty() || !fitted.get().setup.equals(setup)) {
            endStretch();
            fitted = Optional.of(Fitted.of(setup, heartbeat));
        }
        fitted.get().ceiling.judge(shown).ifPresent(faults::add);
        if (fitted.get().isJudgedForFlashes()) {
            fitted.get().flashes.judge(shown).ifPresent(faults::add);
        }
    }

    private void endStretch() {
        fitted.ifPresent(before -> {
            judgedStretches += before.flashes.judged();
            inconclusive += before.flashes.inconclusive();
        });
    }

    /** What was wrong since the last call. */
    List<String> faults() {
        look();
        List<String> all = new ArrayList<>();
        for (String fault = faults.poll(); fault != null; fault = faults.poll()) {
            all.add(fault);
        }
        return all;
    }

    /** What was shown last. */
    String last() {
        return last;
    }

    /** Frames of the host that were judged. */
    long frames() {
        return frames;
    }

    /** Stretches of four seconds that were judged for flashes. */
    long stretches() {
        return judgedStretches + fitted.map(now -> now.flashes.judged()).orElse(0L);
    }

    /** Those of them that could not be judged because this machine stood still. */
    long inconclusive() {
        return inconclusive + fitted.map(now -> now.flashes.inconclusive()).orElse(0L);
    }
}
