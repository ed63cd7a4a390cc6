package dev.lampwright.guard;

import dev.lampwright.look.Fitting;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import java.util.Arrays;
import java.util.List;

/**
 * Sends no more than three flashes in any one second. Source: WCAG 2.x, success criterion 2.3.1, and "general flash and red flash
 * thresholds"; its exception for small areas does not apply. Judged are the very bytes that leave, region by region, as {@link Regions}
 * says. Where a region would go on to a fourth flash it is held: it shows what it showed before, and stays so while the wanted light
 * would go on flashing. The frame before is lawful in every region, so holding is always possible. Allocates nothing.
 *
 * <p>Comes after the current guard and only ever mixes frames that are under the ceiling. Where such a mixture is over it, because one
 * region is held bright and another has become brighter, the whole frame before stays.
 */
public final class FlashGuard {
    private final LightReader lights;
    private final Window window;
    private final List<Region> regions;
    private final int[] shares;
    private final Frame wanted;
    private final Frame shown;
    private final Frame held;
    private long heldFrames;

    /**
     * Makes a guard that has seen nothing.
     *
     * @param setup what is fitted to the controller
     * @param fitting what looks are made for, on the same strip and dimmers
     * @param framesPerSecond the most frames in a second, 1 or more
     * @throws IllegalArgumentException if the rate is out of its range
     */
    public FlashGuard(Setup setup, Fitting fitting, int framesPerSecond) {
        lights = new LightReader(setup.order(), fitting);
        window = new Window(framesPerSecond);
        regions = Regions.of(fitting).stream()
                .map(region -> new Region(region, window, framesPerSecond))
                .toList();
        shares = new int[lights.count()];
        wanted = new Frame(setup.stripBytes(), setup.dimmers().size());
        shown = new Frame(setup.stripBytes(), setup.dimmers().size());
        held = new Frame(setup.stripBytes(), setup.dimmers().size());
    }

    /**
     * Holds what would flash too often.
     *
     * @param frame the frame about to leave, which the ceiling allows; afterwards one that both limits allow
     * @param nanos its time, later than that of the frame before
     * @param ceiling the guard of the ceiling
     */
    public void hold(Frame frame, long nanos, CurrentGuard ceiling) {
        window.moveTo(nanos);
        wanted.copyFrom(frame);
        lights.read(frame);
        for (int i = 0; i < regions.size(); i++) {
            Region region = regions.get(i);
            region.look(lights);
            if (region.keepWanted(nanos)) {
                hold(region, nanos);
            }
        }
        boolean mixed = mix(frame);
        while (holdsMore(frame, nanos)) {
            mixed = mix(frame);
        }
        if (mixed && !ceiling.allows(frame)) {
            holdAll(frame, nanos);
        }
        for (int i = 0; i < regions.size(); i++) {
            regions.get(i).keepShown();
        }
        window.add(nanos);
        shown.copyFrom(frame);
        heldFrames += mixed ? 1 : 0;
    }

    /**
     * How many frames were not quite what was wanted.
     *
     * @return frames since the start
     */
    public long heldFrames() {
        return heldFrames;
    }

    /** Holds regions that break the limit, the smallest first. Larger ones have their turn once the frame is mixed anew. */
    private boolean holdsMore(Frame frame, long nanos) {
        lights.read(frame);
        int size = Integer.MAX_VALUE;
        for (int i = 0; i < regions.size() && regions.get(i).size() <= size; i++) {
            Region region = regions.get(i);
            region.look(lights);
            if (region.breaks()) {
                hold(region, nanos);
                size = region.size();
            }
        }
        return size < Integer.MAX_VALUE;
    }

    private void holdAll(Frame frame, long nanos) {
        frame.copyFrom(shown);
        lights.read(frame);
        for (int i = 0; i < regions.size(); i++) {
            hold(regions.get(i), nanos);
            regions.get(i).look(lights);
        }
    }

    private void hold(Region region, long nanos) {
        region.hold(nanos);
        for (int i = 0; i < region.size(); i++) {
            lights.copy(region.light(i), shown, held);
        }
    }

    /** Mixes what is held with what is wanted. A light in several regions follows the one that shows the least of what is wanted. */
    private boolean mix(Frame frame) {
        boolean mixed = false;
        Arrays.fill(shares, Region.FREE);
        for (int i = 0; i < regions.size(); i++) {
            Region region = regions.get(i);
            if (region.share() < Region.FREE) {
                mixed = true;
                for (int k = 0; k < region.size(); k++) {
                    shares[region.light(k)] = Math.min(shares[region.light(k)], region.share());
                }
            }
        }
        for (int light = 0; mixed && light < shares.length; light++) {
            lights.mix(light, held, wanted, shares[light], frame);
        }
        return mixed;
    }
}
