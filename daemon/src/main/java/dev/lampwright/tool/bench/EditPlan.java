package dev.lampwright.tool.bench;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.Examined;
import dev.lampwright.config.Mistake;
import dev.lampwright.tool.bench.LookShelves.From;
import dev.lampwright.tool.check.CheckMemory;
import dev.lampwright.tool.check.LookMistakes;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A change of a file that is not made yet. Checking a look and saving it go through the same plan, so that they refuse the same.
 *
 * @param in which file
 * @param look of which look; empty for cues
 * @param was the look's name before; the same unless it is renamed
 * @param did what it is
 * @param before the texts that it was made from
 * @param next what is to be in the file
 */
record EditPlan(From in, String look, String was, String did, BenchTexts before, String next) {
    private static final String REMOVED = "removed";

    /** All texts as they are to be. */
    BenchTexts after() {
        return before.with(in, next);
    }

    /**
     * What the files would be with it, and what {@code check} would say of them.
     *
     * @param examined the files; empty if they cannot be read
     * @param mistakes why it is refused; none if it is not
     */
    record Verdict(Optional<Examined> examined, List<Mistake> mistakes) {}

    /** Checks all files as {@code check} does, as they would be. */
    Verdict verdict(BenchFiles files, CheckMemory memory, DrawPatience patience) {
        try {
            Examined examined = files.examine(after());
            return new Verdict(Optional.of(examined), LookMistakes.of(examined, patience.progress(), memory));
        } catch (ConfigException e) {
            return new Verdict(Optional.empty(), e.mistakes());
        }
    }

    /** Mistakes at the layers or the cues that they are about. */
    List<Map<String, Object>> told(List<Mistake> mistakes) {
        return look.isEmpty()
                ? ToldMistakes.ofCues(mistakes)
                : ToldMistakes.ofLook(mistakes, List.of(BenchLook.LOOKS, look));
    }

    /** That it is refused. */
    BenchRefusal refused(List<Mistake> mistakes) {
        boolean goes = did.equals(REMOVED);
        Mistake first = mistakes.get(0);
        return new BenchRefusal(goes ? 409 : 422, goes ? "in_use" : "mistakes", first.sentence())
                .with("what", first.what())
                .with("instead", first.whatWouldBeRight())
                .and(Map.of("mistakes", told(mistakes)));
    }
}
