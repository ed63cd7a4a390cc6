package dev.lampwright.payload;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A text split into parts. A line of values with a separator, such as {@code 41.5;60;RUN}, is split into its fields. Any other text is
 * itself, plus each number in it by the preceding word, such as the two in {@code bed 41.5 of 60}.
 */
final class TextParts {
    private static final int MOST_TEXT_CHARS = 400;
    private static final int MOST_FIELDS = 64;
    private static final int MOST_NUMBERS = 16;
    private static final int MOST_OUTER = 5;
    private static final char[] SEPARATORS = {';', '\t', '|', ','};

    private static final String NUMBER = "[-+]?[0-9]+(?:\\.[0-9]+)?";
    private static final String COMMA_NUMBER = "[-+]?[0-9]+(?:,[0-9]+)?";
    /** A decimal comma, as opposed to a comma between numbers of a list. */
    private static final Pattern DECIMAL_COMMA = Pattern.compile("(?<![0-9,.])[0-9]+,[0-9]{1,3}(?![0-9,.])");

    private static final Pattern NAME = Pattern.compile("\\p{L}{2}");
    private static final Pattern DECIMAL_POINT = Pattern.compile("[0-9]\\.[0-9]");
    private static final String LETTERS = "\\p{L}[\\p{L}\\p{M}\\p{N}_]*";
    private static final String COUPLED = "\\s*(?:/|of|von|van|sur|de|di|din|z|od|iš|av|af|från|dari|из|от|з)\\s*";

    /** A unit directly after a number. */
    private static final String SIGN = "\\s?(%|‰|°[CFcf]|K)?";

    private static final int NUMBER_GROUP = 2;
    private static final int SIGN_GROUP = 3;
    private static final String WORD = "[^\\s;,|&=<>\"']+";
    private static final Pattern KEY_AND_WORD = Pattern.compile(
            "(?<![\\p{L}\\p{M}\\p{N}_])(?<key>" + LETTERS + ")\\s*[=:]\\s*[\"']?(?<value>" + WORD + ")");

    private static final Pattern LINE_OF_WORD =
            Pattern.compile("(?m)^(?<key>" + LETTERS + ")\\s*[;|\\t]\\s*[\"']?(?<value>" + WORD + ")");

    private static final String DURATION =
            "[0-9]+\\s?\\p{L}{1,12}\\.?,? [0-9]+\\s?\\p{L}{1,12}(?: [0-9]+\\s?\\p{L}{1,12})?(?![\\p{L}\\p{N}])";
    private static final Pattern WORD_AND_DURATION =
            Pattern.compile("(?<word>" + LETTERS + ")[^\\p{L}\\p{N}]*(?<value>" + DURATION + ")");

    /** Words between two numbers of one thing, which do not name the second. Common practice, no source. */
    private static final Set<String> FILLERS = Set.of(
            "of", "to", "von", "van", "auf", "de", "sur", "z", "od", "iš", "av", "af", "från", "dari", "din", "из",
            "от", "з", "di", "c", "f", "k", "deg", "degc", "degf", "s", "min", "h");

    private final PayloadPath path;
    private final Optional<Selection> selection;
    private final List<String> names;
    private final String text;
    private final boolean hasDecimalComma;
    private final String number;
    private final List<Leaf> parts = new ArrayList<>();

    private TextParts(PayloadPath path, Optional<Selection> selection, List<String> names, String text) {
        this.path = path;
        this.selection = selection;
        this.names = names;
        this.text = text;
        hasDecimalComma = NAME.matcher(text).find()
                && DECIMAL_COMMA.matcher(text).find()
                && !DECIMAL_POINT.matcher(text).find();
        number = hasDecimalComma ? COMMA_NUMBER : NUMBER;
    }

    /**
     * Splits a text.
     *
     * @param path where it is
     * @param selection which part of the payload the path is in
     * @param names its names
     * @param text the text, without surrounding white space
     * @return its parts, at least one
     */
    static List<Leaf> of(PayloadPath path, Optional<Selection> selection, List<String> names, String text) {
        TextParts all = new TextParts(path, selection, names, text);
        if (text.length() > MOST_TEXT_CHARS || !all.addFields()) {
            all.add(List.of(), names, text);
        }
        if (all.parts.size() == 1
                && text.length() <= MOST_TEXT_CHARS
                && !all.parts.get(0).numeric()) {
            all.addCouple();
            all.addNumbers();
            all.addWords();
            all.addDurations();
        }
        return all.parts;
    }

