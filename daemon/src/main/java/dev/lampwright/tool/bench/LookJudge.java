package dev.lampwright.tool.bench;

import dev.lampwright.colour.ColourVision;
import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.Examined;
import dev.lampwright.config.Mistake;
import dev.lampwright.tool.check.FlashCheck;
import dev.lampwright.tool.check.LookMistakes;
import dev.lampwright.tool.check.VisionCheck;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What {@code check} would say of a look, and how much room it leaves. */
final class LookJudge {
    private static final int MOST_FLASHES = 3;

    private LookJudge() {}

    /**
     * Judges a look that is in no file yet.
     *
     * @param files what it would be read with
     * @param look the look
     * @param alike whether it is to be compared with what other states put on, which takes longest
     * @return {@code ok}, {@code mistakes}, {@code sentences} and, if it can be drawn, what is measured
     */
    static Map<String, Object> judge(BenchFiles files, BenchLook look, boolean alike) throws BenchRefusal {
        Map<String, Object> verdict = new LinkedHashMap<>();
        try {
            Examined examined = files.examine(look);
            List<Mistake> mistakes = LookMistakes.of(examined, look.name());
            verdict.put("ok", mistakes.isEmpty());
            verdict.put("mistakes", told(mistakes, look.path(), BenchLook.LAYERS, "layer"));
            verdict.put("sentences", LookSentences.of(look));
            verdict.put("current", LookCurrent.of(examined.config(), look.name()));
            verdict.put("flashes", flashes(examined, look));
            if (alike) {
                verdict.put("alike", alike(examined.config(), look.name()));
            }
        } catch (ConfigException e) {
            verdict.put("ok", false);
            verdict.put("mistakes", told(e.mistakes(), look.path(), BenchLook.LAYERS, "layer"));
            verdict.put("sentences", LookSentences.of(look));
        }
        return verdict;
    }

    /**
     * Mistakes at the parts that they are about.
     *
     * @param mistakes the mistakes
     * @param path path of what has the parts
     * @param array the key of the parts; empty if the path leads to them
     * @param part what to call a part's index
     */
    static List<Map<String, Object>> told(List<Mistake> mistakes, List<String> path, String array, String part) {
        List<Map<String, Object>> told = new ArrayList<>();
        for (Mistake mistake : mistakes) {
            List<String> where = new ArrayList<>(mistake.within(path).orElse(List.of()));
            boolean inPart =
                    array.isEmpty() || (where.size() > 1 && where.get(0).equals(array));
            Integer index = null;
            if (inPart && !where.isEmpty()) {
                where = where.subList(array.isEmpty() ? 0 : 1, where.size());
                index = Integer.valueOf(where.get(0));
                where = where.subList(1, where.size());
            }
            Map<String, Object> one = new LinkedHashMap<>();
            one.put(part, index);
            one.put("key", String.join(".", where));
            one.put("what", mistake.what());
            one.put("instead", mistake.whatWouldBeRight());
            one.put("text", mistake.sentence());
            told.add(one);
        }
        return told;
    }

    private static Map<String, Object> flashes(Examined examined, BenchLook look) {
        FlashCheck.Flashing measured = FlashCheck.measured(examined.config(), look.name());
        Map<String, Object> flashes = new LinkedHashMap<>();
        flashes.put("most", measured.flashes());
        flashes.put("limit", MOST_FLASHES);
        flashes.put(
                "layers",
                measured.layers().stream()
                        .map(drawn -> LookMistakes.place(examined, look.name(), drawn))
                        .filter(layer -> layer >= 0)
                        .toList());
        return flashes;
    }

    private static List<Map<String, Object>> alike(Config config, String look) {
        List<Map<String, Object>> alike = new ArrayList<>();
        for (VisionCheck.Alike pair : VisionCheck.of(config)) {
            if (pair.oneLook().equals(look) || pair.otherLook().equals(look)) {
                Map<String, Object> one = new LinkedHashMap<>();
                one.put("state", pair.one().word());
                one.put("other", pair.other().word());
                one.put("look", pair.oneLook());
                one.put("other_look", pair.otherLook());
                one.put("to", pair.to().stream().map(LookJudge::word).toList());
                alike.add(one);
            }
        }
        return alike;
    }

    private static String word(ColourVision vision) {
        return vision.name().toLowerCase(Locale.ROOT);
    }
}
