package dev.lampwright.tool.bench;

import dev.lampwright.config.Mistake;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Mistakes as objects of JSON, each at the layer or the cue that it is about. */
final class ToldMistakes {
    private ToldMistakes() {}

    /** Those of a look. */
    static List<Map<String, Object>> ofLook(List<Mistake> mistakes, List<String> path) {
        return told(mistakes, path, BenchLook.LAYERS, "layer");
    }

    /** Those of the cues. */
    static List<Map<String, Object>> ofCues(List<Mistake> mistakes) {
        return told(mistakes, CueText.PATH, "", "cue");
    }

    /**
     * Mistakes at the parts that they are about.
     *
     * @param mistakes the mistakes
     * @param path path of what has the parts
     * @param array the key of the parts; empty if the path leads to them
     * @param part what to call a part's index
     */
    private static List<Map<String, Object>> told(
            List<Mistake> mistakes, List<String> path, String array, String part) {
        return mistakes.stream()
                .map(mistake -> told(mistake, mistake.within(path), array, part))
                .toList();
    }

    private static Map<String, Object> told(Mistake mistake, Optional<List<String>> within, String array, String part) {
        List<String> where = new ArrayList<>(within.orElse(List.of()));
        boolean inPart = array.isEmpty() || (where.size() > 1 && where.get(0).equals(array));
        Integer index = null;
        if (inPart && !where.isEmpty()) {
            where = where.subList(array.isEmpty() ? 0 : 1, where.size());
            index = Integer.valueOf(where.get(0));
            where = where.subList(1, where.size());
        }
        boolean elsewhere = within.isEmpty() && !mistake.key().isEmpty();
        Map<String, Object> one = new LinkedHashMap<>();
        one.put(part, index);
        one.put("key", String.join(".", where));
        one.put("at", mistake.key());
        one.put("elsewhere", within.isEmpty());
        one.put("what", (elsewhere ? mistake.key() + ": " : "") + mistake.what());
        one.put("instead", mistake.whatWouldBeRight());
        one.put("text", mistake.sentence());
        one.put("code", mistake.code());
        one.put("values", mistake.values());
        return one;
    }
}
