package dev.lampwright.upkeep;

/**
 * Which rig a thread works for, where one process serves several. A thread that is made while its maker works for a rig works for the same
 * rig. The log puts the name in front of each line.
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
     * Does some work for a rig.
     *
     * @param name the rig's; empty for none
     * @param work what to do
     */
    public static void during(String name, Runnable work) {
        String before = NAME.get();
        NAME.set(name);
        try {
            work.run();
        } finally {
            NAME.set(before);
        }
    }

    /**
     * What to call a thread.
     *
     * @param work what it does
     * @return the same, with the current rig's name behind it
     */
    public static String thread(String work) {
        return current().isEmpty() ? work : work + ' ' + current();
    }
}
