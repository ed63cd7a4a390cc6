package dev.lampwright.cli;

import java.lang.reflect.Proxy;
import java.util.concurrent.atomic.AtomicBoolean;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * SIGHUP, which by old custom asks a daemon to read its configuration again. Java's only way to it is {@code sun.misc.Signal} of the
 * module {@code jdk.unsupported}; it is reached by reflection since the compiler's warning of that class cannot be answered.
 */
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
        try {
            Class<?> signal = Class.forName("sun.misc.Signal");
            Class<?> handler = Class.forName("sun.misc.SignalHandler");
            Object setter = Proxy.newProxyInstance(
                    HangUp.class.getClassLoader(), new Class<?>[] {handler}, (self, method, arguments) -> {
                        hangUp.heard.set(true);
                        return null;
                    });
            Object hup = signal.getConstructor(String.class).newInstance("HUP");
            signal.getMethod("handle", signal, handler).invoke(null, hup, setter);
        } catch (ReflectiveOperationException e) {
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
