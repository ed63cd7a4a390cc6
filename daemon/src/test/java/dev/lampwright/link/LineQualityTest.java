package dev.lampwright.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class LineQualityTest {
    private final AtomicLong now = new AtomicLong();
    private final Tally tally = new Tally();

    @Test
    void lossesAreSaidOnceAndTheirEndAfterTenCleanSeconds() {
        try (LogCapture log = new LogCapture(LineQuality.class)) {
            LineQuality quality = new LineQuality(log.logger(), "port", tally, now::get);
            quality.watch(false);
            assertEquals("", quality.words());
            for (int second = 0; second < 30; second++) {
                tally.messagesLost.incrementAndGet();
                pass(quality, 1);
            }
            assertTrue(quality.words().startsWith("messages on port are getting lost"));
            pass(quality, 10);
            pass(quality, 1);
            assertEquals("", quality.words());
            assertEquals(2, log.lines().size());
            assertTrue(log.lines().get(1).contains("30 were lost"));
        }
    }

    @Test
    void lossesThatComeAndGoAreLoggedOnceAMinuteAtMost() {
        try (LogCapture log = new LogCapture(LineQuality.class)) {
            LineQuality quality = new LineQuality(log.logger(), "port", tally, now::get);
            quality.watch(false);
            for (int time = 0; time < 5; time++) {
                tally.messagesLost.incrementAndGet();
                pass(quality, 1);
                assertTrue(quality.words().startsWith("messages on port are getting lost"));
                pass(quality, 11);
                assertEquals("", quality.words());
            }
            assertEquals(2, log.lines().size(), log.lines().toString());
            tally.messagesLost.incrementAndGet();
            pass(quality, 1);
            assertEquals(3, log.lines().size(), log.lines().toString());
        }
    }

    @Test
    void whatWasCountedBeforeTheControllerWasLitDoesNotMatter() {
        try (LogCapture log = new LogCapture(LineQuality.class)) {
            LineQuality quality = new LineQuality(log.logger(), "port", tally, now::get);
            quality.watch(false);
            quality.restart();
            tally.garbled.set(7);
            tally.controllerCounts(5, 4, 3);
            quality.watch(false);
            assertEquals("", quality.words());
            tally.controllerCounts(6, 4, 3);
            quality.watch(false);
            assertTrue(quality.words().startsWith("messages on port are getting lost"));
        }
    }

    @Test
    void aCeilingBelowTheDarkStripIsSaid() {
        try (LogCapture log = new LogCapture(LineQuality.class)) {
            LineQuality quality = new LineQuality(log.logger(), "port", tally, now::get);
            quality.watch(true);
            assertTrue(quality.words().contains("ceiling_mA"));
            tally.framesDimmed.incrementAndGet();
            quality.watch(true);
            assertEquals(1, log.lines().size());
        }
    }

    /** Frames that the controller dims are reported once, and their end after ten seconds without any. */
    @Test
    void aControllerThatDimsIsSaidUntilItHasNotForTenSeconds() {
        try (LogCapture log = new LogCapture(LineQuality.class)) {
            LineQuality quality = new LineQuality(log.logger(), "port", tally, now::get);
            quality.watch(false);
            tally.framesDimmed.incrementAndGet();
            pass(quality, 1);
            assertTrue(quality.words().startsWith("the controller on port dims frames"));
            tally.framesDimmed.incrementAndGet();
            pass(quality, 5);
            pass(quality, 10);
            assertTrue(quality.words().startsWith("the controller on port dims frames"));
            pass(quality, 1);
            assertEquals("", quality.words());
            assertEquals(2, log.lines().size());
            assertEquals(
                    "INFO the controller on port shows frames undimmed again",
                    log.lines().get(1));
        }
    }

    private void pass(LineQuality quality, long seconds) {
        now.addAndGet(TimeUnit.SECONDS.toNanos(seconds));
        quality.watch(false);
    }
}
