package dev.lampwright.cue;

import static dev.lampwright.testing.Bounds.assertAbove;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import dev.lampwright.colour.CssColour;
import dev.lampwright.look.AllExtent;
import dev.lampwright.look.BandExtent;
import dev.lampwright.look.Blend;
import dev.lampwright.look.Canvas;
import dev.lampwright.look.Extent;
import dev.lampwright.look.Layer;
import dev.lampwright.look.Level;
import dev.lampwright.look.Look;
import dev.lampwright.look.Moment;
import dev.lampwright.look.Motion;
import dev.lampwright.look.Paint;
import dev.lampwright.look.Rhythm;
import dev.lampwright.look.SolidPaint;
import dev.lampwright.look.Zone;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.signal.Signal;
import dev.lampwright.signal.Signals;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class StageTest {
    private static final int PIXELS = 4;
    private static final long SECOND = 1_000_000_000L;
    private static final long FRAME = SECOND / 60;

    private final Look red = plain("red");
    private final Look green = plain("lime");
    private final Look blue = plain("blue");
    private final Look dark = new Look("dark", List.of(), List.of(Level.fixed(0)), false);

    private final Signals signals = new Signals(22);
    private final Situation situation = new Situation(signals);
    private PrinterStatus status = PrinterStatus.nothingHeard();
    private long nanos = 100 * SECOND;
    private Stage stage;

    private static Look plain(String colour) {
        return new Look(colour, List.of(layer(colour, new AllExtent().make(), "F")), List.of(Level.fixed(1)), false);
    }

    private static Layer layer(String colour, Extent extent, String rhythm) {
        Paint paint = new SolidPaint(CssColour.colour(colour)).make();
        return new Layer(Zone.run(0, PIXELS - 1), paint, extent, Rhythm.parse(rhythm), Level.fixed(1), Blend.NORMAL);
    }

    private static Cue on(PrinterState state, Look look, double fadeS) {
        return new Cue(look, List.of(new Condition.InState(Set.of(state))), fadeS, Easing.LINEAR);
    }

    private static Cue always(Look look, double fadeS) {
        return new Cue(look, List.of(), fadeS, Easing.LINEAR);
    }

    private void cues(Cue... cues) {
        cues(Map.of(), cues);
    }

    private void cues(Map<String, Look> looks, Cue... cues) {
        stage = new Stage(
                List.of(cues),
                looks,
                signals,
                new Canvas(PIXELS, 1),
                new Canvas(PIXELS, 1),
                fault -> fail(fault.toString()));
    }

    private void state(PrinterState state) {
        status = status.withState(state, nanos);
    }

    private float[] frame() {
        nanos += FRAME;
        signals.follow(status);
        situation.moveTo(status, status.state(), nanos);
        return stage.draw(situation).rgba().clone();
    }

    private float[] frames(int count) {
        float[] last = frame();
        for (int i = 1; i < count; i++) {
            last = frame();
        }
        return last;
    }

    /** Draws frames, none of which may differ from the previous one by more than a little. */
    private void framesWithoutAStep(int count, double most) {
        float[] before = stage.draw(situation).rgba().clone();
        for (int i = 0; i < count; i++) {
            float[] now = frame();
            for (int at = 0; at < now.length; at++) {
                assertEquals(before[at], now[at], most, "frame " + i + ", value " + at);
            }
            before = now;
        }
    }

    private static void assertShows(String colour, float[] rgba) {
        Canvas canvas = new Canvas(PIXELS, 1);
        plain(colour).draw(new Moment(new Signals(22)), canvas, fault -> fail(fault.toString()));
        assertArrayEquals(canvas.rgba(), rgba, 1e-5f);
    }

    @Test
    void theFirstCueThatHoldsWins() {
        cues(on(PrinterState.HELD, red, 0), on(PrinterState.HELD, green, 0), always(blue, 0));
        assertShows("blue", frame());
        state(PrinterState.HELD);
        assertShows("red", frame());
        assertEquals("red", stage.look().name());
        state(PrinterState.IDLE);
        assertShows("blue", frame());
    }

    @Test
    void itBeginsInTheDark() {
        cues(always(red, 1));
        float[] first = frame();
        assertEquals(0, first[0]);
        framesWithoutAStep(60, 1 / 60.0 + 1e-4);
        assertShows("red", frame());
    }

    /** As when a configuration is read again: the first look fades in over what was visible, unless it is a different strip. */
    @Test
    void itMayBeginWithTheLightOfAnother() {
        cues(always(red, 0));
        frame();
        Stage before = stage;
        cues(always(blue, 1));
        stage.seen().copyFrom(before.seen());
        assertShows("red", frame());
        framesWithoutAStep(60, 1 / 60.0 + 1e-4);
        assertShows("blue", frame());
    }

    /** The steepest of the keyword's curves, ease, rises by less than 2.7 of its height in its length (worked out in steps). */
    @ParameterizedTest
    @EnumSource
    void fadesHaveNoStep(Easing easing) {
        Cue held = new Cue(red, List.of(new Condition.InState(Set.of(PrinterState.HELD))), 1.5, easing);
        cues(held, always(blue, 0));
        frame();
        state(PrinterState.HELD);
        framesWithoutAStep(90, 2.7 / 90);
        assertShows("red", frame());
    }

    @Test
    void aFadeIsHalfWayAtHalfItsTime() {
        cues(on(PrinterState.HELD, red, 2), always(blue, 0));
        frame();
        state(PrinterState.HELD);
        float[] half = frames(61);
        assertEquals(0.5, half[0], 1e-4);
        assertEquals(0.5, half[2], 1e-4);
        assertEquals(1, half[3], 1e-4);
    }

    @Test
    void interruptedFadesHaveNoStep() {
        cues(
                on(PrinterState.HELD, red, 1),
                on(PrinterState.DONE, green, 1),
                on(PrinterState.IDLE, dark, 1),
                always(blue, 1));
        frames(70);
        List<PrinterState> states = List.of(
                PrinterState.HELD,
                PrinterState.DONE,
                PrinterState.HELD,
                PrinterState.IDLE,
                PrinterState.PRINTING,
                PrinterState.DONE);
        for (PrinterState next : states) {
            state(next);
            framesWithoutAStep(25, 1 / 60.0 + 1e-4);
        }
        framesWithoutAStep(60, 1 / 60.0 + 1e-4);
        assertShows("lime", frame());
    }

    @Test
    void whatFadesOutGoesOnMoving() {
        Look moving = new Look(
                "moving",
                List.of(layer(
                        "red", new BandExtent(1, 0, 0, new Motion(6, Motion.Unit.PIXELS_A_SECOND), 0).make(), "F")),
                List.of(Level.fixed(0)),
                false);
        cues(on(PrinterState.HELD, dark, 10), always(moving, 0));
        frame();
        state(PrinterState.HELD);
        float[] before = frame();
        float[] later = frames(10);
        assertEquals(later[0] > 0.1, before[0] <= 0.1, "the band has gone on by a pixel");
    }

    @Test
    void aFaultCutsInWithinOneFrameEvenIntoAFade() {
        cues(on(PrinterState.FAULT, red, 0), on(PrinterState.HELD, green, 5), always(blue, 0));
        frame();
        state(PrinterState.HELD);
        frames(30);
        state(PrinterState.FAULT);
        assertShows("red", frame());
    }

    @Test
    void aFaultThatHasTheLookThatIsFadingInEndsTheFade() {
        cues(on(PrinterState.FAULT, red, 0), on(PrinterState.HELD, red, 5), always(blue, 0));
        frame();
        state(PrinterState.HELD);
        frames(30);
        state(PrinterState.FAULT);
        assertShows("red", frame());
    }

    @Test
    void aValueThatWaversAtABoundDoesNotSwitchToAndFro() {
        Condition hot = new Condition.WithinBounds(Signal.of(Quantity.BED_ACTUAL), 50, Double.POSITIVE_INFINITY, 5);
        cues(new Cue(red, List.of(hot), 0, Easing.LINEAR), always(blue, 0));
        assertShows("blue", frame());
        assertShows("blue", bedAt(49.9));
        assertShows("red", bedAt(50.1));
        assertShows("red", bedAt(45.1));
        assertShows("red", bedAt(60));
        assertShows("red", bedAt(45.1));
        assertShows("blue", bedAt(44.9));
        assertShows("blue", bedAt(49.9));
        assertShows("red", bedAt(50.1));
        assertShows("blue", bedAt(Double.NaN));
        assertShows("blue", bedAt(49.9));
    }

    private float[] bedAt(double celsius) {
        status = status.withReading(Quantity.BED_ACTUAL, celsius, nanos);
        return frames(180);
    }

    /** A cue remembers which side of its bound a value was on, even while another cue is on. */
    @Test
    void aCueBehindOneThatHoldsGoesOnRemembering() {
        Condition hot = new Condition.WithinBounds(Signal.of(Quantity.BED_ACTUAL), 50, Double.POSITIVE_INFINITY, 5);
        cues(on(PrinterState.HELD, green, 0), new Cue(red, List.of(hot), 0, Easing.LINEAR), always(blue, 0));
        state(PrinterState.HELD);
        assertShows("lime", bedAt(52));
        assertShows("lime", bedAt(47));
        state(PrinterState.PRINTING);
        assertShows("red", frame());
        state(PrinterState.HELD);
        assertShows("lime", bedAt(40));
        assertShows("lime", bedAt(47));
        state(PrinterState.PRINTING);
        assertShows("blue", frame());
    }

    /** README, "What can be asked for": a fault takes precedence over anything that anybody asks for, until it is over and reset. */
    @ParameterizedTest
    @EnumSource
    void nothingThatIsAskedForCoversAnAlarm(AlarmState alarm) {
        cues(Map.of("lime", green), always(red, 0));
        frame();
        situation.take(Wishes.NONE.withLook("lime", nanos + 100 * SECOND), alarm);
        assertShows(alarm == AlarmState.NORMAL ? "lime" : "red", frames(60));
    }

    @Test
    void aLookThatIsAskedForFadesInEndsAndMayBeUnknown() {
        cues(Map.of("lime", green), always(red, 0));
        frame();
        situation.take(Wishes.NONE.withLook("lime", nanos + SECOND), AlarmState.NORMAL);
        framesWithoutAStep(40, 0.05);
        assertShows("lime", frame());
        assertShows("red", frames(30));
        situation.take(Wishes.NONE.withLook("violet", nanos + SECOND), AlarmState.NORMAL);
        assertShows("red", frames(30));
    }

    private void ask(Wishes wishes) {
        situation.take(wishes, AlarmState.NORMAL);
    }

    @Test
    void aLookThatIsAskedForFadesAsLongAsItIsToThereAndBack() {
        cues(Map.of("lime", green), always(red, 0));
        frame();
        Wishes asked = Wishes.NONE.with(Wish.LOOK_FADE, new float[] {2}).withLook("lime", nanos + 100 * SECOND);
        ask(asked);
        framesWithoutAStep(119, 2 / 120.0 + 1e-3);
        assertEquals(0.5, framesSinceAsked(asked, 60)[0], 0.02, "half way");
        assertShows("lime", frames(62));
        ask(asked.withLook("", 0));
        framesWithoutAStep(60, 2 / 120.0 + 1e-3);
        assertEquals(0.5, frame()[0], 0.02, "half way back, though the cue would cut in");
        assertShows("red", frames(61));
    }

    /** Asks again from the beginning and draws this many frames. */
    private float[] framesSinceAsked(Wishes asked, int count) {
        ask(Wishes.NONE.with(Wish.LOOK_FADE, new float[] {0}));
        frame();
        ask(asked);
        frame();
        return frames(count);
    }

    @Test
    void aLookWithoutAFadeIsOneFrame() {
        cues(Map.of("lime", green), always(red, 5));
        frames(400);
        ask(Wishes.NONE.with(Wish.LOOK_FADE, new float[] {0}).withLook("lime", nanos + 100 * SECOND));
        assertShows("lime", frame());
        ask(Wishes.NONE.with(Wish.LOOK_FADE, new float[] {0}));
        assertShows("red", frame());
    }

    /** The fade time of a look that somebody asked for does not apply to a fault, nor to the cues afterwards. */
    @Test
    void aFaultDoesNotWaitForTheFadeOfALook() {
        cues(Map.of("lime", green), on(PrinterState.FAULT, blue, 0), on(PrinterState.HELD, green, 0), always(red, 0));
        frame();
        Wishes asked = Wishes.NONE.with(Wish.LOOK_FADE, new float[] {100}).withLook("lime", nanos + 1000 * SECOND);
        ask(asked);
        frames(60);
        state(PrinterState.FAULT);
        situation.take(asked, AlarmState.ALERT);
        assertShows("blue", frame());
        state(PrinterState.IDLE);
        ask(Wishes.NONE.with(Wish.LOOK_FADE, new float[] {100}));
        frames(6100);
        state(PrinterState.HELD);
        assertShows("lime", frame());
    }

    @Test
    void allConditionsMustHold() {
        Cue both = new Cue(
                red,
                List.of(
                        new Condition.InState(Set.of(PrinterState.PRINTING, PrinterState.HELD)),
                        new Condition.WithinBounds(Signal.JOB_PROGRESS, Double.NEGATIVE_INFINITY, 0.5, 0)),
                0,
                Easing.LINEAR);
        cues(both, always(blue, 0));
        state(PrinterState.PRINTING);
        assertShows("blue", frame());
        status = status.withReading(Quantity.JOB_PROGRESS, 0.2, nanos);
        assertShows("red", frame());
        state(PrinterState.HELD);
        assertShows("red", frame());
        state(PrinterState.DONE);
        assertShows("blue", frame());
    }

    @Test
    void anEventLastsAsLongAsItDoes() {
        cues(new Cue(red, List.of(new Condition.DuringEvent("door")), 0, Easing.LINEAR), always(blue, 0));
        assertShows("blue", frame());
        status = status.withEvent("door", nanos + 2 * SECOND, nanos);
        assertShows("red", frame());
        assertShows("red", frames(118));
        assertShows("blue", frames(3));
    }

    /** While pictures are taken, a look that is steady for them keeps still, all its rhythms lit; afterwards it continues. */
    @Test
    void theCameraKeepsSteadyLooksStill() {
        Extent band = new BandExtent(1, 2, 0, new Motion(3, Motion.Unit.PIXELS_A_SECOND), 0).make();
        List<Layer> layers = List.of(layer("blue", new AllExtent().make(), "swell 2s"), layer("red", band, "F"));
        cues(always(new Look("steady", layers, List.of(Level.fixed(1)), true), 0));
        float[] before = frames(20);
        status = status.withEvent(Stage.CAMERA, nanos + SECOND, nanos);
        float[] still = frame();
        assertEquals(before[0], still[0], 1e-5, "the band stands where it stood");
        assertEquals(1, still[3], 1e-5, "the swell is lit");
        for (int i = 0; i < 57; i++) {
            assertArrayEquals(still, frame(), 0f);
        }
        frames(4);
        framesWithoutAStep(60, 3 / 60.0 + Math.PI / 2 / 60 + 1e-3);
    }

    @Test
    void otherLooksTakeNoNoticeOfTheCamera() {
        cues(always(new Look("free", List.of(layer("blue", new AllExtent().make(), "swell 2s")), List.of(), false), 0));
        frames(20);
        status = status.withEvent(Stage.CAMERA, nanos + SECOND, nanos);
        float[] one = frame();
        float[] next = frame();
        assertAbove(one[3], next[3]);
    }

    @Test
    void dimmersFadeToo() {
        cues(on(PrinterState.HELD, red, 1), always(dark, 0));
        frame();
        state(PrinterState.HELD);
        nanos += FRAME;
        situation.moveTo(status, status.state(), nanos);
        stage.draw(situation);
        nanos += SECOND / 2;
        situation.moveTo(status, status.state(), nanos);
        assertEquals(0.5, stage.draw(situation).dimmers()[0], 1e-4);
    }
}
