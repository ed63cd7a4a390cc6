package dev.lampwright.payload;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** A unit in which a printer may report a quantity. */
public enum Unit {
    /** The quantity's own; a number without a unit. */
    OWN("", Kind.ANY, 1, 0, ""),
    /** Degrees Celsius. */
    CELSIUS("°C", Kind.TEMPERATURE, 1, 0, "c/℃/degc/deg c/celsius/°"),
    /** Degrees Fahrenheit: t/°C = (t/°F − 32) / 1.8 (NIST Special Publication 811, appendix B.8, from memory). */
    FAHRENHEIT("°F", Kind.TEMPERATURE, 1 / 1.8, -32 / 1.8, "f/℉/degf/deg f/fahrenheit/°"),
    /** Kelvin: t/°C = T/K − 273.15 (SI Brochure, section 2.3.1, from memory). */
    KELVIN("K", Kind.TEMPERATURE, 1, -273.15, "kelvin"),
    /** A share from 0 to 1. */
    SHARE("share", Kind.SHARE, 1, 0, ""),
    /** A share from 0 to 100. */
    PERCENT("percent", Kind.SHARE, 0.01, 0, "%/pct/per cent"),
    /** A share from 0 to 1000. */
    PERMILLE("permille", Kind.SHARE, 0.001, 0, "‰/per mille"),
    /** Milliseconds. */
    MILLISECONDS("ms", Kind.TIME, 0.001, 0, "msec/milliseconds"),
    /** Seconds. */
    SECONDS("s", Kind.TIME, 1, 0, "sec/secs/second/seconds"),
    /** Minutes. */
    MINUTES("min", Kind.TIME, 60, 0, "m/mins/minute/minutes"),
    /** Hours. */
    HOURS("h", Kind.TIME, 3600, 0, "hr/hrs/hour/hours"),
    /** A duration such as {@code PT1H30M}; see {@link Durations#iso}. */
    ISO_8601("ISO 8601", Kind.TIME, 1, 0, ""),
    /** Hours, minutes and seconds such as {@code 1:30:00}. */
    CLOCK("h:min:s", Kind.TIME, 1, 0, ""),
    /** Hours and minutes such as {@code 1:30}. */
    SHORT_CLOCK("h:min", Kind.TIME, 1, 0, ""),
    /** Minutes and seconds such as {@code 90:00}. */
    STOPWATCH("min:s", Kind.TIME, 1, 0, ""),
    /** Parts with their units, such as {@code 1h 30m}; see {@link Durations#parts}. */
    PARTS("h min s", Kind.TIME, 1, 0, "");

    private static final Set<Unit> TEXTS = Set.of(ISO_8601, CLOCK, SHORT_CLOCK, STOPWATCH, PARTS);

    private enum Kind {
        ANY,
        TEMPERATURE,
        SHARE,
        TIME,
        COUNT
    }

    private final String word;
    private final Kind kind;
    private final double factor;
    private final double shift;
    private final String spellings;

    Unit(String word, Kind kind, double factor, double shift, String spellings) {
        this.word = word;
        this.kind = kind;
        this.factor = factor;
        this.shift = shift;
        this.spellings = spellings;
    }

    /**
     * The word for this in the configuration.
     *
     * @return empty for {@link #OWN}
     */
    public String word() {
        return word;
    }

    /**
     * Whether a quantity can be reported in this.
     *
     * @param quantity the quantity
     * @return true if its own unit measures the same kind of thing
     */
    public boolean goesWith(Quantity quantity) {
        return kind == Kind.ANY || kind == kindOf(quantity);
    }

    private static Kind kindOf(Quantity quantity) {
        return switch (quantity) {
            case JOB_PROGRESS -> Kind.SHARE;
            case JOB_LEFT, JOB_ELAPSED -> Kind.TIME;
            case JOB_DONE, JOB_TOTAL -> Kind.COUNT;
            default -> Kind.TEMPERATURE;
        };
    }

    /**
     * A value in the quantity's own unit.
     *
     * @param value in this unit
     * @return in °C, as a share from 0 to 1, or in s
     */
    public double toOwn(double value) {
        return value * factor + shift;
    }

    /**
     * A value in this unit.
     *
     * @param own in °C, as a share from 0 to 1, or in s
     * @return in this unit
     */
    double fromOwn(double own) {
        return (own - shift) / factor;
    }

    /**
     * Whether this unit has numbers rather than a text of a special form.
     *
     * @return false for durations of several parts, such as {@link #ISO_8601} and {@link #CLOCK}
     */
    public boolean numeric() {
        return !TEXTS.contains(this);
    }

    /**
     * The unit with a sign.
     *
     * @param sign a symbol such as {@code %}; null or empty for none
     * @return empty if there is none
     */
    static Optional<Unit> ofSign(String sign) {
        return sign == null || sign.isEmpty()
                ? Optional.empty()
                : Arrays.stream(values())
                        .filter(unit -> unit != OWN && unit.isSpelled(sign))
                        .findFirst();
    }

    /**
     * Whether a text after a number names this unit.
     *
     * @param text without surrounding white space
     * @return case does not count; an empty text matches any unit
     */
    boolean isSpelled(String text) {
        String folded = text.toLowerCase(Locale.ROOT);
        return folded.isEmpty()
                || folded.equals(word.toLowerCase(Locale.ROOT))
                || List.of(spellings.split("/")).contains(folded);
    }
}
