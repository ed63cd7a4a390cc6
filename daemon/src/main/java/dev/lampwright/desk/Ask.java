package dev.lampwright.desk;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.cue.Wishes;
import dev.lampwright.desk.StandingWishes.Quiet;
import dev.lampwright.look.Fitting;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What can be asked for: what it is called, what it takes, and what is done about it. The word for each is the last level of its topic,
 * and the key of its value where a message is an object. Help, completion and reference are written from what stands here.
 */
public enum Ask {
    /** How bright the strip is: a share of the light that looks ask for. */
    BRIGHTNESS(new About(
            "a number from 0 to 1",
            "how bright the strip is, 0 to 1",
            "The share of its light that the strip keeps. A fault never drops below 0.25; white lights are not meant.",
            "0.4")) {
        @Override
        Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
            double level = request.number(word(), 0, 1).orElseThrow(this::missing);
            return new Outcome(before.with(before.wishes().withBrightness(level)), "brightness " + Spoken.share(level));
        }
    },
    /** The level of the white lights, or of one. */
    WORK(new About(
            "a number from 0 to 1, or \"auto\"",
            "the white lights, 0 to 1, or auto; one with --dimmer",
            "The level of the white lights; `auto` leaves it to the look.",
            "0.8",
            Key.DIMMER)) {
        @Override
        Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
            return new WhiteLights(circumstances.fitting().dimmers()).done(this, request, before);
        }
    },
    /** A look, for a time. */
    LOOK(new About(
            "the name of a look, or \"auto\"",
            "a look for a minute or --for seconds; or auto",
            "Shows a look for a time, unless there is a fault; `auto` goes back to what the cues say.",
            "done",
            Key.FOR_A_MINUTE)) {
        @Override
        Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
            String name = request.needWord(word(), wanted());
            Duration time = request.lasting(A_MINUTE);
            Wishes wishes = before.wishes();
            if (name.equals(Spoken.AUTO)) {
                return new Outcome(before.with(wishes.withLook("", circumstances.nanos())), "look as the cues say");
            }
            if (!circumstances.looks().has(name)) {
                throw new RefusedException("there is no look \"" + Request.shown(name) + "\"; "
                        + circumstances.looks().choice());
            }
            StandingWishes standing = before.with(wishes.withLook(name, circumstances.nanos() + time.toNanos()));
            String later = circumstances.alarm() == AlarmState.NORMAL ? "" : ", once the fault is seen and over";
            return new Outcome(standing, "look " + name + " for " + Spoken.seconds(time) + later);
        }
    },
    /** Single pixels and zones in colours of their own, for a time. */
    PIXELS(new About(
                    "colours by zone or by pixel, for instance {\"pixels\": {\"bed\": \"green\", \"3\": \"red\", \"5-9\": \"navy\"}}",
                    "zones and pixels in colours, as long as a look; or auto",
                    "Lights zones, pixels and runs of pixels in CSS colours for a time, all of one message in one frame, unless there"
                            + " is a fault; `auto` gives them back to the look.",
                    "bed=green 3=red",
                    Key.FOR_A_MINUTE)
            .message("{\"pixels\": {\"bed\": \"green\", \"3\": \"red\"}}")) {
        @Override
        Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
            return PixelsAsk.done(this, request, circumstances, before);
        }
    },
    /** That somebody has seen the fault. */
    ACKNOWLEDGE(new About(
            "", "the fault has been seen", "Says that somebody has seen the fault, so that its look calms down.", "")) {
        @Override
        Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
            request.word(word());
            if (circumstances.alarm() != AlarmState.ALERT) {
                throw new RefusedException("there is no fault to acknowledge");
            }
            return new Outcome(before.with(before.wishes().acknowledged()), "fault acknowledged");
        }

        @Override
        boolean isLogged() {
            return true;
        }
    },
    /** That what was acknowledged and is over is to go. */
    RESET(new About(
            "",
            "clear an acknowledged fault that is over",
            "Clears a fault that was acknowledged and is over, where `[alarm]` keeps it until somebody says so.",
            "")) {
        @Override
        Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
            request.word(word());
            if (circumstances.alarm() == AlarmState.NORMAL) {
                throw new RefusedException("there is no fault to reset");
            }
            if (circumstances.alarm() == AlarmState.ALERT) {
                throw new RefusedException("the fault has not been acknowledged; acknowledge it first");
            }
            return new Outcome(before.with(before.wishes().reset()), "reset, if the fault is over");
        }

        @Override
        boolean isLogged() {
            return true;
        }
    },
    /** The quiet of the night, at once or not at all. */
    QUIET(new About(
            "\"on\", \"off\" or \"auto\"",
            "or off, or auto for the hours of the night",
            "Dims all light as at night, or does not; `auto` follows the hours in `[quiet]`. A fault is not dimmed.",
            "on",
            Key.FOR)) {
        @Override
        Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
            String word = request.needWord(word(), wanted());
            Quiet quiet = Arrays.stream(Quiet.values())
                    .filter(any -> any.word().equals(word))
                    .findFirst()
                    .orElseThrow(() -> new RefusedException("quiet is \"" + Request.shown(word) + "\"; " + wanted()));
            Optional<Duration> time = request.lastingIfSaid();
            StandingWishes standing = before.with(
                    quiet, circumstances.nanos() + time.orElse(FOR_GOOD).toNanos());
            String hours =
                    quiet == Quiet.AUTO && !circumstances.hasQuietHours() ? ", and there are no hours in [quiet]" : "";
            String until = time.map(t -> " for " + Spoken.seconds(t)).orElse("");
            return new Outcome(standing, "quiet " + word + hours + until);
        }
    };

    /** How long a look or pixels stay that nobody gave a time for. */
    static final Duration A_MINUTE = Duration.ofMinutes(1);

    private static final Duration FOR_GOOD = Duration.ofDays(365 * 100);

    private final String value;
    private final String help;
    private final String text;
    private final String tell;
    private final String message;
    private final Key key;

    Ask(About about) {
        value = about.value();
        help = about.help();
        text = about.text();
        tell = about.tell();
        message = about.message();
        key = about.key();
    }

    /** A key that may stand beside the value. */
    enum Key {
        /** None. */
        NONE("", ""),
        /** Which white light. */
        DIMMER("dimmer", "the name of one white light; without it, all of them"),
        /** How long, a minute if it is left out. */
        FOR_A_MINUTE(Request.FOR, "seconds, up to a week; 60 without it"),
        /** How long, for good if it is left out. */
        FOR(Request.FOR, "seconds, up to a week; until something else is asked for without it");

        private final String key;
        private final String help;

        Key(String key, String help) {
            this.key = key;
            this.help = help;
        }

        /** As a message has it. */
        String key() {
            return key;
        }

        /** What it takes. */
        String help() {
            return help;
        }
    }

    /**
     * How an ask is described.
     *
     * @param value what its value must be, as a refusal says it; empty if it takes none
     * @param help a line of 50 characters or so
     * @param text a sentence or two, in Markdown
     * @param tell example of its value on a command line
     * @param message example of a message that says the same
     * @param key what may stand beside the value
     */
    record About(String value, String help, String text, String tell, String message, Key key) {
        About(String value, String help, String text, String example) {
            this(value, help, text, example, Key.NONE);
        }

        About(String value, String help, String text, String example, Key key) {
            this(value, help, text, example, example, key);
        }

        About message(String other) {
            return new About(value, help, text, tell, other, key);
        }
    }

    /**
     * What an ask is judged by.
     *
     * @param fitting what is fitted
     * @param looks the looks that there are
     * @param alarm the state of the alarm
     * @param hasQuietHours whether the configuration has hours of the night
     * @param nanos the time, on the daemon's monotonic clock
     */
    record Circumstances(Fitting fitting, KnownLooks looks, AlarmState alarm, boolean hasQuietHours, long nanos) {}

    /**
     * What came of it.
     *
     * @param standing what is asked for from now on
     * @param text a line that says so
     */
    record Outcome(StandingWishes standing, String text) {}

    /**
     * Does it, or refuses and changes nothing.
     *
     * @param request what was asked
     * @param circumstances what is fitted and what goes on
     * @param before what was asked for up to now
     * @return what is asked for from now on, and a line that says so
     * @throws RefusedException if it can't be done
     */
    abstract Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException;

    /** Whether the log is to say that it was done. */
    boolean isLogged() {
        return false;
    }

    /** How it is described. */
    About about() {
        return new About(value, help, text, tell, message, key);
    }

    /** What to give, for a refusal. */
    String wanted() {
        return "give " + value;
    }

    RefusedException missing() {
        return new RefusedException(word() + " is missing; " + wanted());
    }

    /**
     * The word for this.
     *
     * @return for instance {@code brightness}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * An example of what a command line says to ask for this.
     *
     * @return for instance {@code brightness 0.4}
     */
    public String example() {
        return (word() + " " + tell).strip();
    }

    /**
     * What this does and takes, for a list of all.
     *
     * @return a line of 50 characters or so, without a full stop
     */
    public String help() {
        return help;
    }

    /**
     * The words for all.
     *
     * @return as in {@link #word}
     */
    public static List<String> words() {
        return Arrays.stream(values()).map(Ask::word).toList();
    }

    /** The ask of a word; empty if there is none. */
    static Optional<Ask> of(String word) {
        return Arrays.stream(values()).filter(ask -> ask.word().equals(word)).findFirst();
    }
}
