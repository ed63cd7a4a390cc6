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

    /** How many there were. */
    synchronized long count() {
        return count;
    }

    /** The first of them. */
    synchronized List<String> first() {
        return List.copyOf(first);
    }
}
