package dev.lampwright.tool.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.colour.CssColour;
import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
import dev.lampwright.engine.Configs;
import dev.lampwright.look.AllExtent;
import dev.lampwright.look.BarExtent;
import dev.lampwright.look.Blend;
import dev.lampwright.look.ExtentSpec;
import dev.lampwright.look.LayerSpec;
import dev.lampwright.look.Level;
import dev.lampwright.look.LookSpec;
import dev.lampwright.look.PaintSpec;
import dev.lampwright.look.Rhythm;
import dev.lampwright.look.SolidPaint;
import dev.lampwright.look.Zone;
import dev.lampwright.signal.Follow;
import dev.lampwright.signal.Signal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class RehearsalTest {
    private final Config good = Configs.of(7, "GRB", "");

    /** The same configuration with one more look. */
    private Config with(String name, LayerSpec layer) {
        LightSpec light = good.light();
        Map<String, LookSpec> looks = new LinkedHashMap<>(light.looks());
        looks.put(name, new LookSpec(name, List.of(layer), List.of(), false));
        return good.with(new LightSpec(
                light.fitting(),
                light.strip(),
                looks,
                light.cues(),
                light.alarmSequence(),
                light.guard(),
                light.printers(),
                light.views(),
                light.own()));
    }

    private static Optional<Rehearsal.Failing> failing(Config config) {
        return Rehearsal.of(config, Progress.UNSEEN).failing();
    }

    private static LayerSpec white(Zone zone, ExtentSpec extent, Rhythm rhythm, double opacity) {
        PaintSpec white = new SolidPaint(CssColour.colour("white"));
        return new LayerSpec(zone, white, extent, rhythm, Level.fixed(opacity), Blend.NORMAL);
    }

    /** A bar whose last place is a pixel that is not fitted, so it fails when the job is almost done. */
    @Test
    void aLookThatThrowsIsNamed() {
        Zone tooFar = Zone.run(0, 5).then(Zone.run(7, 7));
        ExtentSpec bar = new BarExtent(Follow.of(Signal.JOB_PROGRESS), 0);
        Rehearsal.Failing failing =
                failing(with("late", white(tooFar, bar, Rhythm.FIXED, 1))).orElseThrow();
        assertEquals("late", failing.look());
        String why = "layers.0: java.lang.ArrayIndexOutOfBoundsException";
        assertTrue(failing.why().startsWith(why), failing.why());
    }

    /** More than white, but only for about a second around the middle of a swell, nine seconds after the look started. */
    @Test
    void aLookWhoseLightIsNoneIsNamed() {
        LayerSpec wrong = white(good.fitting().zones().get("strip"), new AllExtent(), Rhythm.parse("swell 19s"), 1.01);
        assertEquals(
                Optional.of(new Rehearsal.Failing("wrong", "layers.0: its light is not a number from 0 to 1")),
                failing(with("wrong", wrong)));
    }

    @Test
    void allAreWell() {
        assertEquals(Optional.empty(), failing(good));
    }
}
