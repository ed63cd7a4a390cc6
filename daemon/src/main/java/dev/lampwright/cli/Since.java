package dev.lampwright.cli;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** A value of {@code --since}: a date, a date with a time of day, or how long ago. */
final class Since {
    private static final Pattern AGO = Pattern.compile("([0-9]{1,5})([mhd])");
    private static final int EARLIEST_YEAR = 1970;
    private static final int LATEST_YEAR = 9999;

    private final Optional<Duration> ago;
    private final Optional<LocalDateTime> from;

    private Since(Optional<Duration> ago, Optional<LocalDateTime> from) {
        this.ago = ago;
        this.from = from;
    }

    /** Reads one. */
    static final class Reader implements ITypeConverter<Since> {
        @Override
        public Since convert(String text) {
            return Since.read(text)
                    .orElseThrow(() -> new TypeConversionException("is " + text
                            + "; write a date such as 2026-11-27, with a time such as 2026-11-27T09:00, or how long ago, such"
                            + " as 90m, 12h or 7d"));
        }
    }

    private static Optional<Since> read(String text) {
        Matcher ago = AGO.matcher(text);
        if (ago.matches()) {
            long count = Long.parseLong(ago.group(1));
            Duration duration = switch (ago.group(2)) {
                case "m" -> Duration.ofMinutes(count);
                case "h" -> Duration.ofHours(count);
                default -> Duration.ofDays(count);
            };
            return Optional.of(new Since(Optional.of(duration), Optional.empty()));
        }
        try {
            String day = text.replace(' ', 'T');
            LocalDateTime from = day.indexOf('T') < 0 ? LocalDate.parse(day).atStartOfDay() : LocalDateTime.parse(day);
            boolean sane = from.getYear() >= EARLIEST_YEAR && from.getYear() <= LATEST_YEAR;
            return sane ? Optional.of(new Since(Optional.empty(), Optional.of(from))) : Optional.empty();
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    /**
     * The time that it means.
     *
     * @param now the time
     * @param zone the local time zone
     */
    Instant instant(Instant now, ZoneId zone) {
        return ago.map(now::minus)
                .orElseGet(() -> from.orElseThrow().atZone(zone).toInstant());
    }
}
