package dev.lampwright.tool.survey;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What a value is called: the levels of its topic and the keys in its payload, from the outermost on. */
final class ValueName {
    private static final Set<String> NOT_TELLING = Set.of("value", "val", "v", "is", "flag", "flags", "data");

    private static final int LEAST_SHARED = 4;

    private final List<List<String>> levels;
    private final int topicLevels;
    private final Map<Concept, Integer> spokenAt = new EnumMap<>(Concept.class);
    private final Map<Concept, String> spokenBy = new EnumMap<>(Concept.class);

    private ValueName(List<List<String>> levels, int topicLevels) {
        this.levels = levels;
        this.topicLevels = topicLevels;
        for (Concept concept : Concept.values()) {
            look(concept);
        }
    }

    /**
     * Splits names into words.
     *
     * @param topic a topic
     * @param keys the names in the payload
     * @return the names
     */
    static ValueName of(String topic, List<String> keys) {
        List<List<String>> levels = new ArrayList<>();
        for (String level : topic.split("/", -1)) {
            levels.add(Tokens.of(level));
        }
        int topicLevels = levels.size();
        keys.forEach(key -> levels.add(Tokens.of(key)));
        return new ValueName(levels, topicLevels);
    }

    private void look(Concept concept) {
        for (int i = levels.size() - 1; i >= 0; i--) {
            for (String token : levels.get(i)) {
                if (Vocabulary.strength(concept, token) > 0) {
                    spokenAt.put(concept, i);
                    spokenBy.put(concept, token);
                    return;
                }
            }
        }
    }

    /** Whether the names refer to a concept. */
    boolean speakOf(Concept concept) {
        return spokenAt.containsKey(concept);
    }

    /**
     * The token that refers to a concept.
     *
     * @param concept one that is referred to
     * @return the innermost such token
     */
    String wordFor(Concept concept) {
        return spokenBy.get(concept);
    }

    /**
     * How far in the names refer to a concept.
     *
     * @param concept the concept
     * @return the position of the innermost name that does, from 0; −1 if none does
     */
    int depthOf(Concept concept) {
        return spokenAt.getOrDefault(concept, -1);
    }

    /**
     * In how many names these differ from others.
     *
     * @param others those of another value
     * @return a count; as many as there are if one has more names than the other
     */
    int differFrom(ValueName others) {
        if (levels.size() != others.levels.size()) {
            return Math.max(levels.size(), others.levels.size());
        }
        int different = 0;
        for (int i = 0; i < levels.size(); i++) {
            different += levels.get(i).equals(others.levels.get(i)) ? 0 : 1;
        }
        return different;
    }

    /**
     * Whether two values are next to each other, and have similar names or follow each other: {@code layer} and {@code layers}, fields 5
     * and 6.
     *
     * @param others the names of the second
     */
    boolean isBeside(ValueName others) {
        int different = differFrom(others);
        if (different == 2) {
            return isNext(innermost(), others.innermost());
        }
        if (different != 1) {
            return false;
        }
        for (int i = 0; i < levels.size(); i++) {
            String one = String.join("", levels.get(i));
            String other = String.join("", others.levels.get(i));
            if (!one.equals(other)) {
                return isNext(one, other) || isAlike(one, other);
            }
        }
        return false;
    }

    /**
     * Whether two values are next to each other, and the name of the second has a word that begins with one of the first: {@code layer} and
     * {@code all_layers}.
     *
     * @param others the names of the second
     */
    boolean sharesAWord(ValueName others) {
        List<String> longer = others.levels.get(others.levels.size() - 1);
        return differFrom(others) == 1
                && !levels.get(levels.size() - 1).equals(longer)
                && levels.get(levels.size() - 1).stream()
                        .filter(token -> token.length() >= LEAST_SHARED)
                        .anyMatch(token -> longer.stream().anyMatch(other -> other.startsWith(token)));
    }

    private String innermost() {
        return String.join("", levels.get(levels.size() - 1));
    }

    /** Whether one name is a number and the other the next one, such as fields 5 and 6. */
    static boolean isNext(String one, String other) {
        boolean numbers = one.matches("[0-9]{1,3}") && other.matches("[0-9]{1,3}");
        return numbers && Integer.parseInt(other) - Integer.parseInt(one) == 1;
    }

    /** One begins with the other, or they differ in a single letter. */
    private static boolean isAlike(String one, String other) {
        if (one.length() < 2 || other.length() < 2 || one.matches("[0-9]+") || other.matches("[0-9]+")) {
            return false;
        }
        if (one.length() != other.length()) {
            return one.startsWith(other) || other.startsWith(one);
        }
        int different = 0;
        for (int i = 0; i < one.length(); i++) {
            different += one.charAt(i) == other.charAt(i) ? 0 : 1;
        }
        return different == 1;
    }

    /** The words of the value's own name: the innermost name that is more than a number or a word that suits any value. */
    List<String> own() {
        for (int i = levels.size() - 1; i >= 0; i--) {
            if (levels.get(i).stream().anyMatch(ValueName::isTelling)) {
                return levels.get(i);
            }
        }
        return List.of();
    }

    private static boolean isTelling(String token) {
        return !NOT_TELLING.contains(token) && !token.chars().allMatch(Character::isDigit);
    }

    /** Whether a whole word of the value's own name refers to a concept. */
    boolean ownSpeaksOf(Concept concept) {
        return own().stream().anyMatch(Vocabulary.words(concept)::contains);
    }

    /**
     * How far in a whole word refers to a concept.
     *
     * @param concept the concept
     * @return the position of the innermost name that has such a word, from 0; −1 if none does
     */
    int wholeDepthOf(Concept concept) {
        for (int i = levels.size() - 1; i >= 0; i--) {
            if (levels.get(i).stream().anyMatch(Vocabulary.words(concept)::contains)) {
                return i;
            }
        }
        return -1;
    }

    /** The names as words, from the outermost on. */
    List<List<String>> levels() {
        return levels;
    }

    /**
     * The same without what the outermost levels say of heaters.
     *
     * @param outer how many levels say nothing
     */
    ValueName withoutHeaters(int outer) {
        ValueName silent = new ValueName(levels, topicLevels);
        for (HeatedPart heater : HeatedPart.values()) {
            if (silent.depthOf(heater.concept()) < outer) {
                silent.spokenAt.remove(heater.concept());
                silent.spokenBy.remove(heater.concept());
            }
        }
        return silent;
    }

    /** How many of the levels belong to the topic; the rest belong to the payload. */
    int topicLevels() {
        return topicLevels;
    }

    /** Whether the innermost name ends with a word that follows another. */
    boolean endWith(String token) {
        List<String> innermost = levels.get(levels.size() - 1);
        return innermost.size() > 1 && innermost.get(innermost.size() - 1).equals(token);
    }
}
