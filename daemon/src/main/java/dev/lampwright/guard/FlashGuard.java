package dev.lampwright.guard;

import dev.lampwright.look.Fitting;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Shows no more than three flashes in any one second. Source: WCAG 2.2, success criterion 2.3.1, and "general flash and red flash
 * thresholds"; its exceptions for small areas and fine patterns do not apply. Judges the exact bytes that are sent: each light by itself,
 * each run of eight neighbouring pixels, each zone, the whole strip, and all the light in the room. A region that would continue to a
 * fourth flash is held: it shows what it showed before, and keeps doing so while the wanted light would keep flashing. The previous frame
 * is within the limit in every region, so holding is always possible. Allocates nothing.
 *
 * <p>Comes after the current guard and only mixes frames that are under the ceiling. If such a mixture is over it, because one region is
 * held bright and another has become brighter, the whole previous frame stays.
 */
public final class FlashGuard {
    private final LightReader lights;
    private final LightMeasure measure;
    private final Holding singles;
    private final Holding runs;
    private final List<Holding> areas;
    private final List<Holding> all = new ArrayList<>();
    private final int[] shares;
    private final Frame wanted;
    private final Frame shown;
    private final Frame held;
    private final LightReader pastLights;
    private History history;
    private Recount limit;
    private long heldFrames;
    /** Number of the last frame with a light that is saturated red, −1 if there was none. */
    private long lastRed = -1;

    /**
     * Creates a guard that has seen nothing.
     *
     * @param setup what is fitted to the controller
     * @param fitting what looks are made for, on the same strip and dimmers
     * @param volts voltage of each supply, by its index; {@link GuardSettings#USUAL_VOLTS} if missing
     * @param framesPerSecond the maximum frames per second, 1 or more
     * @throws IllegalArgumentException if the rate is out of its range
     */
    public FlashGuard(Setup setup, Fitting fitting, List<Double> volts, int framesPerSecond) {
        history = new History(setup.stripBytes(), setup.dimmers().size(), framesPerSecond);
        lights = new LightReader(setup.order(), fitting);
        pastLights = new LightReader(setup.order(), fitting);
        measure = LightMeasure.ofFrames(lights.count());
        limit = new Recount(history, pastLights);
        singles = new Holding(new SingleLights(lights.count(), Holding.DEPTH), framesPerSecond);
        runs = new Holding(new PixelRuns(fitting.pixels(), Holding.DEPTH), framesPerSecond);
        areas = Areas.of(setup, fitting, volts, Holding.DEPTH).stream()
                .map(area -> new Holding(area, framesPerSecond))
                .toList();
        all.add(singles);
        all.add(runs);
        all.addAll(areas);
        shares = new int[lights.count()];
        wanted = new Frame(setup.stripBytes(), setup.dimmers().size());
        shown = new Frame(setup.stripBytes(), setup.dimmers().size());
        held = new Frame(setup.stripBytes(), setup.dimmers().size());
    }

    /**
     * Continues from what another guard has shown on the same lights, however they are grouped.
     *
     * @param before a guard with equally many pixels and dimmers, in the same order, at the same rate
     */
    void takeOver(FlashGuard before) {
        history = before.history;
        limit = new Recount(history, pastLights);
        shown.copyFrom(before.shown);
        heldFrames = before.heldFrames;
        for (long number = history.oldest(); number <= history.newest(); number++) {
            look(history.frame(number));
            keep(number, false);
        }
    }

    /** Sets how late light usually is, in ns. */
    void expectLate(long nanos) {
        history.expectLate(nanos);
    }

    /** Sets how late light has been recently, in ns. */
    void wereLate(long nanos) {
        history.wereLate(nanos);
    }

    /** Notes that the controller may have gone dark and come back by itself. */
    void relit() {
        history.relit();
    }

    /**
     * Holds what would flash too often.
     *
     * @param frame the frame about to be sent, which the ceiling allows; afterwards one that both limits allow
     * @param nanos its time, later than that of the previous frame
     * @param ceiling the guard of the ceiling
     * @return whether anything is held or returning, so that the frame may have changed
     */
    public boolean hold(Frame frame, long nanos, CurrentGuard ceiling) {
        history.moveTo(nanos);
        if (isFree() && isShown(frame)) {
            return false;
        }
        boolean mixed = mix(frame, nanos);
        look(frame);
        if (!history.hasRoom()) {
            holdAll(frame, nanos);
        }
        boolean withRed = redCounts();
        mixed |= holdFlashing(frame, nanos);
        if (mixed && !ceiling.allows(frame)) {
            holdAll(frame, nanos);
        }
        show(frame, !mixed && withRed == redWillCount());
        boolean free = isFree();
        heldFrames += free ? 0 : 1;
        return !free;
    }

    /**
     * Passes a frame that is the same as the last, while this {@link #isFree}.
     *
     * @param nanos its time, later than that of the previous frame
     */
    void pass(long nanos) {
        history.moveTo(nanos);
    }

