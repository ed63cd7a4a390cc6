package dev.lampwright.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.CapturedLog;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;

class AttemptsTest {
    private static final String NAME = AttemptsTest.class.getName();
    private static final String AGAIN = "; trying again every 5 s";

    private final CapturedLog log = new CapturedLog(NAME);
    private final AtomicLong nanos = new AtomicLong(Long.MAX_VALUE);
    private final Attempts attempts = new Attempts(LoggerFactory.getLogger(NAME), nanos::get);

    @AfterEach
    void close() {
        log.close();
    }

    @Test
    void areDueFiveSecondsAfterTheLastFailure() {
        assertFalse(attempts.areDue(), "nothing has been tried");
        attempts.failed("taken");
        nanos.addAndGet(TimeUnit.SECONDS.toNanos(5) - 1);
        assertFalse(attempts.areDue());
        nanos.addAndGet(1);
        assertTrue(attempts.areDue());
        attempts.failed("taken");
        assertFalse(attempts.areDue());
        nanos.addAndGet(TimeUnit.HOURS.toNanos(1));
        assertTrue(attempts.areDue());
        attempts.over();
        assertFalse(attempts.areDue());
    }

    @Test
    void aTroubleIsToldOnceAndAgainAfterItsEndOrAsAnother() {
        attempts.failed("taken");
        attempts.failed("taken");
        attempts.failed("gone");
        attempts.over();
        attempts.failed("gone");
        assertEquals(List.of("WARN taken" + AGAIN, "WARN gone" + AGAIN, "WARN gone" + AGAIN), log.lines());
    }
}
