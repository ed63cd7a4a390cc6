package dev.lampwright.config;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A key of the file, described for programs that let people edit looks. It comes from the table of keys that reads the file.
 *
 * @param name as it is written in the file
 * @param kind {@code number}, {@code whole}, {@code flag}, {@code word}, {@code text}, or what else it is: {@code colour}, {@code zone}
 * @param low least number that it may be, if it is one
 * @param high most number that it may be, if it is one
 * @param choices the words that it may be; empty unless it is one of a few
 * @param usual a number, a text or a {@code Boolean} that is taken if the key is left out; empty if there is none, or it depends
 * @param type what it may be, in words
 * @param without what holds if it is left out, in words
 * @param with what it goes with, in words; empty if it always applies
 * @param when the same for programs: the key applies if any of these holds, a key with the values of which it has one, or with no values
 *     if the key only has to be there
 * @param help what it is, in one line
 */
public record KeyNote(
        String name,
        String kind,
        OptionalDouble low,
        OptionalDouble high,
        List<String> choices,
        Optional<Object> usual,
        String type,
        String without,
        String with,
        Map<String, List<String>> when,
        String help) {

    private static final Pattern PART = Pattern.compile("\"([^\"]*)\"|([A-Za-z_]+)");
    private static final String OR = "or";

    /**
     * The keys of a layer of a look.
     *
     * @return in the order of the reference
     */
    public static List<KeyNote> ofLayer() {
        return of(LayerKeys.SECTION);
    }

    /**
     * The keys of a look.
     *
     * @return in the order of the reference
     */
    public static List<KeyNote> ofLook() {
        return of(LooksSection.SECTION);
    }

    /**
     * The keys of a white light of a look that follows a signal.
     *
     * @return in the order of the reference
     */
    public static List<KeyNote> ofLevel() {
        return of(LooksSection.LEVEL);
    }

    /**
     * The keys of a cue.
     *
     * @return in the order of the reference
     */
    public static List<KeyNote> ofCue() {
        return of(CuesSection.SECTION);
    }

    private static List<KeyNote> of(Section section) {
        return section.keys().stream().map(KeyNote::of).toList();
    }

    private static KeyNote of(Key<?> key) {
        KeyShape shape = key.shape();
        return new KeyNote(
                key.name(),
                shape.kind(),
                shape.low(),
                shape.high(),
                shape.choices(),
                usual(key),
                key.type(),
                key.without(),
                key.goesWith(),
                when(key.goesWith()),
                key.help());
    }

    /** What stands for something else has the word that stands for it. */
    private static Optional<Object> usual(Key<?> key) {
        Optional<?> usual = key.usual();
        return usual.filter(value -> value instanceof Number || value instanceof Boolean)
                .<Object>map(value -> value)
                .or(() -> usual.map(any -> key.without().replaceFirst("[,:].*", "")));
    }

    /** Takes the words that the reference has, such as {@code paint = "scale", extent = "bar" or "pointer"}, apart. */
    private static Map<String, List<String>> when(String goesWith) {
        Map<String, List<String>> when = new LinkedHashMap<>();
        List<String> values = new ArrayList<>();
        Matcher part = PART.matcher(goesWith);
        while (part.find()) {
            if (part.group(1) != null) {
                values.add(part.group(1));
            } else if (!part.group(2).equals(OR)) {
                values = when.computeIfAbsent(part.group(2), any -> new ArrayList<>());
            }
        }
        return when;
    }
}
