package dev.lampwright.engine;

import dev.lampwright.broker.BrokerState;
import dev.lampwright.broker.Contact;
import dev.lampwright.broker.OwnTopics;
import dev.lampwright.config.AtEnd;
import dev.lampwright.config.Config;
import dev.lampwright.cue.Wishes;
import dev.lampwright.desk.Desk;
import dev.lampwright.desk.Report;
import dev.lampwright.link.ControllerLink;
import dev.lampwright.link.FrameSlot;
import dev.lampwright.link.Line;
import dev.lampwright.link.LinkStatus;
import dev.lampwright.printer.PrinterClient;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Silence;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import dev.lampwright.signal.Signal;
import java.time.Duration;
import java.time.InstantSource;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The whole daemon, put together from a configuration: three threads that meet in two slots. The newest status goes from the
 * printer's side to the frame loop, the newest frame from there to the link.
 */
public final class Daemon implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Daemon.class);
    private static final Duration FADE = Duration.ofMillis(300);
    private static final Duration LONGEST_FADE = Duration.ofMillis(400);
    private static final long LONGEST_FAREWELL_MS = 300;
    private static final LongSupplier CLOCK = System::nanoTime;

    private final AtomicReference<PrinterStatus> status = new AtomicReference<>(PrinterStatus.nothingHeard());
    private final AtomicReference<Wishes> wishes = new AtomicReference<>(Wishes.NONE);
    private final Function<Config, Line> lines;
    private final FrameLoop frames;
    private final Desk desk;
    private final Reporter reporter;
    private final Pace pace = new Pace();
    private final FaultText faultText = new FaultText();
    private final String version = Release.version();
    private volatile Config config;
    private volatile long pulse;
    private Chain chain;
    private FrameSlot slot;
    private volatile FrameTap tap;
    private volatile ControllerLink link;
    private volatile PrinterClient printer;

    /**
     * Puts the daemon together; nothing runs yet.
     *
     * @param config what to run
     * @param lines gives the line to the controller
     */
    public Daemon(Config config, Function<Config, Line> lines) {
        this(config, lines, StatusWatch.NOBODY);
    }

    /**
     * Puts the daemon together; nothing runs yet.
     *
     * @param config what to run
     * @param lines gives the line to the controller
     * @param recorder records every status that is shown; closed by whoever opened it
     */
    public Daemon(Config config, Function<Config, Line> lines, Recorder recorder) {
        this(config, lines, (StatusWatch) recorder);
    }

    private Daemon(Config config, Function<Config, Line> lines, StatusWatch watch) {
        this.config = config;
        this.lines = lines;
        chain = Chain.of(config);
        warn(config, chain);
        slot = slotFor(config.setup());
        tap = new FrameTap(config);
        link = new ControllerLink(lines.apply(config), config.setup(), slot, CLOCK);
        frames = new FrameLoop(
                new FrameLoop.Rig(chain, slot, tap, link::frameReady),
                status::get,
                wishes::get,
                CLOCK,
                config.framesPerSecond(),
                watch);
        desk = new Desk(
                config.desk(),
                config.fitting(),
                config.looks().keySet(),
                new Desk.Clocks(CLOCK, InstantSource.system()),
                frames::alarm,
                wishes::set);
        reporter = new Reporter(desk, this::report, report -> printer.tell(report.json()));
        printer = printer(config);
    }

    /** Starts all three threads. */
    public synchronized void start() {
        link.start();
        frames.start();
        printer.start();
        reporter.start();
    }

    /**
     * Goes over to another configuration. Looks fade in; the broker is left and the controller set up again only where something about
     * them is new. The rate of the frames stays as it was at the start. If the chain of the other configuration cannot be put together,
     * nothing has changed.
     *
     * @param next what to run from now on
     */
    public synchronized void change(Config next) {
        if (next.framesPerSecond() != chain.framesPerSecond()) {
            LOG.warn("frames_per_s stays at {} until lampwright is started again", chain.framesPerSecond());
        }
        Chain following = Chain.after(chain, next);
        if (!next.controller().equals(config.controller())) {
            link.close();
            slot = slotFor(next.setup());
            link = new ControllerLink(lines.apply(next), next.setup(), slot, CLOCK);
            link.start();
        }
        chain = following;
        warn(next, chain);
        desk.change(next.desk(), next.fitting(), next.looks().keySet());
        tap = new FrameTap(next);
        frames.change(new FrameLoop.Rig(chain, slot, tap, link::frameReady));
        if (!next.talk().equals(config.talk())) {
            printer.close();
            PrinterClient before = printer;
            printer = printer(next);
            if (next.broker().equals(config.broker())) {
                printer.goOnFrom(before);
            }
            printer.start();
        }
        config = next;
    }

    /**
     * A sign of life: how many frames have been made. It stands still as well once a thread is gone without which they come from
     * nothing known, or go nowhere.
     *
     * @return a count since the start
     */
    public long pulse() {
        if (link.isAlive() && printer.isAlive()) {
            pulse = frames.frames();
        }
        return pulse;
    }

    /** Looks after what nothing else brings up: topics on which the printer says nothing. To be called every second or so. */
    public void lookAround() {
        printer.lookAround(config.light().silentAfter());
    }

    /**
     * Ends in good order within a second: the broker is said goodbye while the light fades out, then the controller. A broker that does
     * not answer holds up nothing.
     */
    @Override
    public synchronized void close() {
        reporter.close();
        Thread farewell = new Thread(printer::close, "farewell");
        farewell.setDaemon(true);
        farewell.start();
        boolean fades = config.atEnd() == AtEnd.FADE;
        if (fades) {
            frames.fadeOut(FADE, LONGEST_FADE);
        }
        frames.close();
        link.close(fades ? WhenSilent.DARK : config.setup().whenSilent());
        await(farewell);
    }

    private static void await(Thread farewell) {
        try {
            farewell.join(LONGEST_FAREWELL_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /**
     * Where people ask for things.
     *
     * @return the same each time
     */
    public Desk desk() {
        return desk;
    }

    /**
     * How the daemon does.
     *
     * @return a snapshot
     */
    public Report report() {
        return new Report(
                version,
                frames.state(),
                silence().map(Daemon::word).orElse(""),
                frames.alarm(),
                faultText.during(frames.alarm(), status.get().faultText()),
                frames.look(),
                desk.wishes().brightness(),
                desk.quiet(),
                frames.milliamps(),
                config.setup().ceilingsMilliamps().get(0),
                word(link.status().state()),
                word(printer.brokerState().phase()),
                pace(),
                signals());
    }

    /** As light follows them; but what the printer tells is told on as it was read, and not as it glides from one reading to the next. */
    private Map<String, Double> signals() {
        Map<String, Double> signals = frames.signals();
        PrinterStatus read = status.get();
        for (Signal signal : Signal.all()) {
            signal.quantity().ifPresent(quantity -> signals.put(signal.key(), read.value(quantity)));
        }
        return signals;
    }

    private double pace() {
        synchronized (pace) {
            return pace.at(frames.frames(), CLOCK.getAsLong());
        }
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /**
     * What is known of the printer.
     *
     * @return the newest
     */
    public PrinterStatus status() {
        return status.get();
    }

    /**
     * Whether and why nothing is heard of the printer.
     *
     * @return empty if it is heard
     */
    public Optional<Silence> silence() {
        return printer.silence(config.light().silentAfter());
    }

    /**
     * How things stand with the broker.
     *
     * @return the newest
     */
    public BrokerState broker() {
        return printer.brokerState();
    }

    /**
     * The frame loop, to ask how it does.
     *
     * @return the same each time
     */
    public FrameLoop frames() {
        return frames;
    }

    /**
     * Where the frames can be looked at as they leave.
     *
     * @return the one of the configuration in force; another one after each {@link #change}
     */
    public FrameTap tap() {
        return tap;
    }

    /**
     * How the link to the controller does.
     *
     * @return a snapshot
     */
    public LinkStatus link() {
        return link.status();
    }

    /**
     * How many messages have come from the broker.
     *
     * @return a count since the start, or since the broker was last changed
     */
    public long messages() {
        return printer.messages();
    }

    /**
     * The most that the strip's supply may be asked for.
     *
     * @return mA
     */
    public int ceilingMilliamps() {
        Setup setup = config.setup();
        return setup.ceilingsMilliamps().get(setup.stripSupply());
    }

    private static void warn(Config config, Chain chain) {
        if (config.light().guard().allowFlashing()) {
            LOG.warn("the flash limit is off, as guard.allow_flashing_that_can_cause_seizures says:"
                    + " light may flash as it likes, which can cause seizures in people with photosensitive epilepsy");
        }
        int over = chain.guard().darkOverMilliamps();
        if (over > 0) {
            LOG.warn(
                    "the dark strip alone is {} mA over the ceiling, so all lights on its supply stay dark;"
                            + " raise supply.ceiling_mA if supply and wiring are built for it, or fit fewer pixels",
                    over);
        }
    }

    private PrinterClient printer(Config from) {
        Contact contact = new Contact(
                new OwnTopics(from.talk().prefix()),
                Report.gone(version, "lost"),
                Report.gone(version, "stopped"),
                new Mailbox(desk));
        return new PrinterClient(from.broker(), from.bindings(), CLOCK, status::set, contact);
    }

    private static FrameSlot slotFor(Setup setup) {
        return new FrameSlot(setup.stripBytes(), setup.dimmers().size());
    }
}
