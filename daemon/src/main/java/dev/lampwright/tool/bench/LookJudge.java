package dev.lampwright.tool.bench;

import dev.lampwright.colour.ColourVision;
import dev.lampwright.config.Config;
import dev.lampwright.config.Examined;
import dev.lampwright.tool.check.CheckMemory;
import dev.lampwright.tool.check.FlashCheck;
import dev.lampwright.tool.check.LookMistakes;
import dev.lampwright.tool.check.VisionCheck;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What {@code check} would say about a look, and how close the look comes to the limits. */
final class LookJudge {
    private static final int MOST_FLASHES = 3;

    private LookJudge() {}

    /**
     * Judges a look that is in no file yet: what saving it would be refused for, in the same words, and what it draws.
     *
     * @param files what it would be read with
     * @param plan how it would be saved
     * @param look the look
     * @param alike whether it is to be compared with what other states put on, which takes longest
     * @param memory has the results of looks that were drawn before
     * @param patience ends it
     * @return {@code ok}, {@code mistakes}, {@code sentences} and, if it can be drawn, what is measured
     */
    static Map<String, Object> judge(
            BenchFiles files, EditPlan plan, BenchLook look, boolean alike, CheckMemory memory, DrawPatience patience)
            throws BenchRefusal {
        EditPlan.Verdict found = plan.verdict(files, memory, patience);
        Map<String, Object> verdict = new LinkedHashMap<>();
        verdict.put("ok", found.mistakes().isEmpty());
        verdict.put("mistakes", plan.told(found.mistakes()));
        verdict.put("sentences", LookSentences.of(look));
        if (found.examined().isPresent()) {
            Examined examined = found.examined().get();
            verdict.put("current", LookCurrent.of(examined.config(), look.name(), patience));
            verdict.put("flashes", flashes(examined, look, patience));
            if (alike) {
                verdict.put("alike", alike(examined.config(), look.name(), patience));
            }
        }
        return verdict;
    }

    private static Map<String, Object> flashes(Examined examined, BenchLook look, DrawPatience patience) {
        FlashCheck.Flashing measured = FlashCheck.measured(examined.config(), look.name(), patience.progress());
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

    private static List<Map<String, Object>> alike(Config config, String look, DrawPatience patience) {
        List<Map<String, Object>> alike = new ArrayList<>();
        for (VisionCheck.Alike pair : VisionCheck.of(config, patience.progress())) {
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
