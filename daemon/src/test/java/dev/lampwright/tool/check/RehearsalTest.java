package dev.lampwright.tool.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.config.Config;
import dev.lampwright.engine.Configs;
import dev.lampwright.look.Blend;
import dev.lampwright.look.Extent;
import dev.lampwright.look.Layer;
import dev.lampwright.look.Level;
import dev.lampwright.look.Look;
import dev.lampwright.look.Paint;
import dev.lampwright.look.Rhythm;
import dev.lampwright.signal.Signal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class RehearsalTest {
    private final Config good = Configs.of(7, "GRB", "");

    /** The same configuration with a look more. */
    private Config with(String name, Paint paint) {
        Layer layer = new Layer(
                good.fitting().zones().get("strip"), paint, Extent.all(), Rhythm.FIXED, Level.fixed(1), Blend.NORMAL);
        Map<String, Look> looks = new LinkedHashMap<>(good.looks());
        looks.put(name, new Look(name, List.of(layer), List.of(), false));
        return new Config(
                good.framesPerSecond(),
                good.broker(),
                good.bindings(),
                good.silentAfter(),
                good.room(),
                good.port(),
                good.baud(),
                good.atEnd(),
                good.metricsPort(),
                good.setup(),
                good.guard(),
                good.fitting(),
                good.encoder(),
                looks,
                good.cues(),
                good.alarmSequence(),
                good.desk(),
                good.mounting(),
                good.page(),
                good.wiring());
    }

    @Test
    void aLookThatThrowsIsNamed() {
        Paint late = (moment, rgba, pixels) -> {
            if (moment.value(Signal.JOB_PROGRESS) > 0.5) {
                throw new IllegalStateException("more than half");
            }
        };
        assertEquals(
                Optional.of(new Rehearsal.Failing("late", "layers.0: java.lang.IllegalStateException: more than half")),
                Rehearsal.of(with("late", late)));
    }

    @Test
    void aLookWhoseLightIsNoneIsNamed() {
        Paint wrong = (moment, rgba, pixels) -> {
            rgba[0] = moment.seconds() > 9 ? Float.NaN : 0;
            rgba[3] = 1;
        };
        assertEquals(
                Optional.of(new Rehearsal.Failing("wrong", "layers.0: its light is not a number from 0 to 1")),
                Rehearsal.of(with("wrong", wrong)));
    }

    @Test
    void allAreWell() {
        assertEquals(Optional.empty(), Rehearsal.of(good));
    }
}
