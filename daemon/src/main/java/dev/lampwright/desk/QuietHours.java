package dev.lampwright.desk;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.zone.ZoneOffsetTransition;
import java.util.function.UnaryOperator;

/**
 * Quiet hours, by the wall clock. If clocks go forward over one of the times, the moment of the change counts; if they go back, so that a
 * time comes twice, quiet hours begin with the first and end with the second.
 *
 * @param from when they begin, local time
 * @param to when they end, local time, on the next day unless it is later than {@code from}
 * @param zone the zone of the local time
 * @param light share of the light that is left, 0 to 1
 */
public record QuietHours(LocalTime from, LocalTime to, ZoneId zone, double light) {
    /** Share of the light that is left unless the configuration says otherwise. */
    public static final double USUAL_LIGHT = 0.15;

    /**
     * Whether it is within quiet hours.
     *
     * @param now when
     * @return true from the beginning on, false from the end on
     */
    public boolean at(Instant now) {
        LocalDate today = now.atZone(zone).toLocalDate();
        return contains(today.minusDays(1), now) || contains(today, now);
    }

    private boolean contains(LocalDate evening, Instant now) {
        LocalDate morning = to.isAfter(from) ? evening : evening.plusDays(1);
        Instant begin = instant(evening.atTime(from), ZonedDateTime::withEarlierOffsetAtOverlap);
        Instant end = instant(morning.atTime(to), ZonedDateTime::withLaterOffsetAtOverlap);
        return !now.isBefore(begin) && now.isBefore(end);
    }

    private Instant instant(LocalDateTime local, UnaryOperator<ZonedDateTime> whereTwice) {
        ZoneOffsetTransition change = zone.getRules().getTransition(local);
        return change != null && change.isGap()
                ? change.getInstant()
                : whereTwice.apply(local.atZone(zone)).toInstant();
    }
}
