package dev.lampwright.desk;

import dev.lampwright.look.Fitting;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What can be asked for: its name, its value, and what it does. The word for each is the last level of its topic, and the key of its value
 * where a message is an object. Help, completion and reference are generated from this table.
 */
public enum Ask {
    /** How bright the strip is: a share of the light that looks ask for. */
    BRIGHTNESS(new About(
            WantedLevel.WANTED,
            "how bright the strip is: 0.4, 40%, on, off or auto",
            "Strip brightness, as a share of full light; `auto` goes back to `[desk] brightness`. A fault never drops below 0.25;"
                    + " white lights are not affected.",
            "40%")) {
        @Override
        Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
            WantedLevel level = request.needLevel(word(), wanted());
            Manner manner = request.manner(Optional.empty(), circumstances.now());
            Aim aim = Aim.of(this);
            if (level.isAuto()) {
                return new Outcome(before.without(aim, manner), Spoken.automatic("brightness"));
            }
            double usual = circumstances.brightness() > 0 ? circumstances.brightness() : 1;
            double share = level.orWhenOn(before.lit().getOrDefault(aim, usual));
            return new Outcome(
                    before.with(aim, Setting.of(share), manner), "brightness " + Spoken.share(share) + manner.words());
        }
    },
    /** The level of all white lights, or of some. */
    WORK(new About(
            WantedLevel.WANTED + ", or these by the names of white lights",
            "the same for the white lights; --dimmer names one",
            "The level of the white lights, of all of them or of some by name, as in `{\"work\": {\"work\": \"on\", \"side\": 0.2}}`; `auto`"
                    + " leaves it to the look.",
            "on")) {
        @Override
        Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
            return new WhiteLights(circumstances.fitting()).done(this, request, circumstances, before);
        }
    },
    /** A look, for a time. */
    LOOK(new About(
            "the name of a look, or \"auto\"",
            "a look for a minute or --for seconds; or auto",
            "Shows a look for a time, unless there is a fault; `auto` returns to the cues.",
            "done")) {
        @Override
        Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
            String name = request.needWord(word(), wanted());
            Manner manner = request.manner(A_MINUTE, circumstances.now());
            if (name.equals(Spoken.AUTO)) {
                return new Outcome(before.without(Aim.of(this), manner), Spoken.automatic("look"));
            }
            if (!circumstances.looks().has(name)) {
                throw new RefusedException(
                        Reason.UNKNOWN_LOOK,
                        Request.shown(name),
                        circumstances.looks().choice());
            }
            String later = circumstances.alarms().isOn() ? ", once the fault is seen and over" : "";
            return new Outcome(
                    before.with(Aim.of(this), Setting.of(name), manner), "look " + name + manner.words() + later);
        }
    },
    /** Single pixels and zones in their own colours, for a time. */
    PIXELS(new About(
                    "colours by zone or by pixel, for instance {\"pixels\": {\"bed\": \"green\", \"3\": \"red\", \"5-9\": \"navy\"}}",
                    "zones and pixels in colours, as long as a look; or auto",
                    "Lights zones, pixels and runs of pixels in CSS colours for a time, all of one message in one frame, unless there"
                            + " is a fault. Those that a message does not name stay as they are. `off` is dark; `auto` for a place ends"
                            + " what was asked for within it, and `auto` alone gives all back to the look.",
                    "bed=green 3=red")
            .message("{\"pixels\": {\"bed\": \"green\", \"3\": \"red\"}}")) {
        @Override
        Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
            return new PixelsAsk(this, circumstances).done(request, before);
        }
    },
    /** Confirms that somebody has seen the fault. */
    ACKNOWLEDGE(new About(
            "",
            "acknowledge the fault; of one printer by its name",
            "Acknowledges the fault: a person has seen it, so its look calms down. If several printers have a fault, give the name of one:"
                    + " `alder`, or `{\"acknowledge\": \"alder\"}`.",
            "")) {
        @Override
        Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
            String printer = circumstances.alarms().toAcknowledge(request.word(word()));
            return new Outcome(before.acknowledged(printer), "fault" + ofPrinter(printer) + " acknowledged");
        }

        @Override
        boolean isLogged() {
            return true;
        }
    },
    /** Clears an acknowledged fault that is over. */
    RESET(new About(
            "",
            "clear an acknowledged fault that is over",
            "Clears an acknowledged fault that is over, if `[alarm]` keeps it until it is reset. Name a printer as with"
                    + " `acknowledge`.",
            "")) {
        @Override
        Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
            String printer = circumstances.alarms().toReset(request.word(word()));
            return new Outcome(before.reset(printer), "fault" + ofPrinter(printer) + " reset");
        }

        @Override
        boolean isLogged() {
            return true;
        }
    },
    /** Quiet hours: start now, or not at all. */
    QUIET(new About(
            "\"on\", \"off\" or \"auto\"",
            "or off, or auto for the schedule",
            "Dims all light as in quiet hours, or does not; `auto` follows the hours in `[quiet]`. A fault is not dimmed.",
            "on")) {
        @Override
        Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
            String word = request.needWord(word(), wanted());
            Manner manner = request.manner(Optional.empty(), circumstances.now());
            if (word.equals(Spoken.AUTO)) {
                String hours = circumstances.hasQuietHours() ? "" : ", and [quiet] sets no hours";
                return new Outcome(before.without(Aim.of(this), manner), "quiet auto" + hours);
            }
            if (!word.equals(Spoken.ON) && !word.equals(Spoken.OFF)) {
                throw notValid(word);
            }
            return new Outcome(before.with(Aim.of(this), Setting.of(word), manner), "quiet " + word + manner.words());
        }
    },
    /** Strip, zones and white lights together. */
    LIGHTS(new About(
                    "\"off\", \"on\", \"auto\", or an object with any of brightness, work, look, pixels and quiet",
                    "all off, on or auto; or several at once, in one frame",
                    "Sets strip, zones and white lights together, in one frame: the keys of the object are the asks of these names, with"
                            + " the values that those take. If one of them is wrong, nothing is done. `off` turns strip and white lights off,"
                            + " `on` turns them on again, and `auto` gives back everything that was asked for.",
                    "brightness=40% work=on pixels.bed=green")
            .message("{\"lights\": {\"brightness\": \"40 %\", \"work\": \"on\", \"pixels\": {\"bed\": \"green\"}}}")) {
        @Override
        Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
            return new LightsAsk(this, request, circumstances).done(before);
        }
    };

    /** How long a look or pixels stay if no time is given. */
    static final Optional<Duration> A_MINUTE = Optional.of(Duration.ofMinutes(1));

    private final String value;
    private final String help;
    private final String text;
    private final String tell;
    private final String message;

    Ask(About about) {
        value = about.value();
        help = about.help();
        text = about.text();
        tell = about.tell();
        message = about.message();
    }

    /** A key that can accompany the value. */
    enum Key {
        /** Which white light. */
        DIMMER("dimmer", "the name of one white light; without it, all of them"),
        /** How long, a minute if it is left out. */
        FOR_A_MINUTE(Request.FOR, "how many seconds it stays, up to a week; 60 without it"),
        /** How long; until changed if left out. */
        FOR(Request.FOR, "how many seconds it stays, up to a week; without it, until it is changed"),
        /** How long; each ask's own default if left out. */
        FOR_EACH(Request.FOR, "how many seconds all of it stays, up to a week; without it, each for its usual time"),
        /** The end. */
        UNTIL(Request.UNTIL, "`\"changed\"` instead of `for_s`: it stays until something else is asked for"),
        /** How long the change takes. */
        FADE(Request.FADE, "how many seconds the light takes to change, 0 to 600; 0 is one frame");

        private final String key;
        private final String help;

        Key(String key, String help) {
            this.key = key;
            this.help = help;
        }

        /** The key as written in a message. */
        String key() {
            return key;
        }

        /** Its value. */
        String help() {
            return help;
        }
    }

    /**
     * How an ask is described.
     *
     * @param value what its value must be, as worded in a refusal; empty if it takes none
     * @param help a line of 50 characters or so
     * @param text a sentence or two, in Markdown
     * @param tell example of its value on a command line
     * @param message example of a message that says the same
     */
    record About(String value, String help, String text, String tell, String message) {
        About(String value, String help, String text, String example) {
            this(value, help, text, example, example);
        }

        About message(String other) {
            return new About(value, help, text, tell, other);
        }
    }

    /**
     * What an ask is checked against.
     *
     * @param fitting what is fitted
     * @param looks the available looks
     * @param alarms the state of each printer's alarm
     * @param hasQuietHours whether quiet hours are configured
     * @param brightness the brightness of the configuration, 0 to 1
     * @param now the current time
     */
    record Circumstances(
            Fitting fitting, KnownLooks looks, Alarms alarms, boolean hasQuietHours, double brightness, Now now) {}

    /**
     * The outcome of an ask.
     *
     * @param standing all asks in effect from now on
     * @param text a line that says so
     */
    record Outcome(StandingWishes standing, String text) {}

    /**
     * Carries it out, or refuses it and changes nothing.
     *
     * @param request what was asked
     * @param circumstances what is fitted and the current situation
     * @param before the asks in effect so far
     * @return the asks in effect from now on, and a line that says so
     * @throws RefusedException if it cannot be done
     */
    abstract Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException;

    /** Whether the log records that it was done. */
    boolean isLogged() {
        return false;
    }

    /** Its description. */
    About about() {
        return new About(value, help, text, tell, message);
    }

    /** The keys that may accompany its value. */
    List<Key> keys() {
        return switch (this) {
            case BRIGHTNESS, QUIET -> List.of(Key.FOR, Key.UNTIL, Key.FADE);
            case WORK -> List.of(Key.DIMMER, Key.FOR, Key.UNTIL, Key.FADE);
            case LOOK, PIXELS -> List.of(Key.FOR_A_MINUTE, Key.UNTIL, Key.FADE);
            case LIGHTS -> List.of(Key.FOR_EACH, Key.UNTIL, Key.FADE);
            case ACKNOWLEDGE, RESET -> List.of();
        };
    }

    static String ofPrinter(String printer) {
        return printer.isEmpty() ? "" : " of " + printer;
    }

    /** The valid values, for a refusal. */
    String wanted() {
        return "give " + value;
    }

    RefusedException missing() {
        return new RefusedException(Reason.MISSING, word(), wanted());
    }

    RefusedException notValid(String given) {
        return new RefusedException(Reason.NOT_VALID, word(), '"' + Request.shown(given) + '"', wanted());
    }

    /**
     * The word for this.
     *
     * @return for example {@code brightness}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * An example of this ask on a command line.
     *
     * @return for example {@code brightness 0.4}
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

    /**
     * The asks that set something until its end, or until it is returned to automatic.
     *
     * @return in their order
     */
    public static List<Ask> thatStay() {
        return List.of(BRIGHTNESS, WORK, LOOK, PIXELS, QUIET);
    }

    /** The ask for a word; empty if there is none. */
    static Optional<Ask> of(String word) {
        return Arrays.stream(values()).filter(ask -> ask.word().equals(word)).findFirst();
    }
}
