package dev.lampwright.tool.survey;

import dev.lampwright.payload.Unit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a number without a role is. The first kind that its name suggests counts: a fan's speed is a fan's. */
enum NumberKind {
    /** A fan: percent, a share, a byte or revolutions. */
    FAN(Concept.FAN) {
        @Override
        NumberForm untold(Trail trail) {
            double most = trail.most();
            if (!trail.whole() && most > 0 && most <= 1) {
                return NumberForm.sure("share", "goes up to " + NumberText.number(most));
            }
            if (most == BYTE && trail.whole()) {
                return NumberForm.sure("", BYTE, "goes up to 255");
            }
            if (most == WHOLE) {
                return NumberForm.sure(NumberForm.PERCENT, "goes up to 100");
            }
            if (most <= WHOLE) {
                return NumberForm.open(
                        NumberForm.PERCENT,
                        "percent is a guess, since it only went up to " + NumberText.number(most)
                                + "; it may be of 255 as well");
            }
            return most <= BYTE
                    ? NumberForm.open("", "255 as the most is a guess, since it went up to " + NumberText.number(most))
                            .upTo(BYTE)
                    : NumberForm.open("rpm", "rpm is a guess");
        }
    },

    /** Relative humidity. */
    HUMIDITY(Concept.HUMIDITY) {
        @Override
        NumberForm untold(Trail trail) {
            boolean share = !trail.whole() && trail.most() <= 1;
            return trail.most() > 0 && trail.most() <= WHOLE
                    ? NumberForm.sure(
                            share ? "share" : NumberForm.PERCENT,
                            "was " + NumberText.number(trail.least()) + " to " + NumberText.number(trail.most()))
                    : NumberForm.open("", "its unit is open");
        }
    },

    /** How much filament there is. */
    FILAMENT(Concept.FILAMENT) {
        @Override
        NumberForm untold(Trail trail) {
            boolean percent = trail.most() == WHOLE;
            String heard = "since it went up to " + NumberText.number(trail.most());
            return percent
                    ? NumberForm.open(NumberForm.PERCENT, "percent is a guess, " + heard)
                    : NumberForm.open("", "the unit is open, and the range a guess, " + heard)
                            .upTo(Math.max(1, trail.most()));
        }
    },

    /** How much is extruded, relative to what the job says. */
    FLOW(Concept.FLOW) {
        @Override
        NumberForm untold(Trail trail) {
            return override(trail);
        }
    },

    /** How fast it prints, absolute or relative to what the job says. */
    SPEED(Concept.SPEED) {
        @Override
        NumberForm untold(Trail trail) {
            return override(trail);
        }
    },

    /** Anything else. */
    OTHER() {
        @Override
        NumberForm untold(Trail trail) {
            return NumberForm.open("", "");
        }
    };

    /** The maximum for a fan that is set by a byte. */
    private static final double BYTE = 255;

    private static final double WHOLE = 100;
    /** Speed and flow may be set to twice what the job says. Common practice, no source. */
    private static final double DOUBLE = 200;

    private static final double HIGHEST_OVERRIDE = 500;
    private static final double LOWEST_OVERRIDE = 10;
    private static final int MOST_SETTINGS = 8;

    private final Optional<Concept> concept;

    NumberKind(Concept concept) {
        this.concept = Optional.of(concept);
    }

    NumberKind() {
        concept = Optional.empty();
    }

    /** What a name must refer to; empty for any. */
    Optional<Concept> concept() {
        return concept;
    }

    /** A name for a number whose own cannot be a key. */
    String word() {
        return this == OTHER ? "value" : name().toLowerCase(Locale.ROOT);
    }

    /**
     * Its unit and range.
     *
     * @param trail what was seen of it
     * @param called the words of its name, from the one that says what it is
     * @return nothing if it is a flag, or not of this kind after all
     */
    Optional<NumberForm> form(Trail trail, List<String> called) {
        Optional<String> told = NumberForm.told(trail, called);
        if (told.isPresent()) {
            return told(trail, told.get());
        }
        boolean stopped = this == FAN && trail.most() == 0;
        boolean flag = trail.whole() && trail.least() >= 0 && trail.most() <= 1 && !stopped;
        boolean impossible = trail.least() < 0 || trail.unit() != Unit.OWN;
        return flag || impossible || this == OTHER ? Optional.empty() : Optional.of(untold(trail));
    }

    private Optional<NumberForm> told(Trail trail, String unit) {
        String reason = "is reported in " + unit;
        if (this == OTHER) {
            return Optional.of(NumberForm.open(unit, "only its unit is known, " + unit));
        }
        boolean percent = unit.equals(NumberForm.PERCENT);
        if (percent && (trail.least() < 0 || trail.most() > mostPercent())) {
            return Optional.of(
                    NumberForm.open("", "its name says percent, but it was " + NumberText.number(trail.most())));
        }
        NumberForm form = NumberForm.sure(unit, reason);
        return Optional.of(percent && isOverride() ? form.upTo(DOUBLE) : form);
    }

    private boolean isOverride() {
        return this == FLOW || this == SPEED;
    }

    private double mostPercent() {
        return isOverride() ? HIGHEST_OVERRIDE : WHOLE;
    }

    /** Its unit and range, judged by the numbers alone. */
    abstract NumberForm untold(Trail trail);

    /** A setting that seldom changes and has been 100 is relative to what the job says; one that changes all the time is a speed. */
    private static NumberForm override(Trail trail) {
        List<String> values = trail.said().texts();
        boolean hundred = trail.whole() && trail.most() <= HIGHEST_OVERRIDE && values.contains("100");
        if (hundred && trail.least() >= LOWEST_OVERRIDE && values.size() <= MOST_SETTINGS) {
            return NumberForm.sure(NumberForm.PERCENT, DOUBLE, "is seldom changed, and was 100");
        }
        String heard = NumberText.number(trail.most());
        return hundred
                ? NumberForm.open(NumberForm.PERCENT, "percent is a guess, since it was 100")
                        .upTo(DOUBLE)
                : NumberForm.open("", "the unit is open, and the range a guess, since it went up to " + heard)
                        .upTo(Math.max(1, trail.most()));
    }
}
