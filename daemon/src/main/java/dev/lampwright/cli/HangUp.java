package dev.lampwright.cli;

import dev.lampwright.service.IgnoredSignal;
import java.io.IOException;
import java.util.concurrent.atomic.AtomicBoolean;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * SIGHUP, which by old custom asks a daemon to read its configuration again. Who starts the daemon may have it ignored; the serial
 * library, which does so as well when it is loaded, may not.
 */
final class HangUp {
    private static final Logger LOG = LoggerFactory.getLogger(HangUp.class);

    private final AtomicBoolean heard = new AtomicBoolean();
    private boolean wanted = true;

    private HangUp() {}

    /**
     * Listens from now on.
     *
     * @return what has been heard; never anything where the runtime has no such signal
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
     * Whether it has come since this was last asked. To be asked by one thread.
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
