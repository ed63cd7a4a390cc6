package dev.lampwright.engine;

import dev.lampwright.broker.BrokerState;
import dev.lampwright.broker.Brokers;
import dev.lampwright.broker.Contact;
import dev.lampwright.broker.OwnTopics;
import dev.lampwright.config.AtEnd;
import dev.lampwright.config.Config;
import dev.lampwright.config.PrinterLight;
import dev.lampwright.config.Swatches;
import dev.lampwright.cue.AlarmState;
import dev.lampwright.cue.Wishes;
import dev.lampwright.desk.AskedFor;
import dev.lampwright.desk.Desk;
import dev.lampwright.desk.KnownLooks;
import dev.lampwright.desk.Namesake;
import dev.lampwright.desk.Report;
import dev.lampwright.desk.Signature;
import dev.lampwright.history.Accounts;
import dev.lampwright.history.Glance;
import dev.lampwright.history.HistoryClock;
import dev.lampwright.history.HistoryKeeper;
import dev.lampwright.history.Sighting;
import dev.lampwright.link.ControllerLink;
import dev.lampwright.link.FrameSlot;
import dev.lampwright.link.Line;
import dev.lampwright.link.LinkStatus;
import dev.lampwright.payload.OwnQuantity;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.Bindings;
import dev.lampwright.printer.PrinterClient;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Silence;
import dev.lampwright.printer.Statuses;
import dev.lampwright.protocol.LastReset;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import dev.lampwright.signal.Signal;
import dev.lampwright.upkeep.ProcessAge;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The whole daemon, built from a configuration: threads that exchange data through three slots. The newest status goes from the printer's
 * side to the frame loop, the newest wishes go there from the desk, and the newest frame goes from there to the link. Everything that
 * belongs to one configuration is one value, {@link Running}, which is built completely and then replaces the previous one.
 */
