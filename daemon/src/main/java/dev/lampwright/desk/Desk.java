package dev.lampwright.desk;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.cue.Wishes;
import dev.lampwright.desk.Ask.Circumstances;
import dev.lampwright.desk.Ask.Outcome;
import dev.lampwright.look.Fitting;
import dev.lampwright.upkeep.Printable;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.TimeUnit;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Handles what people ask for. An ask is carried out or refused as a whole, and applies until something else is asked for, its time is up,
 * or the daemon ends; another run can take up what is {@link #kept}. Safe for many threads.
 */
public final class Desk {
    private static final Logger LOG = LoggerFactory.getLogger(Desk.class);

    /** Text written by others is reported on one line, no longer than this. */
    private static final int LONGEST_LINE = 300;

    private static final int MOST_DROPPED_TOLD = 8;

    /** Setting the wall clock moves the ends that depend on it; a smaller step goes unnoticed. */
    private static final long CLOCK_STEP_NANOS = TimeUnit.SECONDS.toNanos(1);

    private final Clocks clocks;
    private final Supplier<List<Alarm>> alarms;
    private final Consumer<Wishes> slot;
    private final BiConsumer<Asker, String> acknowledged;
    private DeskSettings settings;
    private Fitting fitting;
    private KnownLooks looks;
    private StandingWishes standing = StandingWishes.NONE;
    private Wishes wishes = Wishes.NONE;
    private OptionalLong firstEndNanos = OptionalLong.empty();
    private float night = 1;
    private Map<Aim, Held> told = Map.of();
    private Duration wallAhead;
    private long changes;

    /**
     * Creates a desk without any asks, and puts that into the slot.
     *
     * @param settings what the configuration says about asking
     * @param fitting what is fitted
     * @param looks the available looks
     * @param clocks the current time
     * @param alarm the current state of the alarm
     * @param slot receives the wishes whenever they change
     */
    public Desk(
            DeskSettings settings,
            Fitting fitting,
            KnownLooks looks,
            Clocks clocks,
            Supplier<Alarm> alarm,
            Consumer<Wishes> slot) {
        this(settings, fitting, looks, clocks, () -> List.of(alarm.get()), slot, (asker, printer) -> {});
    }

    /**
     * Creates a desk without any asks, and puts that into the slot.
     *
     * @param settings what the configuration says about asking
     * @param fitting what is fitted
     * @param looks the available looks
     * @param clocks the current time
     * @param alarms the state of each printer's alarm now
     * @param slot receives the wishes whenever they change
     * @param acknowledged receives who has acknowledged a fault, and the printer's name; must not block
     */
    public Desk(
            DeskSettings settings,
            Fitting fitting,
            KnownLooks looks,
            Clocks clocks,
            Supplier<List<Alarm>> alarms,
            Consumer<Wishes> slot,
            BiConsumer<Asker, String> acknowledged) {
        this.acknowledged = acknowledged;
        this.clocks = clocks;
        this.alarms = alarms;
        this.slot = slot;
        this.settings = settings;
        this.fitting = fitting;
        this.looks = looks;
        wallAhead = wallAhead(clocks.now());
        publish();
    }

    /**
     * The state of a printer's alarm.
     *
     * @param printer its name; empty if it has none
     * @param state by ISA-18.1
     * @param faultLasts whether the printer still has its fault
     */
    public record Alarm(String printer, AlarmState state, boolean faultLasts) {
        /**
         * That of a printer that has no name.
         *
         * @param state by ISA-18.1
         * @param faultLasts whether the printer still has its fault
         */
        public Alarm(AlarmState state, boolean faultLasts) {
            this("", state, faultLasts);
        }

        /** No fault. */
        public static final Alarm NONE = new Alarm(AlarmState.NORMAL, false);
    }

    /**
     * The current time.
     *
     * @param nanos the daemon's monotonic clock, in ns, by which wishes end
     * @param wall the wall clock, for quiet hours
     */
    public record Clocks(LongSupplier nanos, InstantSource wall) {
        Now now() {
            return new Now(nanos.getAsLong(), wall.instant());
        }
    }

    /**
     * Handles an ask.
     *
     * @param word what: one of {@link Ask#words}
     * @param payload a bare value or a JSON object
     * @return the result
     */
    public Answer ask(String word, String payload) {
        return ask(word, payload, Asker.UNKNOWN);
    }

    /**
     * Handles an ask.
     *
     * @param word what: one of {@link Ask#words}
     * @param payload a bare value or a JSON object
     * @param asker who asks
     * @return the result
     */
    public synchronized Answer ask(String word, String payload, Asker asker) {
        Optional<Ask> ask = Ask.of(word);
        if (ask.isEmpty()) {
            Reason.Given why = Reason.UNKNOWN_ASK.with(Request.shown(word), String.join(", ", Ask.words()));
            return refused(Printable.beginning(word, LONGEST_LINE), why, Optional.empty());
        }
        if (payload.length() > Request.MOST_CHARS) {
            return refused(word, Reason.TOO_LONG.with(Request.MOST_CHARS), Optional.empty());
        }
        return take(ask.get(), new Request(payload, ask.get().word()), asker);
    }

    private Answer take(Ask ask, Request request, Asker asker) {
        try {
            Outcome outcome = ask.done(request, circumstances(), standing);
            request.requireNothingLeft();
            Optional<String> printer = outcome.standing().seen().acknowledgedSince(standing.seen());
            standing = outcome.standing();
            publish();
            printer.ifPresent(name -> acknowledged.accept(asker.calling(request.by()), name));
            if (ask.isLogged()) {
                LOG.info("{}", outcome.text());
            }
            return new Answer(ask.word(), true, outcome.text(), Optional.empty(), request.id());
        } catch (RefusedException e) {
            return refused(ask.word(), e.reason(), request.id());
        }
    }

    private static Answer refused(String word, Reason.Given why, Optional<String> id) {
        return new Answer(word, false, Printable.beginning(why.text(), LONGEST_LINE), Optional.of(why), id);
    }

    private Circumstances circumstances() {
        boolean hours = settings.quietHours().isPresent();
        return new Circumstances(fitting, looks, new Alarms(alarms.get()), hours, settings.brightness(), clocks.now());
    }

    /** Checks whether something ends, and whether quiet hours start or end. Call about once a second. */
    public synchronized void look() {
        Now now = clocks.now();
        if (nightLight(now) != night || hasMoved(standing.firstEndNanos(now), now)) {
            publish();
        }
        if (wallAhead(now).minus(wallAhead).abs().toNanos() > CLOCK_STEP_NANOS) {
            count(now);
        }
    }

    private static Duration wallAhead(Now now) {
        return Duration.between(Instant.EPOCH, now.wall()).minusNanos(now.nanos());
    }

    /** Records that what is to be kept has changed. */
    private void count(Now now) {
        wallAhead = wallAhead(now);
        changes++;
    }

    /** Whether the first end has come, or has moved because a clock was set. */
    private boolean hasMoved(OptionalLong leftNanos, Now now) {
        if (leftNanos.isEmpty()) {
            return false;
        }
        long left = leftNanos.getAsLong();
        long known = firstEndNanos.orElse(now.nanos()) - now.nanos();
        return left <= 0 || Math.abs(left - known) > CLOCK_STEP_NANOS;
    }

    /**
     * Switches to another configuration. An ask stays if its target still exists, and is dropped otherwise.
     *
     * @param newSettings what it says about asking; its brightness applies if it has changed
     * @param newFitting what is fitted
     * @param newLooks the available looks
     */
    public synchronized void change(DeskSettings newSettings, Fitting newFitting, KnownLooks newLooks) {
        if (newSettings.brightness() != settings.brightness()) {
            standing = standing.without(aim -> aim.ask() == Ask.BRIGHTNESS);
        }
        settings = newSettings;
        fitting = newFitting;
        looks = newLooks;
        standing = askedAgain(standing);
        publish();
    }

    /** The asks that are still possible. */
    private StandingWishes askedAgain(StandingWishes before) {
        Circumstances now = circumstances();
        StandingWishes again = before.without(aim -> true);
        List<String> dropped = new ArrayList<>();
        for (Map.Entry<Aim, Held> one : before.held().entrySet()) {
            Ask ask = one.getKey().ask();
            try {
                again = ask.done(Request.again(one.getKey(), one.getValue()), now, again)
                        .standing();
            } catch (RefusedException e) {
                dropped.add(told(one.getKey(), one.getValue()));
            }
        }
        tell(dropped);
        return new StandingWishes(again.held(), before.fades(), before.lit(), before.seen());
    }

    private static void tell(List<String> dropped) {
        if (!dropped.isEmpty()) {
            int more = Math.max(0, dropped.size() - MOST_DROPPED_TOLD);
            LOG.warn(
                    "what was asked for is dropped, since the configuration does not have it: {}{}",
                    String.join(", ", dropped.subList(0, dropped.size() - more)),
                    more == 0 ? "" : " and " + more + " more");
        }
    }

    private static String told(Aim aim, Held held) {
        String name = aim.name().isEmpty() ? "" : Request.shown(aim.name()) + " ";
        return Printable.beginning(
                aim.ask().word() + " " + name + Request.shown(held.setting().spoken()), LONGEST_LINE);
    }

    /**
     * The wishes now in effect.
     *
     * @return the newest wishes
     */
    public synchronized Wishes wishes() {
        return wishes;
    }

    /**
     * Whether light is dimmed for quiet hours.
     *
     * @return true during quiet hours, or on request
     */
    public synchronized boolean quiet() {
        return wishes.quiet() != 1;
    }

    /**
     * The asks in effect, and until when.
     *
     * @return as of now
     */
    public synchronized AskedFor asked() {
        Now now = clocks.now();
        return AskedFor.of(standing.withoutEnded(now), now);
    }

    /**
     * Takes up the asks of an earlier run, as far as they are still in effect and possible. Others are dropped, and logged with one line
     * each.
     *
     * @param text as returned by {@link #kept}
     * @throws IllegalArgumentException if it is anything else; nothing has changed then. The message says why and is meant to follow the
     *     name of the file
     */
    public synchronized void restore(String text) {
        Now now = clocks.now();
        standing = askedAgain(KeptAsks.read(text).withoutEnded(now));
        publish();
        count(now);
    }

    /**
     * The asks in effect, for a later run.
     *
     * @return one line
     */
    public synchronized String kept() {
        return KeptAsks.text(standing, clocks.now());
    }

    /**
     * How often the result of {@link #kept} has changed.
     *
     * @return a count; unchanged if nothing needs to be kept again
     */
    public synchronized long changes() {
        return changes;
    }

    /** Publishes the wishes that light follows, and what is left of them from the frame in which the first of them ends. */
    private void publish() {
        Now now = clocks.now();
        standing = standing.withoutEnded(now);
        night = nightLight(now);
        Composer composer = new Composer(fitting, settings);
        wishes = composer.wishes(standing, night, now);
        firstEndNanos = OptionalLong.empty();
        standing.firstEndNanos(now).ifPresent(left -> {
            Now then = new Now(now.nanos() + left, now.wall().plusNanos(left));
            firstEndNanos = OptionalLong.of(then.nanos());
            wishes = wishes.until(then.nanos(), composer.wishes(standing.withoutEnded(then), night, then));
        });
        slot.accept(wishes);
        if (!standing.held().equals(told)) {
            told = standing.held();
            count(now);
        }
    }

    private float nightLight(Now now) {
        boolean isNight =
                settings.quietHours().map(hours -> hours.at(now.wall())).orElse(false);
        return isNight ? settings.quietLight() : 1;
    }
}
