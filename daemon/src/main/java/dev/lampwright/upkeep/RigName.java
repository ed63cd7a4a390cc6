package dev.lampwright.upkeep;

import java.util.function.Supplier;

/**
 * Which rig a thread works for, if one process serves several. A new thread inherits the rig of the thread that creates it. The log puts
 * the name in front of each line.
 */
public final class RigName {
    private static final InheritableThreadLocal<String> NAME = new InheritableThreadLocal<>();

    private RigName() {}

    /**
     * The rig that this thread works for.
     *
     * @return its name; empty if it works for none, or for the only one
     */
    public static String current() {
        String name = NAME.get();
        return name == null ? "" : name;
    }

    /**
     * Runs work for a rig.
     *
     * @param name the rig's; empty for none
     * @param work what to do
     */
    public static void during(String name, Runnable work) {
        make(name, () -> {
            work.run();
            return name;
        });
    }

    /**
     * Makes something for a rig, such as a thread.
     *
     * @param name the rig's; empty for none
     * @param maker makes it
     * @param <T> what it makes
     * @return what it made
     */
    public static <T> T make(String name, Supplier<T> maker) {
        String before = NAME.get();
        NAME.set(name);
        try {
            return maker.get();
        } finally {
            NAME.set(before);
        }
    }

    /**
     * The name of a thread.
     *
     * @param work what it does
     * @return the same, followed by the current rig's name
     */
    public static String thread(String work) {
        return current().isEmpty() ? work : work + ' ' + current();
    }
}
