package dev.lampwright.desk;

import dev.lampwright.desk.StandingWishes.Quiet;
import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The quiet of the night, at once or not at all. */
final class QuietAsk implements AskHandler {
    private static final Map<String, Quiet> WORDS = Map.of("on", Quiet.ON, "off", Quiet.OFF, Spoken.AUTO, Quiet.AUTO);
    private static final String WANTED = "give \"on\", \"off\" or \"auto\"";
    private static final Duration LONGEST = Duration.ofDays(365 * 100);

    @Override
    public Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
        String word = request.needWord("quiet", WANTED);
        Quiet quiet = WORDS.get(word);
        if (quiet == null) {
            throw new RefusedException("quiet is \"" + word + "\"; " + WANTED);
        }
        Optional<Duration> time = request.lastingIfSaid();
        StandingWishes standing =
                before.with(quiet, circumstances.nanos() + time.orElse(LONGEST).toNanos());
        String now = quiet == Quiet.AUTO && !circumstances.hasQuietHours()
                ? "auto, and there are no hours in [quiet]"
                : quiet.name().toLowerCase(Locale.ROOT);
        return new Outcome(
                standing,
                "quiet " + now + time.map(t -> " for " + Spoken.seconds(t)).orElse(""));
    }
}
