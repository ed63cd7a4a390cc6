package dev.lampwright.demo;

import dev.lampwright.protocol.Complaint;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.MalformedMessageException;
import dev.lampwright.protocol.Message;
import dev.lampwright.protocol.MessageReader;
import dev.lampwright.protocol.MessageType;
import dev.lampwright.protocol.MessageWriter;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.Shown;
import dev.lampwright.protocol.WhenSilent;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * The controller of {@code firmware-notes/wire.md} in memory: bytes in, bytes out, with time passed in. It takes as long for a frame as a
 * strip would; if it does not listen while it drives, it loses the bytes that come in that time. For one thread. Frames allocate nothing.
 */
public final class MemoryController {
    /** A board like the one in the worked example of {@code firmware-notes/wire.md}. */
    public static final Here BOARD = new Here(1, "1.0.0", 0x6c616d7000000001L, 300, 1024, 6, 1, 10_000, false);

    private static final long STRIP_RESET_NANOS = TimeUnit.MICROSECONDS.toNanos(300);

    /** Why something is shown. */
    public enum Light {
        /** A frame of the host, as sent. */
        WHOLE,
        /** A frame of the host, dimmed to keep the ceiling. */
        DIMMED,
        /** The controller's own darkness: it has just started, or has no host, or the beacon is between two flashes. */
        DARK,
        /** The controller's own beacon, lit. */
        BEACON
    }

    /** Where the controller sends its answers. */
    public interface Host {
        /**
         * Bytes for the host.
         *
         * @param bytes the buffer, valid only until this returns
         * @param count how many, from index 0
         * @param nanos when the first may be sent, which may be some time from now
         */
        void hear(byte[] bytes, int count, long nanos);
    }

    /** The strip and the dimmers. */
    public interface Display {
        /**
         * Something new is shown.
         *
         * @param light why
         * @param sequence sequence number of the message that brought it; 0 for the controller's own
         * @param frame what is shown, valid only until this returns
         * @param nanos when
         */
        void show(Light light, int sequence, Frame frame, long nanos);
    }

    private final Here here;
    private final MemoryLight light;
    private final MessageReader reader;
    private final MessageWriter writer = new MessageWriter(Setup.LARGEST_BODY);
    private final Packets packets = new Packets();
    private final byte[] one = new byte[1];
    private Host host = (bytes, count, nanos) -> {};

    private FrameAssembly parts = new FrameAssembly(0, 0);
    private long now;
    private long drivingUntil;
    private int frameBytes;
    private int litBytes;
    private int lastSequence;
    private boolean overrunCounted;
    private int broken;
    private int overruns;
    private int dimmed;

    /**
     * Creates a controller that is switched off.
     *
     * @param here what it reports about itself, and does
     * @param display where its light goes
     */
    public MemoryController(Here here, Display display) {
        this.here = here;
        light = new MemoryLight(display);
        reader = new MessageReader(here.mostPacketBytes());
    }

    /**
     * Connects the line for its answers.
     *
     * @param newHost where they go from now on
     */
    public void connect(Host newHost) {
        host = newHost;
    }

    /**
     * Switches it on, or resets it: everything is dark and forgotten, and it announces itself.
     *
     * @param nanos when
     */
    public void start(long nanos) {
        now = nanos;
        drivingUntil = nanos;
        frameBytes = 0;
        litBytes = 0;
        reader.restart();
        light.start(nanos);
        parts = new FrameAssembly(0, 0);
        lastSequence = 0;
        broken = 0;
        overruns = 0;
        dimmed = 0;
        send(here.write(writer, 0));
    }

    /**
     * Receives one byte from the line.
     *
     * @param value the byte
     * @param nanos when it came; never before the last call
     */
    public void receive(byte value, long nanos) {
        pass(nanos);
        if (!here.listensWhileDriving() && drivingUntil - nanos > 0) {
            lose(value);
            return;
        }
        one[0] = value;
        reader.accept(one, 0, 1, packets);
    }

    /**
     * Lets time pass: the holdover may be over.
     *
     * @param nanos the current time; never before the last call
     */
    public void pass(long nanos) {
        now = nanos;
        if (light.pass(nanos)) {
            parts.forget();
            drive(nanos);
        }
    }

    /**
     * What is shown now.
     *
     * @return the controller's own frame, which must not be written to
     */
    public Frame shown() {
        return light.frame();
    }

    /** A packet with lost bytes is broken; one whose end is lost too never existed. */
    private void lose(byte value) {
        if (value == 0) {
            reader.restart();
        } else {
            reader.spoil();
        }
        if (!overrunCounted) {
            overruns++;
            overrunCounted = true;
        }
    }

