package dev.lampwright.cli;

import dev.lampwright.service.IgnoredSignal;
import java.io.IOException;
import java.util.concurrent.atomic.AtomicBoolean;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * SIGHUP, which by tradition asks a daemon to read its configuration again. The process that starts the daemon may set it to be ignored;
 * the serial library, which also does so when it is loaded, must not.
 */
final class HangUp {
    private static final Logger LOG = LoggerFactory.getLogger(HangUp.class);

    private final AtomicBoolean heard = new AtomicBoolean();
    private boolean wanted = true;

    private HangUp() {}

    /**
     * Starts listening.
     *
     * @return reports the signals; never any if the runtime has no such signal
     */
    static HangUp listen() {
        HangUp hangUp = new HangUp();
        hangUp.wanted = !IgnoredSignal.is(IgnoredSignal.HUP);
        if (hangUp.wanted && !hangUp.listens()) {
            hangUp.giveUp();
        }
        return hangUp;
    }

    /**
     * Whether it has come since the last call. For one thread.
     *
     * @return true once for any number of signals
     */
    boolean heard() {
        if (wanted && IgnoredSignal.is(IgnoredSignal.HUP)) {
            listenAgain();
        }
        return heard.getAndSet(false);
    }

    private void listenAgain() {
        try {
            IgnoredSignal.end(IgnoredSignal.HUP);
            if (listens()) {
                return;
            }
        } catch (IOException e) {
            LOG.debug("SIGHUP", e);
        }
        giveUp();
    }

    private boolean listens() {
        return ProcessSignal.on("HUP", () -> heard.set(true));
    }

    private void giveUp() {
        wanted = false;
        LOG.info("SIGHUP is not available here; a changed configuration is read anyway");
    }
}
