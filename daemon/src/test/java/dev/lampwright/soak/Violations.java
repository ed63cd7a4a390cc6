package dev.lampwright.soak;

import java.util.ArrayList;
import java.util.List;

/** What was wrong. May be used by several threads. */
final class Violations {
    private static final int MOST_KEPT = 20;

    private final List<String> first = new ArrayList<>();
    private long count;

    /** Notes one. */
    synchronized void add(String what) {
        count++;
        if (first.size() < MOST_KEPT) {
            first.add(what);
            System.out.println("VIOLATION " + what);
        }
    }

    /** Notes the first stack trace of a log, if there is one. */
    void addStackTraces(List<String> log) {
        log.stream()
                .filter(line -> line.startsWith("\tat "))
                .findFirst()
                .ifPresent(line -> add("a stack trace is in the log: " + line));
    }

    /** How many there were. */
    synchronized long count() {
        return count;
    }

    /** The first of them. */
    synchronized List<String> first() {
        return List.copyOf(first);
    }
}
