package dev.lampwright.history;

import java.time.Instant;
import java.util.concurrent.TimeUnit;

/** A clock that a test moves, of a machine that was booted at noon. */
final class TestClock implements HistoryClock {
    static final Instant NOON = Instant.parse("2026-11-27T12:00:00Z");

    private long millis;
    private long bootedMillis = NOON.toEpochMilli();

    /** Time goes by. */
    void pass(double seconds) {
        millis += Math.round(seconds * 1000);
    }

    /** Sets the wall clock. */
    void set(Instant wall) {
        bootedMillis = wall.toEpochMilli() - millis;
    }

    /** The machine reboots, after some time. */
    TestClock rebooted(double seconds) {
        TestClock after = new TestClock();
        after.set(Instant.ofEpochMilli(wallMillis()).plusMillis(Math.round(seconds * 1000)));
        return after;
    }

    @Override
    public long millis() {
        return millis;
    }

    @Override
    public long nanos() {
        return TimeUnit.MILLISECONDS.toNanos(millis);
    }

    @Override
    public long wallMillis() {
        return bootedMillis + millis;
    }
}
