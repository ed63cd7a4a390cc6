package dev.lampwright.desk;

import dev.lampwright.cue.Wishes;
import java.util.Locale;

/**
 * All that has been asked for and still counts.
 *
 * @param wishes what the lights follow, but for the quiet of the night
 * @param quiet what was asked about it
 * @param quietUntilNanos until when that counts, on the daemon's monotonic clock
 */
record StandingWishes(Wishes wishes, Quiet quiet, long quietUntilNanos) {
    /** What can be asked about the quiet of the night. */
    enum Quiet {
        /** As the hours say. */
        AUTO,
        /** Now. */
        ON,
        /** Not now. */
        OFF;

        /** As somebody asks for it. */
        String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** Nothing has been asked for. */
    static StandingWishes none(double brightness) {
        return new StandingWishes(Wishes.NONE.withBrightness(brightness), Quiet.AUTO, 0);
    }

    StandingWishes with(Wishes newWishes) {
        return new StandingWishes(newWishes, quiet, quietUntilNanos);
    }

    StandingWishes with(Quiet newQuiet, long untilNanos) {
        return new StandingWishes(wishes, newQuiet, untilNanos);
    }

    /** Whether it is quiet, given what the hours say. */
    boolean isQuiet(boolean night, long nanos) {
        boolean counts = quiet != Quiet.AUTO && quietUntilNanos - nanos > 0;
        return counts ? quiet == Quiet.ON : night;
    }
}
