package dev.lampwright.desk;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.cue.Wishes;
import java.time.Duration;
import java.util.TreeSet;

/** A look, for a time. */
final class LookAsk implements AskHandler {
    /** How long a look stays that nobody gave a time for. */
    static final Duration USUAL = Duration.ofMinutes(1);

    @Override
    public Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
        String name = request.needWord("look", "give the name of a look, or \"auto\"");
        Duration time = request.lasting(USUAL);
        Wishes wishes = before.wishes();
        if (name.equals(Spoken.AUTO)) {
            return new Outcome(before.with(wishes.withLook("", circumstances.nanos())), "look as the cues say");
        }
        if (!circumstances.looks().contains(name)) {
            throw new RefusedException("there is no look \"" + name + "\"; there are: "
                    + String.join(", ", new TreeSet<>(circumstances.looks())));
        }
        StandingWishes standing = before.with(wishes.withLook(name, circumstances.nanos() + time.toNanos()));
        String later = circumstances.alarm() == AlarmState.NORMAL ? "" : ", once the fault is seen and over";
        return new Outcome(standing, "look " + name + " for " + Spoken.seconds(time) + later);
    }
}
