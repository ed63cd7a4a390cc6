package dev.lampwright.link;

import dev.lampwright.demo.MemoryController;
import dev.lampwright.demo.MemoryLine;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Recording;
import dev.lampwright.upkeep.Backoff;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;

/** A link to an in-memory controller, over a line with switchable trouble. */
final class LinkRig implements AutoCloseable {
    static final int BAUD = 500_000;

    /** Ten pixels and one dimmer, within the ceiling whatever is shown. */
    static final Setup SETUP = new Setup(
            10,
            "GRB",
            List.of(12_000, 12_000, 12_000),
            1000,
            0,
            60_000,
            WhenSilent.BEACON,
            List.of(2000),
            List.of(new Setup.Dimmer(0, 500, 0x4000)));

    final Recording recording = new Recording();
    final MemoryController controller;
    final MemoryLine memoryLine;
    final TroubledLine line;
    final FrameSlot slot;
    private final AtomicInteger published = new AtomicInteger();
    private final AtomicLong passedNanos = new AtomicLong();
    final ControllerLink link;

    LinkRig() {
        this(MemoryController.BOARD, SETUP);
    }

    LinkRig(Here here, Setup setup) {
        this(here, setup, new Backoff(Duration.ofMillis(250), Duration.ofSeconds(1)));
    }

    LinkRig(Backoff backoff) {
        this(MemoryController.BOARD, SETUP, backoff);
    }

    private LinkRig(Here here, Setup setup, Backoff backoff) {
        controller = new MemoryController(here, recording);
        memoryLine = new MemoryLine(controller, BAUD, System::nanoTime);
        line = new TroubledLine(memoryLine);
        slot = new FrameSlot(setup.stripBytes(), setup.dimmers().size());
        link = new ControllerLink(line, setup, slot, () -> System.nanoTime() + passedNanos.get(), backoff);
    }

    LinkRig started() {
        link.start();
        return this;
    }

    /** Publishes a frame in which every byte of the strip, and every duty, is {@code value}. */
    void publish(int value) {
        Frame frame = slot.back();
        Arrays.fill(frame.strip(), (byte) value);
        Arrays.fill(frame.duties(), value);
        slot.publish(System.nanoTime() + passedNanos.get());
        published.incrementAndGet();
        link.frameReady();
    }

    /** Publishes a frame repeatedly, as the frame loop does, until it is shown. */
    void publishUntilShown(int value) {
        publishUntilShown(value, Duration.ofSeconds(20));
    }

    void publishUntilShown(int value, Duration most) {
        Await.until(
                () -> "frame of " + value + "; " + link.status(),
                () -> {
                    publish(value);
                    return shows(value);
                },
                most);
    }

    boolean shows(int value) {
        return recording.lastIs(entry -> entry.fromHost()
                && entry.strip().stream().allMatch(channel -> channel == value)
                && entry.duties().stream().allMatch(duty -> duty == value));
    }

    void awaitState(LinkState state) {
        Await.until(state.toString(), () -> link.status().state() == state);
    }

    /** Waits until every frame that was published is shown or was replaced by a newer one. */
    void awaitRest() {
        Await.until("the last answer", () -> link.status().framesShown() + slot.skipped() == published.get());
    }

    /** Waits until the link reports trouble, with these words among others. */
    void awaitTrouble(String words) {
        Await.until(
                () -> "trouble '" + words + "', not " + link.status(),
                () -> link.status().trouble().contains(words),
                Duration.ofSeconds(20));
    }

    void awaitTroublesEnd() {
        Await.until("all well", () -> link.status().trouble().isEmpty());
    }

    /** Advances the link's clock by this much. */
    void passTime(Duration time) {
        passedNanos.addAndGet(time.toNanos());
    }

    @Override
    public void close() {
        link.close();
    }
}
