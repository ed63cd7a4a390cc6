package dev.lampwright.link;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.LastReset;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import dev.lampwright.upkeep.Backoff;
import dev.lampwright.upkeep.RigName;
import dev.lampwright.upkeep.Trouble;
import java.time.Duration;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The link to the controller: finds it, sets it up, and keeps it lit with the newest frame, whatever happens to the line. Has one thread,
 * {@code link}, which survives all errors and keeps reopening the line until {@link #close}.
 */
public final class ControllerLink implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(ControllerLink.class);
    private static final Duration FIRST_PAUSE = Duration.ofMillis(250);
    private static final Duration LONGEST_PAUSE = Duration.ofSeconds(1);
    private static final long GOODBYE_NANOS = TimeUnit.MILLISECONDS.toNanos(200);
    private static final long GOODBYE_MILLIS = 450;
    private static final long LAST_MILLIS = 100;
    private static final long RESET_QUIET_NANOS = TimeUnit.MINUTES.toNanos(1);

    private final Line line;
    private final Setup setup;
    private final FrameSlot frames;
    private final LongSupplier clock;
    private final Tally tally = new Tally();
    private final Trouble trouble = new Trouble(LOG);
    private final Backoff backoff;
    private final FrameGate gate;
    private final Exchange exchange;
    private final Handshake handshake;
    private final LineQuality quality;
    private final ShownWatch shownWatch;
    private final Map<LastReset, Long> resetsToldAt = new EnumMap<>(LastReset.class);
    private final Thread thread;
    private final String lit;

    private volatile Phrase cause = Phrase.plain("");
    private volatile LinkState state = LinkState.DOWN;
    private volatile Optional<Here> controller = Optional.empty();
    private volatile WhenSilent parting;
    private volatile boolean closing;
    private boolean everBegun;
    private boolean everLit;
    private boolean startedAnew = true;

    /**
     * Creates a link that is not started.
     *
     * @param line the line, which the link opens and closes
     * @param setup what is fitted to the controller
     * @param frames holds the newest frame, of the set-up's size
     * @param nanoClock a monotonic clock in ns, such as {@link System#nanoTime}
     */
    public ControllerLink(Line line, Setup setup, FrameSlot frames, LongSupplier nanoClock) {
        this(line, setup, frames, nanoClock, new Backoff(FIRST_PAUSE, LONGEST_PAUSE));
    }

    /** The same with specific pauses between attempts. */
    ControllerLink(Line line, Setup setup, FrameSlot frames, LongSupplier nanoClock, Backoff backoff) {
        this.line = line;
        this.backoff = backoff;
        this.setup = setup;
        this.frames = frames;
        parting = setup.whenSilent();
        clock = nanoClock;
        gate = new FrameGate(frames);
        exchange = new Exchange(line, nanoClock, tally, frames.deliveries());
        handshake = new Handshake(exchange, new Asking(exchange, nanoClock, () -> closing), setup);
        quality = new LineQuality(LOG, line.name(), tally, nanoClock);
        shownWatch = new ShownWatch(line.name(), tally, nanoClock);
        lit = "the controller on " + line.name() + " is lit";
        thread = new Thread(this::run, RigName.thread("link"));
        thread.setDaemon(true);
    }

    /** Starts the thread. Call it once. */
    public void start() {
        thread.start();
    }

    /**
     * Whether the thread runs.
     *
     * @return false before {@link #start} and after {@link #close}
     */
    public boolean isAlive() {
        return thread.isAlive();
    }

    /** Call this after each {@link FrameSlot#publish}. It neither blocks nor allocates. */
    public void frameReady() {
        gate.open();
    }

    /**
     * The status of the link.
     *
     * @return a snapshot
     */
    public LinkStatus status() {
        String words = trouble.isOn() ? trouble.words() : quality.words();
        Phrase last = cause;
        return new LinkStatus(
                state,
                line.name(),
                controller,
                tally.framesSent.get(),
                tally.framesShown.get(),
                frames.skipped(),
                tally.messagesLost.get(),
                tally.refused.get(),
                tally.garbled.get(),
                tally.broken(),
                tally.overruns(),
                tally.dimmed(),
                words,
                last.english().equals(words) ? last : Phrase.plain(words));
    }

    /**
     * Ends the link within a second. A controller that is set up is instructed to show what the set-up specifies for a time without a host.
     */
    @Override
    public void close() {
        closing = true;
        LockSupport.unpark(thread);
        if (!ended(GOODBYE_MILLIS)) {
            line.close();
            ended(LAST_MILLIS);
        }
    }

    /**
     * Ends the link within a second.
     *
     * @param what a controller that is set up shows from then on
     */
    public void close(WhenSilent what) {
        parting = what;
        close();
    }

    private boolean ended(long millis) {
        try {
            thread.join(millis);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return !thread.isAlive();
    }

    private void run() {
        while (!closing) {
            boolean fit = connect();
            state = LinkState.DOWN;
            line.close();
            if (!closing) {
                pause((fit ? backoff.next() : LONGEST_PAUSE).toNanos());
            }
        }
    }

    /** Opens the line and lights the controller until something goes wrong. Returns false if the controller does not fit its set-up. */
    private boolean connect() {
        try {
            line.open();
            shownWatch.restart();
            while (!closing) {
                converse();
            }
        } catch (LineException e) {
            say(e.trouble());
        } catch (UnfitException e) {
            say(Phrase.plain(line.name() + ": " + e.getMessage()));
            return false;
        } catch (RuntimeException | Error e) {
            say(Phrase.plain("the link to " + line.name() + " hit an internal error (please report it): " + e));
        }
        return true;
    }

    /** One round of asking, setting up and lighting; ends when the controller has started again. */
    private void converse() throws LineException, UnfitException {
        enter(LinkState.ASKING);
        Here here = handshake.ask();
        if (startedAnew && here.lastReset().isTrouble()) {
            tellReset(here.lastReset());
        }
        startedAnew = false;
        controller = Optional.of(here);
        enter(LinkState.SETTING_UP);
        handshake.setUp(here);
        enter(LinkState.LIT);
        light(new Lighting(exchange, frames, gate, here, setup, everBegun));
        if (shownWatch.isOverdue() && !closing) {
            pause(backoff.next().toNanos());
        }
    }

    /** A controller that is set up repeatedly and shows nothing counts as unlit during that time. */
    private void enter(LinkState next) {
        state = shownWatch.isOverdue() ? LinkState.UNLIT : next;
    }

    /** A controller that restarts repeatedly is logged once a minute for each cause. */
    private void tellReset(LastReset reset) {
        long now = clock.getAsLong();
        Long before = resetsToldAt.get(reset);
        if (before == null || now - before >= RESET_QUIET_NANOS) {
            resetsToldAt.put(reset, now);
            LOG.warn("the controller on {} started {}", line.name(), reset.words());
        }
    }

    private void light(Lighting lighting) throws LineException {
        long shownBefore = tally.framesShown.get();
        quality.restart();
        while (!closing && !exchange.answers().unready()) {
            lighting.round();
            everBegun |= lighting.begun();
            watch(exchange.answers());
            shownWatch.look(lighting.frameNanos());
            if (tally.framesShown.get() != shownBefore) {
                shownBefore = tally.framesShown.get();
                state = LinkState.LIT;
                tellLit();
                backoff.reset();
            } else if (shownWatch.isOverdue()) {
                state = LinkState.UNLIT;
                tellUnlit();
            }
        }
        startedAnew = exchange.answers().unready();
        if (closing) {
            goodbye(lighting.stripNanos());
        }
    }

    /** Refusals by a restarted controller of what came before its set-up say nothing about the line. */
    private void watch(Answers answers) {
        if (answers.counted() && !answers.unready()) {
            quality.watch(answers.darkOverCeiling());
        }
    }

    /** Logged once at the first light, and at the end of each problem. */
    private void tellLit() {
        if (!trouble.ends(lit) && !everLit) {
            LOG.info("{}", lit);
        }
        everLit = true;
    }

    private void tellUnlit() {
        if (!closing) {
            trouble.begins("unlit", shownWatch.words(exchange.answers()), clock.getAsLong());
        }
    }

    private void goodbye(long stripNanos) throws LineException {
        awaitAnswers();
        exchange.sendRest(parting, stripNanos);
        awaitAnswers();
    }

    private void awaitAnswers() throws LineException {
        long started = clock.getAsLong();
        for (long left = GOODBYE_NANOS;
                left > 0 && !exchange.credit().idle();
                left = GOODBYE_NANOS - (clock.getAsLong() - started)) {
            exchange.receive(Math.min(left, exchange.nanosToDeadline()));
            exchange.expire();
        }
    }

    private void say(Phrase what) {
        if (!closing) {
            cause = what;
            trouble.begins(what.english(), clock.getAsLong());
        }
    }

    private void pause(long nanos) {
        long started = clock.getAsLong();
        for (long left = nanos; left > 0 && !closing; left = nanos - (clock.getAsLong() - started)) {
            LockSupport.parkNanos(this, left);
        }
    }
}
