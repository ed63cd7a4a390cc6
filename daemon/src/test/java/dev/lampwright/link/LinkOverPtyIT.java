package dev.lampwright.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.protocol.Frame;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Faults;
import dev.lampwright.testing.PtyController;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The link over a real device node, through every kind of trouble that a cable and a board can cause. */
@Timeout(120)
class LinkOverPtyIT {
    @TempDir
    Path directory;

    private final FrameSlot slot = new FrameSlot(LinkRig.SETUP.stripBytes(), 1);
    private PtyController pty;
    private SerialLine line;
    private ControllerLink link;

    @BeforeEach
    void start() {
        pty = PtyController.pluggedIn(directory);
        line = new SerialLine(pty.port().toString(), LinkRig.BAUD);
        link = new ControllerLink(line, LinkRig.SETUP, slot, System::nanoTime);
        link.start();
        publishUntilShown(1);
    }

    @AfterEach
    void stop() {
        link.close();
        pty.close();
    }

    private void publish(int value) {
        Frame frame = slot.back();
        Arrays.fill(frame.strip(), (byte) value);
        Arrays.fill(frame.duties(), value);
        slot.publish();
        link.frameReady();
    }

    private void publishUntilShown(int value) {
        Await.until(
                () -> "frame " + value + "; " + link.status(),
                () -> {
                    publish(value);
                    return pty.recording()
                            .lastIs(entry -> entry.fromHost()
                                    && entry.strip().stream().allMatch(channel -> channel == value)
                                    && entry.duties().stream().allMatch(duty -> duty == value));
                },
                Duration.ofSeconds(20));
    }

    @Test
    void lightsTheController() {
        LinkStatus status = link.status();
        assertEquals(LinkState.LIT, status.state());
        assertEquals(pty.port().toString(), status.port());
        for (int value = 2; value <= 100; value++) {
            publishUntilShown(value);
        }
        assertEquals(0, link.status().messagesLost() + link.status().garbled());
    }

    @Test
    void survivesAHundredHorrors() {
        for (int round = 0; round < 20; round++) {
            int value = 2 + 5 * round;
            pty.unplug();
            Await.until("down", () -> link.status().state() == LinkState.DOWN);
            pty.plug();
            publishUntilShown(value);
            pty.reset();
            publishUntilShown(value + 1);
            pty.sendGarbage((byte) 0x55, (byte) round, (byte) 0, (byte) 1);
            publishUntilShown(value + 2);
            pty.toHost(Faults.all(round, 0.02));
            pty.fromHost(Faults.all(round, 0.02));
            long lost = link.status().messagesLost();
            Await.until("a loss", () -> {
                publish(value + 3);
                return link.status().messagesLost() > lost;
            });
            pty.toHost(Faults.none());
            pty.fromHost(Faults.none());
            publishUntilShown(value + 4);
        }
        assertTrue(Thread.getAllStackTraces().keySet().stream()
                        .filter(thread -> thread.getName().startsWith("link"))
                        .count()
                <= 2);
    }

    @Test
    void aBoardThatHangsIsFoundAgainOnceItTakesBytes() {
        pty.freeze();
        Await.until("the trouble", () -> {
            publish(2);
            return link.status().trouble().contains("gone silent");
        });
        pty.thaw();
        publishUntilShown(3);
    }

    @Test
    void closingSaysGoodbye() {
        link.close();
        Await.until("the beacon", () -> pty.recording().lastIs(entry -> !entry.fromHost()));
    }
}
