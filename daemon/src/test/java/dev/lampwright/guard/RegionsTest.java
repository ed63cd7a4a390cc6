package dev.lampwright.guard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Which lights are judged together, their weights, and their combined light. */
class RegionsTest {
    private static final int DEPTH = 8;
    private static final List<Double> VOLTS = List.of(5.0, 24.0);

    /** 20 pixels with white, a white lamp of 24 V and 1 A, and a plain colour strip of 24 V on its own dimmers 2, 0 and 1. */
    private static final Setup SETUP = new Setup(
            20,
            "GRBW",
            List.of(10_000, 12_000, 14_000, 20_000),
            1000,
            0,
            3000,
            WhenSilent.DARK,
            List.of(60_000, 10_000),
            List.of(
                    new Setup.Dimmer(1, 1000, 0),
                    new Setup.Dimmer(1, 100, 0),
                    new Setup.Dimmer(1, 200, 0),
                    new Setup.Dimmer(1, 300, 0)));

    private static final Fitting FITTING = new Fitting(
            20,
            zones(),
            List.of(
                    Fitting.DimmerUse.white("work"),
                    new Fitting.DimmerUse("cove", 20, 2),
                    new Fitting.DimmerUse("cove", 20, 0),
                    new Fitting.DimmerUse("cove", 20, 1)));

    private final SplittableRandom chance = new SplittableRandom(3);
    private final LightReader lights = new LightReader("GRBW", FITTING);
    private final LightMeasure measure = LightMeasure.ofFrames(lights.count());

    private static Map<String, Zone> zones() {
        Map<String, Zone> zones = new LinkedHashMap<>();
        zones.put("strip", Zone.run(0, 19));
        zones.put("bed", Zone.run(9, 3));
        zones.put("again", Zone.run(3, 9));
        zones.put("one", Zone.run(7, 7));
        zones.put("plain", Zone.run(20, 20));
        return zones;
    }

    /** Running totals match plain sums, for every kind of region and any light. */
    @Test
    void everyRegionIsTheSumOfItsLights() {
        List<Regions> all = List.of(
                new SingleLights(lights.count(), DEPTH),
                new PixelRuns(20, DEPTH),
                Area.ofEqual(new int[] {0, 1, 2, 7, 8, 12, 21}, DEPTH),
                new Area(new int[] {2, 3, 4, 5, 9}, new long[] {1, 1, 7, 7, 3}, DEPTH));
        for (int frame = 0; frame < 50; frame++) {
            measure.look(any());
            for (Regions regions : all) {
                regions.look(measure);
                Regions.Sum sum = new Regions.Sum();
                for (int region = 0; region < regions.count(); region++) {
                    regions.add(region, measure, sum);
                    assertEquals(sum.luminance(), regions.luminance(region));
                    assertEquals(sum.redness(), regions.redness(region));
                    assertEquals(sum.isRed(), regions.isRed(region));
                }
            }
        }
    }

    private LightReader any() {
        Frame frame = new Frame(SETUP.stripBytes(), 4);
        for (int i = 0; i < frame.strip().length; i++) {
            frame.strip()[i] = (byte) (i % 4 == 1 || chance.nextInt(3) == 0 ? chance.nextInt(256) : 0);
        }
        for (int i = 0; i < 4; i++) {
            frame.duties()[i] = chance.nextInt(65_536);
        }
        lights.read(frame);
        return lights;
    }

    @Test
    void runsStartAtEveryPixel() {
        PixelRuns runs = new PixelRuns(20, DEPTH);
        assertEquals(13, runs.count());
        assertEquals(8, runs.size(12));
        assertEquals(12, runs.light(12, 0));
        assertEquals(19, runs.light(12, 7));
        assertEquals(0, new PixelRuns(7, DEPTH).count());
        assertEquals(1, new PixelRuns(8, DEPTH).count());
    }

    /** Relative luminance by WCAG 2.2: 0.2126, 0.7152 and 0.0722; redness and saturation by their definitions there. */
    @Test
    void eachLightIsMeasuredByTheStandard() {
        Frame frame = new Frame(SETUP.stripBytes(), 4);
        put(frame, 0, 100, 20, 5, 0);
        put(frame, 1, 79, 20, 0, 0);
        put(frame, 2, 0, 255, 0, 0);
        put(frame, 3, 0, 0, 0, 51);
        frame.duties()[0] = 65_535;
        lights.read(frame);
        measure.look(lights);
        assertEquals(257L * (2126 * 100 + 7152 * 20 + 722 * 5), measure.luminance(0));
        assertEquals(257 * 75, measure.redness(0));
        assertTrue(measure.isSaturatedRed(0), "100 of 125");
        assertFalse(measure.isSaturatedRed(1), "79 of 99");
        assertEquals(0, measure.redness(2));
        assertEquals(257L * 51 * 10_000, measure.luminance(3));
        assertFalse(measure.isSaturatedRed(4), "in the dark");
        assertEquals(LightMeasure.FULL_LUMINANCE, measure.luminance(20));
        assertEquals(0, measure.luminance(21));
    }

    private static void put(Frame frame, int pixel, int red, int green, int blue, int white) {
        frame.strip()[4 * pixel] = (byte) green;
        frame.strip()[4 * pixel + 1] = (byte) red;
        frame.strip()[4 * pixel + 2] = (byte) blue;
        frame.strip()[4 * pixel + 3] = (byte) white;
    }

    /** A zone twice, one of a single pixel, and a plain strip alone are not separate areas. */
    @Test
    void eachSetOfLightsIsJudgedOnce() {
        List<Area> areas = Areas.of(SETUP, FITTING, VOLTS, DEPTH);
        assertEquals(
                List.of(7, 20, 22), areas.stream().map(area -> area.size(0)).toList());
        assertEquals(3, areas.get(0).light(0, 0));
        assertEquals(9, areas.get(0).light(0, 6));
        assertEquals(1, areas.get(0).weight(0));
    }

    /**
     * In the room each light is weighted by its power, and a watt of a white lamp counts two and a half times as much as a watt of colour:
     * a pixel is 36 mA of 5 V, the lamp 1 A of 24 V, the plain strip 0.6 A of 24 V.
     */
    @Test
    void theRoomWeighsLights() {
        Area room = Areas.of(SETUP, FITTING, VOLTS, DEPTH).get(2);
        assertEquals(2 * 36 * 5, room.weight(0));
        assertEquals(2 * 36 * 5, room.weight(19));
        assertEquals(5 * 1000 * 24, room.weight(20));
        assertEquals(2 * 600 * 24, room.weight(21));
        Area unknown = Areas.of(SETUP, FITTING, List.of(), DEPTH).get(2);
        assertEquals(5 * 1000 * 5, unknown.weight(20), "5 V where the voltage is not known");
    }

    @Test
    void withoutDimmersThereIsNoRoom() {
        Fitted fitted = Fitted.strip(10, Map.of("bed", Zone.run(0, 4)));
        assertEquals(
                List.of(5, 10),
                Areas.of(fitted.setup(), fitted.fitting(), VOLTS, DEPTH).stream()
                        .map(area -> area.size(0))
                        .toList());
        assertThrows(IllegalArgumentException.class, () -> Area.ofEqual(new int[0], DEPTH));
    }
}
