package dev.lampwright.tool.survey;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Which text a place had, and from when. Takes bounded room: if there are too many texts, or they change too often, nothing is kept. */
final class Runs {
    private static final int MOST_TEXTS = 40;
    private static final int MOST = 512;
    private static final int FIRST = 8;

    private final Map<String, Integer> texts = new LinkedHashMap<>();
    private int[] text = new int[FIRST];
    private double[] from = new double[FIRST];
    private int size;
    private boolean complete = true;

    /**
     * Adds a text.
     *
     * @param second when it came, in s since any moment; never earlier than the previous one
     * @param said the text
     */
    void add(double second, String said) {
        if (!complete) {
            return;
        }
        int index = texts.computeIfAbsent(said, any -> texts.size());
        boolean same = size > 0 && text[size - 1] == index;
        if (same) {
            return;
        }
        if (size == MOST || texts.size() > MOST_TEXTS) {
            forget();
            return;
        }
        if (size == text.length) {
            text = Arrays.copyOf(text, 2 * size);
            from = Arrays.copyOf(from, 2 * size);
        }
        text[size] = index;
        from[size] = second;
        size++;
    }

    /** Gives up permanently. */
    void forget() {
        complete = false;
        texts.clear();
        size = 0;
    }

    /** Whether everything was kept; otherwise nothing is. */
    boolean complete() {
        return complete;
    }

    /** The different texts, in the order in which they came. */
    List<String> texts() {
        return new ArrayList<>(texts.keySet());
    }

    /** How many runs there are. */
    int size() {
        return size;
    }

    /** Which of the {@link #texts} a run has. */
    int text(int run) {
        return text[run];
    }

    /** When a run began, in s. */
    double from(int run) {
        return from[run];
    }

    /** Whether a text was there at a given time. */
    boolean stands(String said, double second) {
        return said.equals(textAt(second));
    }

    /** The text at a given time; empty before the first. */
    String textAt(double second) {
        int index = at(second);
        return index < 0 ? "" : texts().get(index);
    }

    /**
     * Which of the {@link #texts} was there at a given time.
     *
     * @param second the time
     * @return its place; −1 before the first
     */
    int at(double second) {
        int found = Arrays.binarySearch(from, 0, size, second);
        int run = found >= 0 ? found : -found - 2;
        return run < 0 ? -1 : text[run];
    }
}
