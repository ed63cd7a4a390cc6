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

/** What was seen of one value: where it is, its name, and its values. Takes the same room however often it comes. */
final class Trail {
    private static final int MOST_NUMBERS = 256;
    private static final int MOST_WORDS = 40;
    private static final Pattern NUMBER = Pattern.compile("(?<![\\p{L}0-9])[0-9]+(?:\\.[0-9]+)?");
    private static final double MOSTLY = 0.8;
    private static final int MOST_TARGETS = 8;
    private static final double WARM = 25;
    private static final int FEWEST_CODES = 3;
    private static final int MOST_CODES = 24;
    private static final int LEAST_COUNTS = 6;
    private static final int COUNTS_DOWN = 4;

    private final Source source;
    private final boolean inTurns;
    private final ValueName plainNames;
    private ValueName names;
    private final String place;
    private final Series series = new Series(MOST_NUMBERS);
    private final Map<String, Integer> words = new LinkedHashMap<>();
    private final Runs said = new Runs();
    private final Steps steps = new Steps();
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
     * @param inTurns whether several publish on the topic
     */
    Trail(String topic, Leaf leaf, boolean inTurns) {
        this.inTurns = inTurns;
        source = leaf.on(topic);
        plainNames = ValueName.of(topic, leaf.names());
        names = plainNames;
        place = place(leaf);
    }

    /** What its topic and its payload call it. */
    ValueName plainNames() {
        return plainNames;
    }

    /** Gives it the name that what has been heard so far suggests. */
    void call(ValueName called) {
        names = called;
    }

    /** A number in a text is shown by the word before it. */
    private String place(Leaf leaf) {
        boolean inText = leaf.cuts().stream().anyMatch(Excerpt.class::isInstance);
        if (!inText) {
            return source.place();
        }
        List<String> called = leaf.names();
        String number = isWordInText(leaf)
                ? "after “" + called.get(called.size() - 1) + "”"
                : called.get(called.size() - 1) + after(called.get(called.size() - 3));
        return leaf.path().bare() ? number : leaf.path() + ", " + number;
    }

    private static String after(String word) {
        return word.isEmpty() ? " in the text" : " after “" + word + "”";
    }

    /**
     * A value found by its key is identified by the key alone; a number in a text by the word before it, what is between, and its position.
     */
    private static boolean isWordInText(Leaf leaf) {
        List<String> called = leaf.names();
        boolean isNumbered = called.get(called.size() - 1).chars().allMatch(Character::isDigit);
        return called.size() < 3 || !isNumbered;
    }

    /**
     * Adds a value.
     *
     * @param leaf the value
     * @param second when it came, in s since any moment; never earlier than the previous one
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
        unit = leaf.unit() == Unit.OWN || unit == Unit.PARTS ? unit : leaf.unit();
        double number =
                unit == Unit.PARTS && leaf.unit().numeric() ? leaf.unit().toOwn(leaf.number()) : leaf.number();
        least = Math.min(least, number);
        most = Math.max(most, number);
        boolean hasDecimals = text.contains(".") || text.contains(",");
        whole &= number == Math.rint(number) && !hasDecimals;
        series.add(second, number);
        steps.add(second, number);
        if (whole) {
            said.add(second, text);
        } else {
            said.forget();
        }
    }

    /** Numbers within a text may differ each time without making it a new text. */
    private void addWord(String text, double second) {
        String word = text.contains(" ") ? NUMBER.matcher(text).replaceAll("*") : text;
        if (words.containsKey(word) || words.size() < MOST_WORDS) {
            words.putIfAbsent(word, words.size());
        } else {
            moreWords++;
        }
        said.add(second, word);
    }

    Source source() {
        return source;
    }

    /** Where the machine publishes: the topic, and, if several publish there, below it which one. */
    String speaker() {
        return source.part()
                .filter(part -> inTurns)
                .map(part -> source.topicFilter()
                        + '/'
                        + String.join("/", part.where().values()))
                .orElse(source.topicFilter());
    }

    /** Decides between equal evidence, so that the same messages always give the same answer. */
    String order() {
        return source.topicFilter() + ' ' + source.place();
    }

    /** Where it is in a message, for a table. */
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

    /** How often it differed from the previous value. */
    long changes() {
        return changes;
    }

    /** Whether it is a number, mostly. */
    boolean numeric() {
        return numbers > MOSTLY * count;
    }

    /** Whether it changed only a few times, and to something warm, as a heater's target does. */
    boolean isLikeATarget() {
        return numeric() && steps.size() > 1 && steps.size() <= MOST_TARGETS && most >= WARM;
    }

    /** Whether it changed only a few times. */
    boolean isSteady() {
        return steps.size() <= MOST_TARGETS;
    }

    /** Whether it was 0 for some time before it rose. */
    boolean startsAtNothing() {
        int least = 3;
        boolean zero = series.size() > least;
        for (int i = 0; i < least && zero; i++) {
            zero = series.value(i) == 0;
        }
        return zero && most > 0;
    }

    /** Whether it is a code: one of a few whole numbers, and not merely counting up. */
    boolean isCode() {
        Moves moves = Moves.of(series);
        boolean counts = moves.ups() >= LEAST_COUNTS && COUNTS_DOWN * moves.downs() <= moves.ups();
        int codes = said.texts().size();
        return numeric() && whole && unit == Unit.OWN && codes >= FEWEST_CODES && codes <= MOST_CODES && !counts;
    }

    /** The smallest number; infinite if there was none. */
    double least() {
        return least;
    }

    /** The largest number; minus infinite if there was none. */
    double most() {
        return most;
    }

    /** Whether all numbers are whole and written as such. */
    boolean whole() {
        return whole;
    }

    /** The unit given with the numbers. */
    Unit unit() {
        return unit;
    }

    /** The newest value as text. */
    String last() {
        return last;
    }

    /** The texts that are not numbers, in the order in which they came; {@code *} stands for numbers between words. */
    List<String> words() {
        return new ArrayList<>(words.keySet());
    }

    /** Which word or whole number was there when. */
    Runs said() {
        return said;
    }

    /** When the number changed. */
    Steps steps() {
        return steps;
    }

    /** When it first came, in s. */
    double firstSecond() {
        return firstSecond;
    }

    /** When it last came, in s. */
    double lastSecond() {
        return lastSecond;
    }

    /** Whether there were more different texts than are kept. */
    boolean hasMoreWords() {
        return moreWords > 0;
    }
}