    /**
     * How many frames were not exactly as wanted.
     *
     * @return frames since the start
     */
    public long heldFrames() {
        return heldFrames;
    }

    /** Whether no light is held or returning, so that the last frame was as wanted. */
    boolean isFree() {
        for (int i = 0; i < all.size(); i++) {
            if (all.get(i).count() > 0) {
                return false;
            }
        }
        return true;
    }

    private boolean isShown(Frame frame) {
        return history.newest() >= 0 && shown.sameAs(frame);
    }

    private void look(Frame frame) {
        lights.read(frame);
        measure.look(lights);
        for (int i = 0; i < all.size(); i++) {
            all.get(i).regions().look(measure);
        }
    }

    /**
     * Mixes what is held with what is wanted. A light in several regions follows the one that shows the smallest share of what is wanted.
     * The wanted light of a larger region is what the smaller ones leave of it: otherwise a held pixel would hold its neighbours for ever.
     *
     * @return whether any region is not free
     */
    private boolean mix(Frame frame, long nanos) {
        if (isFree()) {
            return false;
        }
        wanted.copyFrom(frame);
        Arrays.fill(shares, Holding.FREE);
        for (int i = 0; i < all.size(); i++) {
            Holding holding = all.get(i);
            if (holding.count() > 0) {
                look(frame);
                holding.follow(nanos);
                share(holding);
                for (int light = 0; light < shares.length; light++) {
                    lights.mix(light, held, wanted, shares[light], frame);
                }
            }
        }
        return true;
    }

    private void share(Holding holding) {
        Regions regions = holding.regions();
        for (int i = 0; i < holding.count(); i++) {
            int region = holding.region(i);
            for (int k = 0; k < regions.size(region); k++) {
                int light = regions.light(region, k);
                shares[light] = Math.min(shares[light], holding.share(region));
            }
        }
    }

    /**
     * Holds regions that break the limit, single lights first, then runs, then areas, the smallest first; what is held is checked again
     * before anything larger.
     *
     * @return whether any was held
     */
    private boolean holdFlashing(Frame frame, long nanos) {
        boolean any = holdFlashing(singles, frame, nanos);
        boolean more = true;
        while (more) {
            while (holdFlashing(runs, frame, nanos)) {
                any = true;
            }
            more = false;
            for (int i = 0; i < areas.size() && !more; i++) {
                more = holdFlashing(areas.get(i), frame, nanos);
            }
            any |= more;
        }
        return any;
    }

    /** After a held region, continues with the first that shares no light with it, because the light of the others has changed. */
    private boolean holdFlashing(Holding holding, Frame frame, long nanos) {
        Regions regions = holding.regions();
        boolean any = false;
        boolean withRed = redCounts();
        regions.shown().beginSearch();
        int region = regions.shown().firstMove(regions, 0, withRed);
        while (region < regions.count()) {
            boolean breaks = !limit.admits(regions, region, withRed);
            if (breaks) {
                hold(holding, region, frame, nanos);
                any = true;
            }
            region = regions.shown().firstMove(regions, region + (breaks ? regions.size(region) : 1), withRed);
        }
        if (any) {
            look(frame);
        }
        return any;
    }

    private void hold(Holding holding, int region, Frame frame, long nanos) {
        holding.hold(region, nanos);
        for (int i = 0; i < holding.regions().size(region); i++) {
            int light = holding.regions().light(region, i);
            lights.copy(light, shown, held);
            lights.copy(light, shown, frame);
        }
    }

    private void holdAll(Frame frame, long nanos) {
        frame.copyFrom(shown);
        held.copyFrom(shown);
        look(frame);
        for (int i = 0; i < all.size(); i++) {
            all.get(i).holdAll(nanos);
        }
    }

    /** What has been searched for flashes and left unchanged need not be searched again. */
    private void show(Frame frame, boolean searched) {
        if (!isShown(frame)) {
            keep(history.newest() + 1, searched);
            history.add(frame);
            shown.copyFrom(frame);
        }
    }

    /**
     * Whether any light has been saturated red as far as the history goes back. Otherwise no change counts as a red flash, and the first
     * red is one at most, which is allowed.
     */
    private boolean redCounts() {
        return lastRed >= history.oldest();
    }

    private boolean redWillCount() {
        return redCounts() || isRed();
    }

    private boolean isRed() {
        return measure.isAnyRed(0, lights.count());
    }

    /** Follows red only while it counts. With the next red, the traces may be one transition behind, which {@link Recount} allows for. */
    private void keep(long number, boolean searched) {
        boolean withRed = redWillCount();
        lastRed = isRed() ? number : lastRed;
        for (int i = 0; i < all.size(); i++) {
            Regions regions = all.get(i).regions();
            if (searched) {
                regions.shown().keepSearched(regions, number, withRed);
            } else {
                regions.shown().keepAll(regions, number, withRed);
            }
        }
    }
}
