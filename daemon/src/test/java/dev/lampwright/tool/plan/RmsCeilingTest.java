package dev.lampwright.tool.plan;

import static dev.lampwright.testing.Bounds.assertAtMost;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.guard.CurrentGuard;
import dev.lampwright.guard.Ranks;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * Random rigs and frames through the real guard: in everything that it passes, no wire or strip copper is heated by more than the plan
 * says, with all pulses beginning together.
 */
class RmsCeilingTest {
    private static final int STEPS = 256;
    private static final int FULL_DUTY = 65_535;

    private final SplittableRandom chance = new SplittableRandom(5);

    @Test
    void noFrameHeatsAnyPartMoreThanThePlanSays() {
        double nearest = 0;
        for (int round = 0; round < 60; round++) {
            PlannedLights rig = rig();
            StripModel model = new StripModel(rig);
            List<WireRun> runs = new WireRuns(rig, model).all();
            StripCopper.Worst worst = new StripCopper(rig, model, model.wired()).worst();
            Setup setup = rig.setup();
            for (int i = 0; i < 15; i++) {
                CurrentGuard guard = new CurrentGuard(
                        setup, Ranks.alike(setup.pixels(), setup.dimmers().size()), 60, 0.1);
                Frame frame = frame(setup);
                guard.hold(frame);
                nearest = Math.max(nearest, heated(rig, runs, worst, frame));
            }
        }
        assertTrue(nearest > 0.95, "frames come near the bound: " + nearest);
    }

    /** Checks one frame; returns the greatest share of a bound that it reaches. */
    private static double heated(PlannedLights rig, List<WireRun> runs, StripCopper.Worst worst, Frame frame) {
        Setup setup = rig.setup();
        ResistorLadder ladder = new StripModel(rig).wired();
        int points = rig.wiring().strip().points().size();
        double[] squares = new double[runs.size() + 1];
        for (int step = 0; step < STEPS; step++) {
            double[] pixels = pixels(setup, frame, (step + 0.5) / STEPS);
            for (int i = 0; i < points; i++) {
                int pixel = rig.wiring().strip().points().get(i).pixel();
                squares[i] += square(Rigs.dot(ladder.wireShares(pixel), pixels)) / STEPS;
            }
            if (setup.pixels() > 1) {
                squares[runs.size()] += square(Rigs.dot(ladder.segmentShares(worst.between()), pixels)) / STEPS;
            }
            for (int i = points; i < runs.size(); i++) {
                squares[i] += square(light(rig, i - points, frame, (step + 0.5) / STEPS)) / STEPS;
            }
        }
        double nearest = 0;
        for (int i = 0; i < runs.size(); i++) {
            assertAtMost(runs.get(i).rmsAmps() * 1.005 + 1e-6, Math.sqrt(squares[i]));
            nearest = Math.max(nearest, Math.sqrt(squares[i]) / runs.get(i).rmsAmps());
        }
        assertAtMost(worst.amps() * 1.005 + 1e-6, Math.sqrt(squares[runs.size()]));
        return nearest;
    }

    private static double[] pixels(Setup setup, Frame frame, double phase) {
        double[] pixels = new double[setup.pixels()];
        for (int i = 0; i < frame.strip().length; i++) {
            int channel = i % setup.channels();
            pixels[i / setup.channels()] += channel == 0 ? setup.darkMicroamps() * 1e-6 : 0;
            if (phase < (frame.strip()[i] & 0xFF) / 255.0) {
                pixels[i / setup.channels()] += setup.channelMicroamps().get(channel) * 1e-6;
            }
        }
        return pixels;
    }

    private static double light(PlannedLights rig, int index, Frame frame, double phase) {
        double amps = 0;
        for (int output : rig.wiring().lights().get(index).outputs()) {
            amps += phase < frame.duties()[output] / (double) FULL_DUTY
                    ? rig.setup().dimmers().get(output).fullMilliamps() / 1000.0
                    : 0;
        }
        return amps;
    }

    private PlannedLights rig() {
        int pixels = 1 + chance.nextInt(40);
        List<Integer> points = new ArrayList<>(List.of(0));
        if (pixels > 4 && chance.nextBoolean()) {
            points.add(1 + chance.nextInt(pixels - 1));
        }
        return Rigs.of("""
                supply.ceiling_mA = %d
                strip = { pixels = %d, channel_mA = %d, order = "%s" }
                wiring.strip.points = %s
                dimmers.work = { channel = 0, volts = 24, full_mA = %d, ceiling_mA = %d }
                dimmers.glow = { channels = [1, 2, 3], volts = 24, full_mA = %d }
                dimmers.side = { channel = 4, volts = 5, full_mA = %d }
                """.formatted(
                        pixels + 1 + chance.nextInt(pixels * 60),
                        pixels,
                        5 + chance.nextInt(15),
                        chance.nextBoolean() ? "GRB" : "GRBW",
                        points,
                        500 + chance.nextInt(4000),
                        1 + chance.nextInt(3000),
                        100 + chance.nextInt(900),
                        50 + chance.nextInt(500)));
    }

    /** Noise, a few lit pixels, everything equal, or everything at full. */
    private Frame frame(Setup setup) {
        Frame frame = new Frame(setup.stripBytes(), setup.dimmers().size());
        int kind = chance.nextInt(4);
        int level = chance.nextInt(256);
        for (int i = 0; i < frame.strip().length; i++) {
            frame.strip()[i] = (byte)
                    (kind == 0
                            ? chance.nextInt(256)
                            : kind == 1 && chance.nextInt(5) > 0 ? 0 : kind == 2 ? level : 255);
        }
        for (int i = 0; i < frame.duties().length; i++) {
            frame.duties()[i] = kind == 3 ? FULL_DUTY : chance.nextInt(FULL_DUTY + 1);
        }
        return frame;
    }

    private static double square(double amps) {
        return amps * amps;
    }
}
