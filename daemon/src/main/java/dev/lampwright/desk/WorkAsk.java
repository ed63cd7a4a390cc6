package dev.lampwright.desk;

import dev.lampwright.look.Fitting.DimmerUse;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The level of the white lights, or of one of them. */
final class WorkAsk implements AskHandler {
    @Override
    public Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
        List<DimmerUse> dimmers = circumstances.fitting().dimmers();
        Optional<String> name = request.word("dimmer");
        float level = level(request);
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
            throw new RefusedException(missing(name, dimmers));
        }
        String what = name.orElse("white light");
        String now = Float.isNaN(level) ? what + " as the look says" : what + " " + Spoken.share(level);
        return new Outcome(before.with(before.wishes().withLevels(levels)), now);
    }

    private static float level(Request request) throws RefusedException {
        Optional<String> word = request.word("work");
        if (word.isPresent()) {
            if (!word.get().equals(Spoken.AUTO)) {
                throw new RefusedException("work is \"" + word.get() + "\"; give a number from 0 to 1, or \"auto\"");
            }
            return Float.NaN;
        }
        OptionalDouble level = request.number("work", 0, 1);
        return (float) level.orElseThrow(
                () -> new RefusedException("work is missing; give a number from 0 to 1, or \"auto\""));
    }

    private static String missing(Optional<String> name, List<DimmerUse> dimmers) {
        List<String> white =
                dimmers.stream().filter(DimmerUse::isWhite).map(DimmerUse::name).toList();
        return white.isEmpty()
                ? "there is no white light; fit one in [dimmers]"
                : "there is no white light \"" + name.orElse("") + "\"; there are: " + String.join(", ", white);
    }
}