    private void add(List<Cut> cuts, List<String> partNames, String part) {
        for (Unit unit : Unit.values()) {
            try {
                double number = Measure.of(part, unit);
                parts.add(new Leaf(path, cuts, selection, partNames, new Value.Text(part), number, unit));
                return;
            } catch (UnreadableException e) {
                // Possibly in the next unit.
            }
        }
        parts.add(new Leaf(path, cuts, selection, partNames, new Value.Text(part), Double.NaN, Unit.OWN));
    }

    private boolean addFields() {
        if (isNumber(text) || text.indexOf('\n') >= 0) {
            return false;
        }
        for (char separator : SEPARATORS) {
            List<String> fields = CsvField.fields(text, separator, MOST_FIELDS);
            if (isLine(fields) && !(separator == ',' && hasDecimalComma)) {
                for (int i = 0; i < fields.size(); i++) {
                    add(
                            List.of(new CsvField(i + 1, separator)),
                            with(Integer.toString(i + 1)),
                            fields.get(i).strip());
                }
                return true;
            }
        }
        return false;
    }

    /** Only a number, possibly with a decimal comma. */
    private static boolean isNumber(String text) {
        return Measure.rest(text).filter(String::isEmpty).isPresent();
    }

    /** At least two fields, at least two in three of them only a number, or empty. */
    private static boolean isLine(List<String> fields) {
        long numbers = fields.stream()
                .filter(field -> Measure.rest(field.strip()).isPresent())
                .count();
        long words = fields.stream().filter(field -> !field.isBlank()).count() - numbers;
        return fields.size() > 1 && numbers > 0 && words <= numbers && numbers + words > 1;
    }

    /** Only two numbers, such as {@code 12/84}, {@code 12 of 84} or {@code 41.5 °C of 60 °C}. */
    private void addCouple() {
        Matcher couple = Pattern.compile("(" + number + ")" + SIGN + COUPLED + "(" + number + ")" + SIGN)
                .matcher(text);
        if (couple.matches()) {
            add(new Excerpt("^(?<value>" + number + ")"), with("", "", "1"), couple.group(1), couple.group(2));
            add(new Excerpt("(?<value>" + number + ")[^0-9]*$"), with("", "of", "2"), couple.group(3), couple.group(4));
        }
    }

    /** A number cut out of a text, with the unit that follows it there. */
    private void add(Excerpt excerpt, List<String> partNames, String found, String sign) {
        int before = parts.size();
        add(List.of(excerpt), partNames, found);
        Leaf leaf = parts.get(before);
        Optional<Unit> unit = Unit.ofSign(sign);
        if (unit.isPresent() && leaf.unit() == Unit.OWN) {
            parts.set(before, leaf.in(unit.get()));
        }
    }

    private Matcher wordsAndNumbers() {
        return Pattern.compile("(?<word>" + LETTERS + ")|(?<number>" + number + ")(?=" + SIGN + "(?![\\p{L}\\p{N}]))?")
                .matcher(text);
    }

    /** The words directly before a number in several places, which identify it only together with an earlier word. */
    private Set<String> repeated() {
        Set<String> once = new HashSet<>();
        Set<String> often = new HashSet<>();
        Matcher matcher = wordsAndNumbers();
        String before = "";
        while (matcher.find()) {
            String word = matcher.group("word");
            if (word == null && !before.isEmpty() && !once.add(before)) {
                often.add(before);
            }
            before = word == null ? "" : word;
        }
        return often;
    }

    private void addNumbers() {
        Set<String> repeated = repeated();
        List<String> words = new ArrayList<>();
        Matcher matcher = wordsAndNumbers();
        String label = "";
        String filler = "";
        int nth = 0;
        while (matcher.find() && parts.size() <= MOST_NUMBERS) {
            String word = matcher.group("word");
            if (word == null) {
                nth++;
                if (repeated.contains(label)) {
                    addInner(words, repeated, nth, matcher);
                } else {
                    addNumber(label, filler, nth, matcher);
                }
            } else if (FILLERS.contains(word.toLowerCase(Locale.ROOT)) && !label.isEmpty()) {
                filler = word;
            } else {
                label = repeated.contains(word) || !words.contains(word) ? word : "";
                words.add(word);
                filler = "";
                nth = 0;
            }
        }
    }