public final class Daemon implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Daemon.class);
    private static final Duration FADE = Duration.ofMillis(300);
    private static final Duration LONGEST_FADE = Duration.ofMillis(400);
    private static final long LONGEST_FAREWELL_MS = 300;
    private static final Duration QUIET_AT_START = Duration.ofSeconds(1);
    private static final LongSupplier CLOCK = System::nanoTime;

    private final AtomicReference<Statuses> statuses = new AtomicReference<>(Statuses.NOTHING_HEARD);
    private final AtomicReference<Wishes> wishes = new AtomicReference<>(Wishes.NONE);
    private final Function<Config, Line> lines;
    private final Brokers brokers;
    private final FrameLoop frames;
    private final Desk desk;
    private final Reporter reporter;
    private final Optional<AskKeeper> keeper;
    private final HistoryKeeper history;
    private final boolean keepHistory;
    private final Pace pace = new Pace();
    private final Map<String, FaultText> faultTexts = new ConcurrentHashMap<>();
    private final String version = Release.version();
    private final Signature signature;
    private final Namesake namesake;
    private final StripGlance strip = new StripGlance(this::tap);
    private final Trial trial;
    private volatile Wishes asked = Wishes.NONE;
    private volatile String page = "";
    private volatile Running running;
    /** Somebody else uses the controller: the link is closed. */
    private volatile boolean released;

    private boolean ended;
    private volatile long pulse;
    /** The desk has wishes before there is a frame loop. */
    private volatile Runnable onWishes = () -> {};

    /** Everything that runs for one configuration. Parts that are the same in the next one continue there. */
    private record Running(
            Config config, Chain chain, FrameSlot slot, FrameTap tap, ControllerLink link, PrinterClient printer) {
        Running with(ControllerLink other) {
            return new Running(config, chain, slot, tap, other, printer);
        }

        FrameLoop.Rig rig() {
            return new FrameLoop.Rig(chain, slot, tap, link::frameReady);
        }

        Optional<Silence> silence(PrinterLight of) {
            return printer.silence(of.name(), of.silentAfter());
        }

        /** Why all printers are silent; empty if one is not. */
        Optional<Silence> silence() {
            List<Optional<Silence>> all =
                    config.light().printers().stream().map(this::silence).toList();
            return all.stream().allMatch(Optional::isPresent) ? all.get(0) : Optional.empty();
        }

        Optional<PrinterLight> light(String printer) {
            return config.light().printers().stream()
                    .filter(light -> light.name().equals(printer))
                    .findFirst();
        }

        Duration silentAfter(String printer) {
            return light(printer).map(PrinterLight::silentAfter).orElseThrow();
        }
    }

    /**
     * Builds the daemon; nothing runs yet.
     *
     * @param config what to run
     * @param lines provides the line to the controller
     */
    public Daemon(Config config, Function<Config, Line> lines) {
        this(config, lines, StatusWatch.NOBODY, Optional.empty());
    }

    /**
     * Builds the daemon; nothing runs yet.
     *
     * @param config what to run
     * @param lines provides the line to the controller
     * @param watch records what frames are made from; the caller closes it
     * @param keeping where asks and history are kept beyond the daemon's end, as the configuration says; empty for nowhere
     */
    public Daemon(Config config, Function<Config, Line> lines, StatusWatch watch, Optional<Keeping> keeping) {
        this(config, lines, watch, keeping, RigPlace.ALONE);
    }

    /**
     * Builds the daemon of one of several rigs; nothing runs yet.
     *
     * @param config what to run
     * @param lines provides the line to the controller
     * @param watch records what frames are made from; the caller closes it
     * @param keeping where asks and history are kept beyond the daemon's end, as the configuration says; empty for nowhere
     * @param place its place among the rigs
     */
    public Daemon(
            Config config, Function<Config, Line> lines, StatusWatch watch, Optional<Keeping> keeping, RigPlace place) {
        this.lines = lines;
        brokers = place.brokers();
        signature = Signature.begun(config.talk().prefix());
        namesake = new Namesake(signature);
        history = new HistoryKeeper(
                keeping.map(Keeping::history),
                this::glances,
                keeping.map(Keeping::clock).orElse(HistoryClock.SYSTEM),
                place.hands());
        keepHistory = keeping.map(Keeping::keepHistory).orElse(false);
        trial = new Trial(look -> running.chain().lend(look), this::wishAnew, this::isFaultOn, CLOCK);
        desk = new Desk(
                config.desk(),
                config.fitting(),
                looks(config),
                new Desk.Clocks(CLOCK, InstantSource.system()),
                this::alarms,
                this::wish,
                (asker, printer) -> history.acknowledged(printer, asker.way(), asker.from(), asker.by()));
        running = first(config);
        frames = new FrameLoop(
                running.rig(),
                statuses::get,
                wishes::get,
                CLOCK,
                config.framesPerSecond(),
                watch,
                lightFrom(place.phase()),
                place.phase());
        onWishes = frames::tellNews;
        reporter = new Reporter(desk, this::inWords, this::report, this::tell, CLOCK, place.hands());
        keeper = keeping.map(where -> new AskKeeper(where.asks(), desk));
        if (config.desk().keep()) {
            keeper.ifPresent(AskKeeper::restore);
        }
        warn(running);
    }

    /**
     * Another daemon may have lit the controller until this process began, and nobody knows how that light flickered. So this one sends its
     * first frame a second after the process started, or at once if that is past; a service that restarts every second does not flash. One
     * of several rigs may follow another daemon of the same process.
     */
    private static long lightFrom(Phase phase) {
        Duration age = phase.equals(Phase.AT_ONCE) ? ProcessAge.now() : Duration.ZERO;
        return lightFrom(age, CLOCK.getAsLong());
    }

    /**
     * When the first frame may be sent.
     *
     * @param age how old the process is
     * @param now ns of the clock
     * @return ns of the clock, from now to a second later
     */
    static long lightFrom(Duration age, long now) {
        long left = QUIET_AT_START.minus(age).toNanos();
        return now + Math.max(0, Math.min(QUIET_AT_START.toNanos(), left));
    }

    private static KnownLooks looks(Config config) {
        return new KnownLooks(config.looks().keySet(), Swatches.names());
    }

    /** A look that no cue uses is created here, not by the frame loop. There are no asks before something runs. */
    private void wish(Wishes asked) {
        Running now = running;
        if (now != null) {
            now.chain().prepare(asked);
        }
        this.asked = asked;
        wishAnew();
    }

    private void wishAnew() {
        synchronized (trial) {
            wishes.set(trial.over(asked));
        }
        onWishes.run();
    }

    private boolean isFaultOn() {
        return alarms().stream().anyMatch(alarm -> alarm.state() != AlarmState.NORMAL);
    }

    /**
     * Which cues hold now, in any view.
     *
     * @return whether it does, for each of the running configuration's
     */
    public List<Boolean> cuesHolding() {
        return running.chain().held();
    }

    /**
     * Where looks can be tried that are in no configuration.
     *
     * @return the same each time
     */
    public Trial trial() {
        return trial;
    }

    private List<Desk.Alarm> alarms() {
        return frames.outline().printers().stream()
                .map(printer -> new Desk.Alarm(printer.name(), printer.alarm(), printer.faultLasts()))
                .toList();
    }

    private Running first(Config config) {
        FrameSlot slot = slotFor(config.setup());
        return new Running(config, Chain.of(config), slot, new FrameTap(config), link(config, slot), printer(config));
    }

    /** Builds everything for another configuration. Nothing that runs is touched, so a failure here changes nothing. */
    private Running after(Running before, Config next) {
        boolean sameController = next.controller().equals(before.config().controller());
        boolean sameTalk = next.talk().equals(before.config().talk());
        FrameSlot slot = sameController ? before.slot() : slotFor(next.setup());
        return new Running(
                next,
                Chain.after(before.chain(), next),
                slot,
                new FrameTap(next),
                sameController ? before.link() : link(next, slot),
                sameTalk ? before.printer() : printer(next));
    }

    /** Starts all threads. */
    public synchronized void start() {
        running.link().start();
        frames.start();
        running.printer().start();
        reporter.start();
        keeper.ifPresent(one -> one.follow(running.config().desk().keep()));
        history.follow(keepsHistory(running.config()));
        history.start();
    }

    private boolean keepsHistory(Config config) {
        return config.keepHistory().orElse(keepHistory);
    }

    /**
     * Switches to another configuration. Looks fade in; the daemon reconnects to the broker and sets up the controller again only if
     * something about them has changed. The frame rate stays as it was at the start. If the other configuration cannot be built, nothing
     * has changed.
     *
     * @param next what to run from now on
     */
    public synchronized void change(Config next) {
        Running before = running;
        Running following = after(before, next);
        int rate = before.chain().framesPerSecond();
        if (next.framesPerSecond() != rate) {
            LOG.warn("frames_per_s stays at {} until lampwright is restarted", rate);
        }
        warn(following);
        if (following.link() != before.link() && !released) {
            before.link().close();
            following.link().start();
        }
        desk.change(next.desk(), next.fitting(), looks(next));
        keeper.ifPresent(one -> one.follow(next.desk().keep()));
        history.follow(keepsHistory(next));
        trial.configurationChanges();
        running = following;
        following.chain().prepare(asked);
        wishAnew();
        frames.change(following.rig());
        if (following.printer() != before.printer()) {
            before.printer().close();
            if (next.broker().equals(before.config().broker())) {
                following.printer().goOnFrom(before.printer());
            }
            following.printer().start();
        }
    }

    /**
     * How many frames have been made, which shows whether the daemon is alive. The count also stops when the thread that receives from the
     * printer, or the one that feeds the controller, has ended.
     *
     * @return a count since the start
     */
    public long pulse() {
        Running now = running;
        if ((now.link().isAlive() || released) && now.printer().isAlive()) {
            pulse = frames.outline().frames();
        }
        return pulse;
    }

    /** Checks what no message shows: topics on which a printer is silent, and another daemon that has gone. Call about once a second. */
    public void lookAround() {
        Running now = running;
        now.printer().lookAround(now::silentAfter);
        namesake.lookAround(CLOCK.getAsLong());
        trial.lookAround();
    }

    /** Makes the controller dark and leaves its port to somebody else, until {@link #resumeController}. Everything else carries on. */
    public synchronized void releaseController() {
        if (!released && !ended) {
            released = true;
            running.link().close(WhenSilent.DARK);
        }
    }

    /** Takes the controller back, as the current configuration describes it. */
    public synchronized void resumeController() {
        if (!released || ended) {
            return;
        }
        Running now = running.with(link(running.config(), running.slot()));
        running = now;
        now.link().start();
        frames.change(now.rig());
        released = false;
    }

    /**
     * Shuts down cleanly within a second: disconnects from the broker while the light fades out, then from the controller. A broker that
     * does not answer delays nothing.
     */
    @Override
    public synchronized void close() {
        Running last = running;
        ended = true;
        reporter.close();
        strip.close();
        keeper.ifPresent(AskKeeper::end);
        history.end();
        Thread farewell = new Thread(last.printer()::close, "farewell");
        farewell.setDaemon(true);
        farewell.start();
        boolean fades = last.config().atEnd() == AtEnd.FADE;
        if (fades) {
            frames.fadeOut(FADE, LONGEST_FADE);
        }
        frames.close();
        last.link().close(fades ? WhenSilent.DARK : last.config().setup().whenSilent());
        await(farewell);
        keeper.ifPresent(AskKeeper::close);
        history.close();
    }

    private static void await(Thread farewell) {
        try {
            farewell.join(LONGEST_FAREWELL_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /**
     * The desk, which handles asks.
     *
     * @return the same each time
     */
    public Desk desk() {
        return desk;
    }

    /**
     * The daemon's status.
     *
     * @return a snapshot
     */
    public Report report() {
        FrameReport frame = frames.snapshot();
        return report(frame, pace(frame.frames()), signals(frame), units(), desk.asked());
    }

    /**
     * As much of the {@link #report} as somebody who looks at many rigs needs, for a fraction of its cost.
     *
     * @return a snapshot without pace, units and what was asked for, and with no signals but those that tell how far the printers are
     */
    public Report outline() {
        FrameReport frame = frames.outline();
        return report(frame, Double.NaN, frame.signals(), Map.of(), AskedFor.NOTHING);
    }

    /** The {@link #report} without its numbers: enough to find out whether it differs in word. */
    private Report inWords() {
        return report(frames.outline(), Double.NaN, Map.of(), Map.of(), desk.asked());
    }

    private Report report(
            FrameReport frame, double pace, Map<String, Double> signals, Map<String, String> units, AskedFor asked) {
        Running now = running;
        LinkStatus link = now.link().status();
        Statuses read = statuses.get();
        List<Report.Printer> printers = frame.printers().stream()
                .map(printer -> printer(printer, now, read.of(printer.name())))
                .toList();
        return new Report(
                version,
                printers,
                new Report.Light(frame.look(), desk.wishes().brightness(), desk.quiet(), frame.current()),
                new Report.Lines(
                        word(link.state()),
                        link.lastReset().map(LastReset::word).orElse(""),
                        word(now.printer().brokerState().phase())),
                pace,
                signals,
                units,
                asked);
    }

    private Report.Printer printer(FrameReport.Printer shown, Running now, PrinterStatus read) {
        String silence =
                now.light(shown.name()).flatMap(now::silence).map(Daemon::word).orElse("");
        String fault = faultTexts
                .computeIfAbsent(shown.name(), any -> new FaultText())
                .during(shown.alarm(), read.faultText());
        return new Report.Printer(
                shown.name(),
                shown.state(),
                silence,
                shown.alarm(),
                fault,
                shown.look(),
                read.value(Quantity.JOB_PROGRESS));
    }

    /** As light follows them, except that a reading is reported as it was read, not as it glides from one value to the next. */
    private Map<String, Double> signals(FrameReport frame) {
        Map<String, Double> signals = new LinkedHashMap<>(frame.signals());
        Config config = running.config();
        config.talk().printers().forEach((printer, bindings) -> {
            PrinterStatus read = statuses.get().of(printer);
            for (Signal signal : Signal.all()) {
                signal.quantity()
                        .ifPresent(quantity -> signals.put(named(printer, signal.key()), read.value(quantity)));
            }
            bindings.own()
                    .keySet()
                    .forEach(own -> signals.put(
                            named(printer, own.key()), read.own(own.key()).value()));
        });
        return signals;
    }

    private static String named(String printer, String key) {
        return printer.isEmpty() ? key : printer + '.' + key;
    }

    /**
     * The newest values of a printer's user-defined readings.
     *
     * @param printer its name
     * @return in the order of the configuration; NaN for unknown
     */
    public Map<OwnQuantity, Double> ownReadings(String printer) {
        PrinterStatus read = statuses.get().of(printer);
        Map<OwnQuantity, Double> values = new LinkedHashMap<>();
        Bindings bindings = running.config().talk().printers().get(printer);
        if (bindings != null) {
            bindings.own()
                    .keySet()
                    .forEach(own -> values.put(own, read.own(own.key()).value()));
        }
        return values;
    }

    /** The units of signals without one in their name. */
    private Map<String, String> units() {
        Map<String, String> units = new LinkedHashMap<>();
        running.config()
                .talk()
                .printers()
                .forEach((printer, bindings) -> bindings.own().keySet().stream()
                        .filter(own -> own.like().isEmpty())
                        .forEach(own -> units.put(named(printer, own.key()), own.unit())));
        return units;
    }

    private double pace(long made) {
        synchronized (pace) {
            return pace.at(made, CLOCK.getAsLong());
        }
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /**
     * What is known about the printers.
     *
     * @return the newest of each
     */
    public Statuses statuses() {
        return statuses.get();
    }

    /**
     * The names of the printers.
     *
     * @return in the order of the configuration; an empty one for a single printer without a name
     */
    public List<String> printers() {
        return running.config().light().printers().stream()
                .map(PrinterLight::name)
                .toList();
    }

    /**
     * What has happened: jobs, faults, states and curves.
     *
     * @return as of now
     */
    public Accounts history() {
        return history.accounts();
    }

    private Map<String, Glance> glances() {
        Running now = running;
        FrameReport frame = frames.outline();
        Map<String, Glance> glances = new LinkedHashMap<>();
        for (PrinterLight printer : now.config().light().printers()) {
            PrinterStatus read = statuses.get().of(printer.name());
            boolean alarm = frame.printers().stream()
                    .anyMatch(shown -> shown.name().equals(printer.name()) && shown.alarm() != AlarmState.NORMAL);
            glances.put(
                    printer.name(),
                    new Glance(
                            now.silence(printer).isPresent(),
                            read.faultText().orElse(""),
                            read.value(Quantity.JOB_PROGRESS),
                            read.value(Quantity.BED_ACTUAL),
                            read.value(Quantity.NOZZLE_ACTUAL),
                            frame.current().milliamps(),
                            alarm));
        }
        return glances;
    }

    /**
     * Whether and why the printer is silent.
     *
     * @return empty if it is not
     */
    public Optional<Silence> silence() {
        return running.silence();
    }

    /**
     * The state of the connection to the broker.
     *
     * @return the newest
     */
    public BrokerState broker() {
        return running.printer().brokerState();
    }

    /**
     * The frame loop, for example to ask for its figures.
     *
     * @return the same each time
     */
    public FrameLoop frames() {
        return frames;
    }

    /**
     * The tap from which outgoing frames can be read.
     *
     * @return the one of the active configuration; a new one after each {@link #change}
     */
    public FrameTap tap() {
        return running.tap();
    }

    /**
     * The state of the link to the controller.
     *
     * @return a snapshot
     */
    public LinkStatus link() {
        return running.link().status();
    }

    /**
     * How many messages have come from the broker.
     *
     * @return a count since the start, or since the broker was last changed
     */
    public long messages() {
        return running.printer().messages();
    }

    private static void warn(Running running) {
        if (running.config().light().guard().allowFlashing()) {
            LOG.warn("guard.allow_flashing_that_can_cause_seizures switches the flash limit off: light can flash"
                    + " without a limit, which can cause seizures in people with photosensitive epilepsy");
        }
        int over = running.chain().guard().darkOverMilliamps();
        if (over > 0) {
            LOG.warn(
                    "the dark strip alone is {} mA over the ceiling, so all lights on its supply stay dark;"
                            + " raise supply.ceiling_mA if supply and wiring are built for it, or fit fewer pixels",
                    over);
        }
    }

    /**
     * The identity that the daemon's report carries.
     *
     * @return as of now
     */
    public Signature signature() {
        return signature(running.config());
    }

    private Signature signature(Config from) {
        return signature.under(from.talk().prefix());
    }

    private void tell(Report report) {
        Running now = running;
        strip.look();
        Report.Sight sight = new Report.Sight(Instant.now(), page, strip.hex());
        now.printer().tell(report.json(signature(), sight));
    }

    /**
     * Sets where the live page is, for the daemon's own report.
     *
     * @param url its address for other machines; empty if there is none
     */
    public void pageAt(String url) {
        page = url;
    }

    private ControllerLink link(Config from, FrameSlot slot) {
        return new ControllerLink(lines.apply(from), from.setup(), slot, CLOCK);
    }

    private PrinterClient printer(Config from) {
        Contact contact = new Contact(
                new OwnTopics(from.talk().prefix()),
                Report.gone(version, "lost", signature(from)),
                Report.gone(version, "stopped", signature(from)),
                new Mailbox(desk, namesake, CLOCK));
        return new PrinterClient(from.broker(), from.talk().printers(), CLOCK, this::heard, contact, brokers);
    }

    /** A fault does not wait for the next frame. */
    private void heard(String printer, PrinterStatus next) {
        PrinterStatus before =
                statuses.getAndUpdate(all -> all.with(printer, next)).of(printer);
        if (next.state() != before.state()) {
            history.saw(
                    printer,
                    new Sighting(next.state(), next.faultText().orElse(""), next.value(Quantity.JOB_PROGRESS)));
        }
        if (next.state() == PrinterState.FAULT && before.state() != PrinterState.FAULT) {
            frames.hurry();
        } else {
            frames.tellNews();
        }
    }

    private static FrameSlot slotFor(Setup setup) {
        return new FrameSlot(setup.stripBytes(), setup.dimmers().size());
    }

    /** The printer's text about its fault, kept while the alarm is on: the printer may clear it before anybody has read it. */
    static final class FaultText {
        private String last = "";

        /**
         * The text to report.
         *
         * @param alarm the state of the alarm
         * @param told what the printer reports now
         * @return the last text since the alarm came on; empty if there was none, or there is no alarm
         */
        synchronized String during(AlarmState alarm, Optional<String> told) {
            last = alarm == AlarmState.NORMAL ? "" : told.orElse(last);
            return last;
        }
    }

    /** The rate of a count. For one thread. */
    private static final class Pace {
        private static final long SHORTEST_NANOS = TimeUnit.SECONDS.toNanos(1);

        private long count;
        private long nanos;
        private boolean started;
        private double perSecond = Double.NaN;

        /**
         * Adds a count, a second or more after the one that the rate is calculated from.
         *
         * @param newCount how many there have been
         * @param nowNanos when that was
         * @return the rate, per second; NaN if not known yet
         */
        double at(long newCount, long nowNanos) {
            if (!started || nowNanos - nanos >= SHORTEST_NANOS) {
                perSecond = started ? (newCount - count) * 1e9 / (nowNanos - nanos) : Double.NaN;
                started = true;
                count = newCount;
                nanos = nowNanos;
            }
            return perSecond;
        }
    }
}
