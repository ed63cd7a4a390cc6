package dev.lampwright.guard;

import dev.lampwright.protocol.Frame;
import java.util.function.Function;
import java.util.function.ToLongFunction;

/**
 * The limit itself: no more than three flashes in any second, each a pair of opposing transitions, so no more than seven transitions. And
 * light goes down a last time only if it may soon go up again, so that held light is lit. If the traces leave no doubt, they decide;
 * otherwise the frames of the last second are counted again.
 */
final class Recount {
    /**
     * A second that begins within a transition may have one that the traces attribute to the time before, and traces of red may be one
     * behind: two in all that they do not know about.
     */
    private static final int UNKNOWN = 2;

    private final History history;
    private final LightReader lights;
    private final LightMeasure measure;
    private final Regions.Sum then = new Regions.Sum();

    /** A measure of a region, as last evaluated. */
    private interface Now {
        long of(Regions regions, int region);
    }

    /** What is counted. */
    private record Kind(
            Function<Flicker, Traces> traces, Now now, ToLongFunction<Regions.Sum> then, boolean onlyIfRed) {
        private static final Kind[] ALL = {
            new Kind(Flicker::general, Regions::luminance, Regions.Sum::luminance, false),
            new Kind(Flicker::red, Regions::redness, Regions.Sum::redness, true),
            new Kind(Flicker::hue, Regions::hue, Regions.Sum::hue, true)
        };

        Traces traces(Regions regions) {
            return traces.apply(regions.shown());
        }

        long now(Regions regions, int region) {
            return now.of(regions, region);
        }

        long then(Regions.Sum sum) {
            return then.applyAsLong(sum);
        }

        /** A change of luminance always counts, a change of red only if saturated red is at one of its ends. */
        boolean mark(boolean isRed) {
            return isRed || !onlyIfRed;
        }
    }

    /**
     * Creates the limit.
     *
     * @param history what was shown
     * @param lights reads frames of the history; exclusively used here
     */
    Recount(History history, LightReader lights) {
        this.history = history;
        this.lights = lights;
        measure = LightMeasure.ofSingleLights(lights.count());
    }

    /**
     * Whether the light of a region may follow what it has shown.
     *
     * @param regions regions that have evaluated the light in question
     * @param region which of them
     * @param withRed whether red flashes count as well
     * @return false if it would break the limit
     */
    boolean admits(Regions regions, int region, boolean withRed) {
        for (Kind kind : Kind.ALL) {
            if (kind.onlyIfRed && !withRed) {
                continue;
            }
            boolean mark = kind.mark(regions.isRed(region));
            boolean moves = kind.traces(regions).wouldMove(region, kind.now(regions, region), mark);
            if (moves && !isWithin(kind, regions, region)) {
                return false;
            }
        }
        return true;
    }

    private boolean isWithin(Kind kind, Regions regions, int region) {
        int most = history.mostTransitions();
        int before = kind.traces(regions).transitionsAfter(region, history.base());
        if (before + UNKNOWN + 1 <= most) {
            return true;
        }
        Swings swings = count(kind, regions, region, history.base());
        if (swings.count() != most || !swings.isDown()) {
            return swings.count() <= most;
        }
        return count(kind, regions, region, history.baseAtNextRise()).count() < most;
    }

    private Swings count(Kind kind, Regions regions, int region, long base) {
        Swings swings = kind.traces(regions).swings();
        swings.restart();
        for (long number = Math.max(base, history.oldest()); number <= history.newest(); number++) {
            look(history.frame(number), regions, region);
            regions.add(region, measure, then);
            swings.add(kind.then(then), kind.mark(then.isRed()));
        }
        swings.add(kind.now(regions, region), kind.mark(regions.isRed(region)));
        return swings;
    }

    private void look(Frame frame, Regions regions, int region) {
        for (int i = 0; i < regions.size(region); i++) {
            int light = regions.light(region, i);
            lights.read(frame, light);
            measure.look(light, lights);
        }
    }
}
