package dev.lampwright.tool.survey;

import dev.lampwright.payload.Excerpt;
import dev.lampwright.payload.Leaf;
import dev.lampwright.payload.Source;
import dev.lampwright.payload.Unit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/** What was seen of one value: where it stands, what it is called, and what it was. Takes the same room however often it comes. */
final class Trail {
    private static final int MOST_WORDS = 40;
    private static final Pattern NUMBER = Pattern.compile("(?<![\\p{L}0-9])[0-9]+(?:\\.[0-9]+)?");
    private static final double MOSTLY = 0.8;

    private final Source source;
    private final ValueName names;
    private final String place;
    private final Series series = new Series();
    private final Map<String, Integer> words = new LinkedHashMap<>();
    private final Series wordSeries = new Series();
    private long count;
    private long numbers;
    private long moreWords;
    private long changes;
    private double firstSecond;
    private double lastSecond;
    private double least = Double.POSITIVE_INFINITY;
    private double most = Double.NEGATIVE_INFINITY;
    private boolean whole = true;
    private Unit unit = Unit.OWN;
    private String last = "";

    /**
     * Begins a trail.
     *
     * @param topic the topic, without wildcards
     * @param leaf a value that came on it
     */
    Trail(String topic, Leaf leaf) {
        source = new Source(topic, leaf.path(), leaf.cuts());
        names = ValueName.of(topic, leaf.names());
        place = place(leaf);
    }

    /** A number in a text is shown by the word before it. */
    private String place(Leaf leaf) {
        boolean inText = leaf.cuts().stream().anyMatch(Excerpt.class::isInstance);
        if (!inText) {
            return source.place();
        }
        List<String> called = leaf.names();
        String number = called.get(called.size() - 1) + " after “" + called.get(called.size() - 3) + "”";
        return leaf.path().bare() ? number : leaf.path() + ", " + number;
    }

    /**
     * Takes a value in.
     *
     * @param leaf the value
     * @param second when it came, in s since any moment; never before the one before
     */
    void add(Leaf leaf, double second) {
        firstSecond = count == 0 ? second : firstSecond;
        lastSecond = second;
        String text = leaf.text();
        changes += count > 0 && !text.equals(last) ? 1 : 0;
        last = text;
        count++;
        if (leaf.numeric()) {
            addNumber(leaf, text, second);
        } else {
            addWord(text, second);
        }
    }

    private void addNumber(Leaf leaf, String text, double second) {
        numbers++;
        least = Math.min(least, leaf.number());
        most = Math.max(most, leaf.number());
        boolean hasDecimals = text.contains(".") || text.contains(",");
        whole &= leaf.number() == Math.rint(leaf.number()) && !hasDecimals;
        unit = leaf.unit() == Unit.OWN ? unit : leaf.unit();
        series.add(second, leaf.number());
    }

    /** Numbers within a text may be others each time, and make no new text of it. */
    private void addWord(String text, double second) {
        String word = text.contains(" ") ? NUMBER.matcher(text).replaceAll("*") : text;
        if (words.containsKey(word) || words.size() < MOST_WORDS) {
            words.putIfAbsent(word, words.size());
            wordSeries.add(second, words.get(word));
        } else {
            moreWords++;
        }
    }

    Source source() {
        return source;
    }

    /** Where in a message it stands, for a table. */
    String place() {
        return place;
    }

    ValueName names() {
        return names;
    }

    Series series() {
        return series;
    }

    /** How often it came. */
    long count() {
        return count;
    }

    /** How often it came a second; 0 if it came once only. */
    double perSecond() {
        return lastSecond > firstSecond ? (count - 1) / (lastSecond - firstSecond) : 0;
    }

    /** How often it was another than the time before. */
    long changes() {
        return changes;
    }

    /** Whether it is a number, mostly. */
    boolean numeric() {
        return numbers > MOSTLY * count;
    }

    /** The smallest number; infinite if there was none. */
    double least() {
        return least;
    }

    /** The largest number; minus infinite if there was none. */
    double most() {
        return most;
    }

    /** Whether all numbers are whole and written so. */
    boolean whole() {
        return whole;
    }

    /** The unit that stood with the numbers. */
    Unit unit() {
        return unit;
    }

    /** The newest value as text. */
    String last() {
        return last;
    }

    /** The texts that are no numbers, in the order in which they came; {@code *} stands for numbers between words. */
    List<String> words() {
        return new ArrayList<>(words.keySet());
    }

    /** When which of the {@link #words} came, by its place among them. */
    Series wordSeries() {
        return wordSeries;
    }

    /** Whether there were more different texts than are kept. */
    boolean hasMoreWords() {
        return moreWords > 0;
    }
}
