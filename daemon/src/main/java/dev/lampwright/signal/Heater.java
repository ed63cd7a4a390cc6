package dev.lampwright.signal;

import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Reading;

/** One heated part: its temperature and its target make its signals. */
final class Heater implements Sources.Source {
    private final Body body;
    private final HeatUp heatUp;
    private final Cooling cooling;
    private final ReadyTime readyTime;
    private final Trend trend = new Trend();
    private final StopClock clock = new StopClock();
    private final Glide heat = new Glide();
    private final Glide hot = new Glide();
    private final Glide speed = new Glide();
    private final Glide readyError = new Glide();
    private final Countdown ready = new Countdown(clock);
    private Reading actual = Reading.UNKNOWN;
    private Reading target = Reading.UNKNOWN;

    /**
     * Creates one without readings.
     *
     * @param body what it heats
     * @param room where it is
     * @param fit for calculating, shared by the heaters of one thread, because it takes more memory than all the rest
     */
    Heater(Body body, Room room, CurveFit fit) {
        this.body = body;
        heatUp = new HeatUp(room.ambientC());
        cooling = new Cooling(room.ambientC(), room.hotAboveC());
        readyTime = new ReadyTime(room.ambientC(), fit);
    }

    @Override
    public void follow(PrinterStatus status) {
        Reading newActual = body.actual().apply(status);
        Reading newTarget = body.target().apply(status);
        boolean isMeasured = newActual.differsFrom(actual);
        if (isMeasured || newTarget.differsFrom(target)) {
            actual = newActual;
            target = newTarget;
            take(isMeasured);
        }
    }

    private void take(boolean isMeasured) {
        double c = actual.value();
        double targetC = target.value();
        long nanos = Math.max(actual.atNanos(), target.atNanos());
        heat.to(heatUp.share(c, targetC), nanos);
        hot.to(cooling.share(c, targetC), nanos);
        clock.run(true, nanos);
        if (isMeasured) {
            follow(c, clock.at(nanos));
            speed.to(trend.perSecond(), nanos);
        }
        ready.to(readyTime.take(c, targetC, clock.at(nanos), isMeasured), nanos);
        readyError.to(readyTime.errorS(), nanos);
    }

    private void follow(double c, double now) {
        if (Double.isNaN(c)) {
            trend.forget();
        } else {
            trend.add(c, now);
        }
    }

    /** Share of the way from the beginning of the heat-up to its target. */
    Track heat() {
        return heat;
    }

    /** How hot it still is, from 1 to 0. */
    Track cooling() {
        return hot;
    }

    /** How fast it heats up, in K/s. */
    Track speed() {
        return speed;
    }

    /** Time until it is ready, in s. */
    Track ready() {
        return ready;
    }

    /** Standard error of that time, in s. */
    Track readyError() {
        return readyError;
    }
}
