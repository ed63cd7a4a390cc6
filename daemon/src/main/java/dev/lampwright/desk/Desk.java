package dev.lampwright.desk;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.cue.Wishes;
import dev.lampwright.desk.Ask.Circumstances;
import dev.lampwright.desk.Ask.Outcome;
import dev.lampwright.look.Fitting;
import dev.lampwright.upkeep.Printable;
import java.time.InstantSource;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Where people ask for things. What is asked for is done as a whole or refused as a whole, and holds until something else is asked
 * for, its time is up, or the daemon ends. Safe for many threads.
 */
public final class Desk {
    private static final Logger LOG = LoggerFactory.getLogger(Desk.class);

    /** What somebody else wrote is told on one line, and no longer than this. */
    private static final int LONGEST_LINE = 300;

    private final LongSupplier nanoClock;
    private final InstantSource wallClock;
    private final Supplier<AlarmState> alarm;
    private final Consumer<Wishes> slot;
    private DeskSettings settings;
    private Fitting fitting;
    private KnownLooks looks;
    private StandingWishes standing;
    private boolean quiet;

    /**
     * Makes a desk where nothing has been asked for, and says so to the slot.
     *
     * @param settings what the configuration says about asking
     * @param fitting what is fitted
     * @param looks the looks that there are
     * @param clocks what time it is
     * @param alarm where the alarm stands now
     * @param slot takes the wishes whenever they are new
     */
    public Desk(
            DeskSettings settings,
            Fitting fitting,
            KnownLooks looks,
            Clocks clocks,
            Supplier<AlarmState> alarm,
            Consumer<Wishes> slot) {
        this.nanoClock = clocks.nanos();
        this.wallClock = clocks.wall();
        this.alarm = alarm;
        this.slot = slot;
        this.settings = settings;
        this.fitting = fitting;
        this.looks = looks;
        standing = StandingWishes.none(settings.brightness());
        publish();
    }

    /**
     * What time it is.
     *
     * @param nanos the daemon's monotonic clock, in ns, by which wishes end
     * @param wall the clock on the wall, for the hours of the night
     */
    public record Clocks(LongSupplier nanos, InstantSource wall) {}

    /**
     * Takes something that is asked for.
     *
     * @param word what: one of {@link Ask#words}
     * @param payload a bare value or a JSON object
     * @return what became of it
     */
    public synchronized Answer ask(String word, String payload) {
        Optional<Ask> ask = Ask.of(word);
        if (ask.isEmpty()) {
            String why = "\"" + Request.shown(word) + "\" is not something you can ask for; choose one of: "
                    + String.join(", ", Ask.words());
            return refused(Printable.beginning(word, LONGEST_LINE), why, Optional.empty());
        }
        if (payload.length() > Request.MOST_CHARS) {
            String why = "the message is longer than " + Request.MOST_CHARS + " characters; send a shorter one";
            return refused(word, why, Optional.empty());
        }
        return take(ask.get(), new Request(payload, ask.get().word()));
    }

    private Answer take(Ask ask, Request request) {
        try {
            Outcome outcome = ask.done(request, circumstances(), standing);
            request.requireNothingLeft();
            standing = outcome.standing();
            publish();
            if (ask.isLogged()) {
                LOG.info("{}", outcome.text());
            }
            return new Answer(ask.word(), true, outcome.text(), request.id());
        } catch (RefusedException e) {
            return refused(ask.word(), e.getMessage(), request.id());
        }
    }

    private static Answer refused(String word, String why, Optional<String> id) {
        return new Answer(word, false, Printable.beginning(why, LONGEST_LINE), id);
    }

    private Circumstances circumstances() {
        boolean hours = settings.quietHours().isPresent();
        return new Circumstances(fitting, looks, alarm.get(), hours, nanoClock.getAsLong());
    }

    /** Sees whether the night begins or ends. To be called every second or so. */
    public synchronized void look() {
        if (nightLight() != standing.wishes().quiet()) {
            publish();
        }
    }

    /**
     * Goes over to another configuration. What was asked for stays; where the lights are others, levels and pixels go back to the look.
     *
     * @param newSettings what it says about asking; its brightness counts if it is another than before
     * @param newFitting what is fitted
     * @param newLooks the looks that there are
     */
    public synchronized void change(DeskSettings newSettings, Fitting newFitting, KnownLooks newLooks) {
        Wishes wishes = standing.wishes();
        if (!newFitting.equals(fitting)) {
            wishes = wishes.forOtherLights();
        }
        if (newSettings.brightness() != settings.brightness()) {
            wishes = wishes.withBrightness(newSettings.brightness());
        }
        standing = standing.with(wishes);
        settings = newSettings;
        fitting = newFitting;
        looks = newLooks;
        publish();
    }

    /**
     * What counts now of what was asked for.
     *
     * @return the newest wishes
     */
    public synchronized Wishes wishes() {
        return standing.wishes();
    }

    /**
     * Whether light is dimmed for the night.
     *
     * @return true by night, or when it was asked for
     */
    public synchronized boolean quiet() {
        return quiet;
    }

    private void publish() {
        float light = nightLight();
        quiet = light != 1;
        standing = standing.with(standing.wishes().withQuiet(light));
        slot.accept(standing.wishes());
    }

    private float nightLight() {
        boolean night = settings.quietHours()
                .map(hours -> hours.at(wallClock.instant()))
                .orElse(false);
        if (!standing.isQuiet(night, nanoClock.getAsLong())) {
            return 1;
        }
        return settings.quietHours().map(hours -> (float) hours.light()).orElse((float) QuietHours.USUAL_LIGHT);
    }
}