    /** A number after a word that also precedes others, identified by the nearest earlier word that makes it unique. */
    private void addInner(List<String> words, Set<String> repeated, int nth, MatchResult found) {
        String inner = words.get(words.size() - 1);
        for (int i = words.size() - 2; i >= Math.max(0, words.size() - MOST_OUTER) && nth == 1; i--) {
            String outer = words.get(i);
            if (repeated.contains(outer)) {
                continue;
            }
            String expression =
                    "\\b" + outer + "\\b[\\s\\S]*?\\b" + inner + "[^\\p{L}\\p{N}]*?(?<value>" + number + ")";
            Matcher matcher = Pattern.compile(expression).matcher(text);
            if (matcher.find() && matcher.start("value") == found.start()) {
                add(
                        new Excerpt(expression),
                        with(outer, inner, "", "1"),
                        found.group(NUMBER_GROUP),
                        found.group(SIGN_GROUP));
                return;
            }
        }
    }

    /** The words of a text that consists of pairs of key and value, such as {@code state=RUN t=41}. */
    private void addWords() {
        List<String> keys = new ArrayList<>();
        List<String> values = new ArrayList<>();
        Matcher matcher = (isTable() ? LINE_OF_WORD : KEY_AND_WORD).matcher(text);
        while (matcher.find() && keys.size() < MOST_NUMBERS) {
            keys.add(matcher.group("key"));
            values.add(matcher.group("value"));
        }
        for (int i = 0; i < keys.size() && keys.size() > 1; i++) {
            boolean isWord = Character.isLetter(values.get(i).charAt(0)) || isDuration(values.get(i));
            if (isWord && keys.indexOf(keys.get(i)) == i) {
                addWord(keys.get(i), values.get(i));
            }
        }
    }

    /** Lines that begin with a name and a separator. */
    private boolean isTable() {
        return text.indexOf('\n') >= 0 && !KEY_AND_WORD.matcher(text).find();
    }

    /** Durations of several parts within a text, by the word before them. */
    private void addDurations() {
        Matcher matcher = WORD_AND_DURATION.matcher(text);
        while (matcher.find() && parts.size() <= MOST_NUMBERS) {
            String label = matcher.group("word");
            if (isDuration(matcher.group(Excerpt.GROUP))) {
                addFound(
                        new Excerpt("\\b" + label + "[^\\p{L}\\p{N}]*(?<value>" + DURATION + ")"),
                        label,
                        matcher.group(Excerpt.GROUP));
            }
        }
    }

    private static boolean isDuration(String text) {
        return Arrays.stream(Unit.values()).filter(unit -> !unit.numeric()).anyMatch(unit -> {
            try {
                return Measure.of(text, unit) >= 0;
            } catch (UnreadableException e) {
                return false;
            }
        });
    }

    private void addWord(String key, String word) {
        String begin = isTable() ? "(?m)^" + key + "\\s*[;|\\t]\\s*" : "(?<![\\p{L}\\p{N}_])" + key + "\\s*[=:]\\s*";
        Excerpt excerpt = new Excerpt(begin + "[\"']?(?<value>" + WORD + ")");
        addFound(excerpt, key, word);
    }

    private void addFound(Excerpt excerpt, String key, String found) {
        try {
            if (excerpt.from(text).filter(found::equals).isPresent()) {
                add(List.of(excerpt), with(key), found);
            }
        } catch (UnreadableException e) {
            // A text that is too complex for a pattern has no such parts.
        }
    }

    private void addNumber(String label, String filler, int nth, MatchResult matched) {
        if (label.isEmpty()) {
            return;
        }
        String found = matched.group(NUMBER_GROUP);
        String others = (number + "\\D+?").repeat(nth - 1);
        Excerpt excerpt = new Excerpt("\\b" + label + "[^\\p{L}\\p{N}]*?" + others + "(?<value>" + number + ")");
        try {
            if (excerpt.from(text).filter(found::equals).isPresent()) {
                add(excerpt, with(label, filler, Integer.toString(nth)), found, matched.group(SIGN_GROUP));
            }
        } catch (UnreadableException e) {
            // A text that is too complex for a pattern has no such parts.
        }
    }

    private List<String> with(String... more) {
        List<String> all = new ArrayList<>(names);
        all.addAll(List.of(more));
        return all;
    }
}
