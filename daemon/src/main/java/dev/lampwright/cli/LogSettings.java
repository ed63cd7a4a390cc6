package dev.lampwright.cli;

/** What the log looks like. To be set before the first logger is made. */
final class LogSettings {
    private static final String LEVEL = "lampwright.log.level";
    private static final String PATTERN = "lampwright.log.pattern";

    private LogSettings() {}

    /** The journal keeps the time itself, so lines that go to it have none. */
    static void forJournal() {
        if (System.getenv("JOURNAL_STREAM") != null && System.getProperty(PATTERN) == null) {
            System.setProperty(PATTERN, "%-5level %msg%n");
        }
    }

    /** Only faults of the program, since troubles are told in the answer. */
    static void forAnswer() {
        if (System.getProperty(LEVEL) == null) {
            System.setProperty(LEVEL, "ERROR");
        }
    }

    /** Only troubles, since something is drawn in the terminal. */
    static void forPicture() {
        if (System.getProperty(LEVEL) == null) {
            System.setProperty(LEVEL, "WARN");
        }
    }
}
