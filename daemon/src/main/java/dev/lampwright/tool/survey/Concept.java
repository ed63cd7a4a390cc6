package dev.lampwright.tool.survey;

import java.util.Locale;

/** What a word in a topic, in a key or in a value speaks of. The words are those of {@code words.txt}. */
enum Concept {
    BED,
    NOZZLE,
    CHAMBER,
    ACTUAL,
    TARGET,
    TEMPERATURE,
    FAHRENHEIT,
    UNIT,
    PROGRESS,
    SHARE,
    LEFT,
    ELAPSED,
    PERMILLE,
    TIME,
    HOURS,
    MINUTES,
    SECONDS,
    MILLISECONDS,
    LAYER,
    TOTAL,
    JOB,
    STATE,
    FAULT,
    TEXT,
    CAMERA,
    SENDER,
    FOREIGN,
    FAN,
    HUMIDITY,
    FILAMENT,
    FLOW,
    SPEED,
    IDLE,
    WARMING,
    PRINTING,
    HELD,
    WAITING,
    DONE,
    STOPPED,
    FAULTY,
    BEGIN,
    END;

    /** The word for this in the list of words. */
    String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
