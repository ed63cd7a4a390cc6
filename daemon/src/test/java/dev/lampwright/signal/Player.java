package dev.lampwright.signal;

import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterStatus;
import java.util.List;

/** Feeds heat-ups to signals, as those of a bed. */
final class Player {
    private static final double BETWEEN_S = 600;

    private final Signals signals = new Signals(HeatUpRecord.ROOM_C);
    private PrinterStatus status = PrinterStatus.nothingHeard();
    private double begin;
    private double now;

    /** Starts another heat-up, after the heater was off. */
    void begin(HeatUpRecord record) {
        hear(Quantity.BED_SETPOINT, 0, now);
        begin = now + BETWEEN_S;
        hear(Quantity.BED_ACTUAL, record.startC(), begin);
        hear(Quantity.BED_SETPOINT, record.targetC(), begin);
    }

    /** Feeds the reports up to a time of the heat-up, in s. */
    void playUntil(HeatUpRecord record, double seconds) {
        List<HeatUpRecord.Told> due = record.readings().stream()
                .filter(told -> begin + told.seconds() > now && told.seconds() <= seconds)
                .toList();
        due.forEach(this::play);
    }

    /** Feeds the reports at one time of the heat-up. */
    void play(HeatUpRecord.Told told) {
        hear(Quantity.BED_ACTUAL, told.celsius(), begin + told.seconds());
    }

    private void hear(Quantity quantity, double value, double seconds) {
        now = seconds;
        status = status.withReading(quantity, value, nanos(seconds));
        signals.follow(status);
    }

    /** A signal's value at a time of the heat-up, in s. */
    double value(String key, double seconds) {
        return signals.value(Signal.named(key).orElseThrow(), nanos(begin + seconds));
    }

    private static long nanos(double seconds) {
        return Math.round(seconds * 1e9);
    }
}