    private void take(Message message) {
        try {
            switch (message.type()) {
                case HELLO -> hello(message);
                case SETUP -> setUp(message);
                case FRAME -> frame(message);
                case REST -> rest(message);
                default -> complain(Complaint.UNKNOWN_TYPE, message.typeCode());
            }
        } catch (MalformedMessageException e) {
            refuse(message, e.at());
        }
    }

    private void hello(Message message) throws MalformedMessageException {
        if (message.u8(0) == here.version()) {
            send(here.write(writer, lastSequence));
        } else {
            complain(Complaint.VERSION, here.version());
        }
    }

    private void setUp(Message message) throws MalformedMessageException {
        Setup next = here.outputs() > 1 ? Setup.read(message) : Setup.readUncut(message);
        int unfit = unfitAt(next);
        if (unfit >= 0) {
            complain(Complaint.VALUE, unfit);
            return;
        }
        if (light.setUp(next, now)) {
            parts = new FrameAssembly(next.stripBytes(), next.dimmers().size());
            frameBytes = next.longestRun() * next.channels();
        }
        send(next.write(writer, MessageType.IN_FORCE, lastSequence));
        int darkOver = light.darkOverMilliamps(next);
        if (darkOver > 0) {
            complain(Complaint.CEILING_BELOW_DARK, darkOver);
        }
    }

    private int unfitAt(Setup next) {
        if (next.stripBytes() > here.mostPixels() * 3) {
            return Setup.PIXELS_AT;
        }
        int dimmersAt = Setup.dimmersAt(next.ceilingsMilliamps().size());
        if (next.dimmers().size() > here.dimmers()) {
            return dimmersAt;
        }
        boolean known = next.runs().stream().allMatch(run -> run.output() < here.outputs());
        return known
                ? -1
                : Setup.bodyBytes(
                        next.ceilingsMilliamps().size(), next.dimmers().size());
    }

    private void frame(Message message) throws MalformedMessageException {
        Optional<Setup> setup = light.setup();
        if (setup.isEmpty()) {
            complain(Complaint.NOT_SET_UP, 0);
            return;
        }
        switch (parts.take(message)) {
            case TAKEN -> {
                light.heard(setup.get(), now);
                send(Shown.TAKEN.write(writer, lastSequence, broken, overruns, dimmed));
            }
            case WHOLE -> {
                light.heard(setup.get(), now);
                show();
            }
            case REFUSED -> complain(parts.complaint(), parts.detail());
        }
    }

    private void show() {
        long start = drivingUntil - now > 0 ? drivingUntil : now;
        boolean tooBright = light.show(parts.frame(), lastSequence, start);
        drive(start);
        if (tooBright) {
            dimmed++;
        }
        Shown how = tooBright ? Shown.DIMMED : Shown.WHOLE;
        int count = how.write(writer, lastSequence, broken, overruns, dimmed);
        host.hear(writer.wire(), count, here.listensWhileDriving() ? start : drivingUntil);
    }

    /** Runs are sent together, so the longest one counts, plus what may still be lit beyond it from the previous set-up. */
    private void drive(long start) {
        drivingUntil = start + Math.max(frameBytes, litBytes) * (long) here.byteNanos() + STRIP_RESET_NANOS;
        litBytes = frameBytes;
    }

    private void rest(Message message) throws MalformedMessageException {
        Optional<Setup> setup = light.setup();
        if (setup.isEmpty()) {
            complain(Complaint.NOT_SET_UP, 0);
            return;
        }
        parts.forget();
        if (light.rest(setup.get(), WhenSilent.read(message, 0), now)) {
            drive(now);
        }
        send(Shown.RESTING.write(writer, lastSequence, broken, overruns, dimmed));
    }

    private void refuse(Message message, int at) {
        if (at < 0) {
            complain(Complaint.LENGTH, rightLength(message));
        } else {
            complain(Complaint.VALUE, at);
        }
    }

    private static int rightLength(Message message) {
        return message.type() == MessageType.SETUP ? Setup.rightBodyBytes(message) : 1;
    }

    private void complain(Complaint complaint, int detail) {
        send(complaint.write(writer, lastSequence, detail));
    }

    private void send(int count) {
        host.hear(writer.wire(), count, now);
    }

    /** What the reader found. */
    private final class Packets implements MessageReader.Handler {
        @Override
        public void message(Message message) {
            overrunCounted = false;
            if (message.sequence() != ((lastSequence + 1) & 0xFF)) {
                parts.forget();
            }
            lastSequence = message.sequence();
            take(message);
        }

        @Override
        public void broken(int bytes) {
            overrunCounted = false;
            broken++;
            parts.forget();
            complain(Complaint.BROKEN, Math.min(bytes, 0xFFFF));
        }

        @Override
        public void tooLong(int bytes) {
            overrunCounted = false;
            parts.forget();
            complain(Complaint.TOO_LONG, here.mostPacketBytes());
        }
    }
}
