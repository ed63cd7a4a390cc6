package dev.lampwright.cli;

import java.lang.reflect.Proxy;

/**
 * Signals of the operating system. Java's only access to them is {@code sun.misc.Signal} of the module {@code jdk.unsupported}; it is
 * reached by reflection because the compiler's warning about that class cannot be suppressed.
 */
final class ProcessSignal {
    private ProcessSignal() {}

    /**
     * Runs an action at each signal of a kind, on a separate thread, instead of the runtime's default.
     *
     * @param name of the signal, without {@code SIG}
     * @param action what to do
     * @return false if the runtime has no such signal, or reserves it for itself
     */
    static boolean on(String name, Runnable action) {
        try {
            Class<?> signal = Class.forName("sun.misc.Signal");
            Class<?> handler = Class.forName("sun.misc.SignalHandler");
            Object doer = Proxy.newProxyInstance(
                    ProcessSignal.class.getClassLoader(), new Class<?>[] {handler}, (self, method, arguments) -> {
                        action.run();
                        return null;
                    });
            Object kind = signal.getConstructor(String.class).newInstance(name);
            signal.getMethod("handle", signal, handler).invoke(null, kind, doer);
            return true;
        } catch (ReflectiveOperationException e) {
            return false;
        }
    }
}
