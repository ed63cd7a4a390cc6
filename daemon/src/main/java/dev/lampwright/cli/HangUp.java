package dev.lampwright.cli;

import java.util.concurrent.atomic.AtomicBoolean;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** SIGHUP, which by old custom asks a daemon to read its configuration again. */
final class HangUp {
    private static final Logger LOG = LoggerFactory.getLogger(HangUp.class);

    private final AtomicBoolean heard = new AtomicBoolean();

    private HangUp() {}

    /**
     * Listens from now on.
     *
     * @return what has been heard; never anything where the runtime has no such signal
     */
    static HangUp listen() {
        HangUp hangUp = new HangUp();
        if (!ProcessSignal.on("HUP", () -> hangUp.heard.set(true))) {
            LOG.info("SIGHUP is not listened to here; a changed configuration is read all the same");
        }
        return hangUp;
    }

    /**
     * Whether it has come since this was last asked.
     *
     * @return true once for any number of signals
     */
    boolean heard() {
        return heard.getAndSet(false);
    }
}
