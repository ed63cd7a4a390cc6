package dev.lampwright.desk;

import dev.lampwright.desk.Ask.Outcome;
import dev.lampwright.look.Fitting.DimmerUse;
import java.util.List;
import java.util.Optional;

/** The white lights among the dimmers, all of which or one of which may be given a level. */
final class WhiteLights {
    private final List<DimmerUse> dimmers;

    /**
     * Looks for them.
     *
     * @param dimmers all that are fitted
     */
    WhiteLights(List<DimmerUse> dimmers) {
        this.dimmers = dimmers;
    }

    /** Sets the level that a request asks for, as {@link Ask#done} does. */
    Outcome done(Ask ask, Request request, StandingWishes before) throws RefusedException {
        Optional<String> name = request.word(Ask.Key.DIMMER.key());
        float level = level(ask, request);
        float[] levels = before.wishes().levels(dimmers.size());
        boolean found = false;
        for (int i = 0; i < levels.length; i++) {
            DimmerUse use = dimmers.get(i);
            if (use.isWhite() && name.map(use.name()::equals).orElse(true)) {
                levels[i] = level;
                found = true;
            }
        }
        if (!found) {
            throw new RefusedException(missing(name.orElse("")));
        }
        String what = name.orElse("white light");
        String now = Float.isNaN(level) ? what + " as the look says" : what + " " + Spoken.share(level);
        return new Outcome(before.with(before.wishes().withLevels(levels)), now);
    }

    private static float level(Ask ask, Request request) throws RefusedException {
        Optional<String> word = request.word(ask.word());
        if (word.isPresent()) {
            if (!word.get().equals(Spoken.AUTO)) {
                throw new RefusedException(ask.word() + " is \"" + Request.shown(word.get()) + "\"; " + ask.wanted());
            }
            return Float.NaN;
        }
        return (float) request.number(ask.word(), 0, 1).orElseThrow(ask::missing);
    }

    private String missing(String name) {
        List<String> white =
                dimmers.stream().filter(DimmerUse::isWhite).map(DimmerUse::name).toList();
        return white.isEmpty()
                ? "there is no white light; fit one in [dimmers]"
                : "there is no white light \"" + Request.shown(name) + "\"; choose one of: " + String.join(", ", white);
    }
}
