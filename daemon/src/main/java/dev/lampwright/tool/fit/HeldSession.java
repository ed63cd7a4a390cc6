package dev.lampwright.tool.fit;

import dev.lampwright.file.RandomToken;
import dev.lampwright.upkeep.RigName;
import dev.lampwright.upkeep.Worker;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Duration;
import java.util.Locale;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One fitting by requests, from its beginning to its end, on a thread of its own, {@code fit}. A second one, {@code lease}, ends it once its
 * holder is gone.
 */
final class HeldSession {
    private static final Logger LOG = LoggerFactory.getLogger(HeldSession.class);
    private static final Duration LOOK = Duration.ofMillis(500);
    /** Longer than a light takes to go out. A search at a silent port takes longer, and lights nothing. */
    private static final Duration LONGEST_END = Duration.ofMillis(700);

    private final PageTerminal terminal = new PageTerminal();
    private final String lease = RandomToken.make();
    private final Begun begun;
    private final HeldFitting.Controller controller;
    private final LongSupplier clock;
    private final Thread thread;
    private final Worker watch = new Worker("lease", LOOK, this::lookAtLease);
    private volatile long renewed;
    private volatile boolean running = true;
    private volatile String asked = "";
    private volatile String end = "";
    private volatile String why = "";

    /** Makes the fitting. */
    interface Begun {
        FittingTalk with(Terminal terminal) throws IOException;
    }

    HeldSession(Begun begun, HeldFitting.Controller controller, LongSupplier nanoClock) {
        this.begun = begun;
        this.controller = controller;
        clock = nanoClock;
        renewed = nanoClock.getAsLong();
        thread = new Thread(this::run, RigName.thread("fit"));
        thread.setDaemon(true);
    }

    void start() {
        thread.start();
        watch.start();
    }

    PageTerminal terminal() {
        return terminal;
    }

    String lease() {
        return lease;
    }

    boolean isHeldBy(String given) {
        return MessageDigest.isEqual(lease.getBytes(StandardCharsets.UTF_8), given.getBytes(StandardCharsets.UTF_8));
    }

    boolean isRunning() {
        return running;
    }

    /** How it ended: {@code done}, {@code stopped}, {@code lapsed}, {@code closed} or {@code failed}; empty while it runs. */
    String end() {
        return end;
    }

    /** Why it failed; empty if it did not. */
    String why() {
        return why;
    }

    /** The holder has been heard. */
    void renew(long now) {
        renewed = now;
    }

    /** Ends it; everything goes dark. */
    void stop(String how) {
        if (asked.isEmpty()) {
            asked = how;
        }
        terminal.stop();
    }

    /** Waits for the next question, or for the end if that is near. */
    void awaitNext(Duration patience) {
        terminal.awaitQuestion(patience);
        if (terminal.ended()) {
            join(patience);
        }
    }

    /** Waits until everything is dark. */
    void awaitEnd() {
        join(LONGEST_END);
    }

    private void join(Duration patience) {
        try {
            thread.join(patience.toMillis());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void lookAtLease() {
        if (clock.getAsLong() - renewed > HeldFitting.LEASE.toNanos()) {
            stop("lapsed");
        }
    }

    private void run() {
        String how = "failed";
        try {
            controller.release();
            GuidedFitting.End reached = begun.with(terminal).run();
            how = reached == GuidedFitting.End.INPUT_ENDED && !asked.isEmpty()
                    ? asked
                    : reached.name().toLowerCase(Locale.ROOT);
        } catch (IOException e) {
            why = e.getMessage();
        } catch (RuntimeException | Error e) {
            why = "an internal error, please report it: " + e;
            LOG.error("the fitting on the page hit an internal error, please report it", e);
        } finally {
            try {
                controller.resume();
            } finally {
                over(how);
            }
        }
    }

    private void over(String how) {
        end = how;
        running = false;
        terminal.stop();
        LOG.info("the fitting on the page has ended: {}", how);
        watch.close();
    }
}
