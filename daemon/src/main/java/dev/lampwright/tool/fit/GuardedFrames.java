package dev.lampwright.tool.fit;

import dev.lampwright.guard.GuardSettings;
import dev.lampwright.guard.Guards;
import dev.lampwright.look.Fitting;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** Makes frames from scenes; all of them pass the same guards as in the daemon. */
final class GuardedFrames {
    private final Guards guards;
    private final Frame wanted;

    /**
     * Prepares for one set-up.
     *
     * @param setup the active set-up
     * @param framesPerSecond the maximum number of frames per second
     */
    GuardedFrames(Setup setup, int framesPerSecond) {
        guards = new Guards(setup, fitting(setup), GuardSettings.USUAL, framesPerSecond);
        wanted = new Frame(setup.stripBytes(), setup.dimmers().size());
    }

    /**
     * Makes a frame.
     *
     * @param scene what to show
     * @param seconds since it began
     * @param nanos the frame's time, later than that of the previous frame
     * @param frame where to write it
     * @return whether the guards let the scene through as it is
     */
    boolean make(Scene scene, double seconds, long nanos, Frame frame) {
        wanted.darken();
        scene.draw(seconds, wanted);
        frame.copyFrom(wanted);
        guards.hold(frame, nanos);
        return Arrays.equals(wanted.strip(), frame.strip()) && Arrays.equals(wanted.duties(), frame.duties());
    }

    private static Fitting fitting(Setup setup) {
        List<Fitting.DimmerUse> dimmers = IntStream.range(0, setup.dimmers().size())
                .mapToObj(i -> Fitting.DimmerUse.white("dimmer" + i))
                .toList();
        return new Fitting(setup.pixels(), Map.of(), dimmers);
    }
}
