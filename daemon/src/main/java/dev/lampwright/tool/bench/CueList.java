package dev.lampwright.tool.bench;

import dev.lampwright.config.ReadyLooks;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The cues in the order in which they are asked, with those that hold now. */
final class CueList {
    private CueList() {}

    /**
     * Tells them.
     *
     * @param own those of the user's own
     * @param from the word for the file that they are in
     * @param holding for each cue of the running configuration, those of the user's own first, whether it holds now; another length if the
     *     files have changed and are not in force yet
     * @return an object of JSON for each
     */
    static List<Map<String, Object>> of(List<Map<String, Object>> own, String from, List<Boolean> holding) {
        List<Map<String, Object>> all = new ArrayList<>();
        own.forEach(cue -> all.add(told(cue, from)));
        ReadyLooks.cues().forEach(cue -> all.add(told(cue, "built-in")));
        boolean known = holding.size() == all.size();
        boolean chosen = false;
        for (int i = 0; i < all.size(); i++) {
            boolean holds = known && holding.get(i);
            all.get(i).put("holds", known ? holds : null);
            all.get(i).put("on", holds && !chosen);
            chosen |= holds;
        }
        return all;
    }

    private static Map<String, Object> told(Map<String, Object> cue, String from) {
        Map<String, Object> told = new LinkedHashMap<>();
        told.put("cue", cue);
        told.put("from", from);
        told.put("sentence", sentence(cue));
        return told;
    }

    private static String sentence(Map<String, Object> cue) {
        List<String> parts = new ArrayList<>();
        add(parts, cue, "state", "");
        add(parts, cue, "any", "any printer is ");
        add(parts, cue, "all", "all printers are ");
        add(parts, cue, "alarm", "the alarm is ");
        if (cue.containsKey("signal")) {
            parts.add(cue.get("signal")
                    + (cue.containsKey("above") ? " is above " + cue.get("above") : "")
                    + (cue.containsKey("above") && cue.containsKey("below") ? " and" : "")
                    + (cue.containsKey("below") ? " is below " + cue.get("below") : ""));
        }
        add(parts, cue, "event", "during ");
        add(parts, cue, "view", "in the view ");
        return parts.isEmpty() ? "otherwise" : "while " + String.join(", and ", parts);
    }

    private static void add(List<String> parts, Map<String, Object> cue, String key, String before) {
        if (cue.get(key) instanceof List<?> several) {
            parts.add(before
                    + String.join(" or ", several.stream().map(String::valueOf).toList()));
        } else if (cue.containsKey(key)) {
            parts.add(before + cue.get(key));
        }
    }
}
