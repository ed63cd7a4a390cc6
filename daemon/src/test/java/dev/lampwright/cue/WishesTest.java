package dev.lampwright.cue;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalLong;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

class WishesTest {
    private static final float[] PIXELS = {0.1f, 0.2f, 0.3f, 1};

    /** Every kind of thing that can be asked for. */
    private static final List<UnaryOperator<Wishes>> ASKS = List.of(
            wishes -> wishes.withBrightness(0.5),
            wishes -> wishes.withQuiet(0.25),
            wishes -> wishes.withLevels(new float[] {0.75f}),
            wishes -> wishes.withLook("done", 100),
            wishes -> wishes.withPixels(PIXELS, 200),
            Wishes::acknowledged,
            Wishes::reset);

    private static Wishes all() {
        Wishes wishes = Wishes.NONE;
        for (UnaryOperator<Wishes> ask : ASKS) {
            wishes = ask.apply(wishes);
        }
        return wishes;
    }

    @Test
    void withoutAnythingAskedForLightIsAsTheLooksHaveIt() {
        assertTrue(Wishes.NONE.plain());
        assertEquals(1, Wishes.NONE.brightness());
        assertEquals(1, Wishes.NONE.quiet());
        assertTrue(Float.isNaN(Wishes.NONE.level(0)));
        assertEquals("", Wishes.NONE.lookAt(0));
        assertEquals(OptionalLong.empty(), Wishes.NONE.lookLeft(-1));
        assertEquals(0, Wishes.NONE.pixelsAt(-1).length);
    }

    @Test
    void whateverIsAskedForIsNoLongerPlain() {
        for (int i = 0; i < ASKS.size(); i++) {
            assertFalse(ASKS.get(i).apply(Wishes.NONE).plain(), "ask " + i);
        }
    }

    @Test
    void oneThingAskedForLeavesTheOthersAsTheyAre() {
        assertAll(all());
        assertAll(all().withBrightness(0.5).withQuiet(0.25).withLook("done", 100).withPixels(PIXELS, 200));
    }

    private static void assertAll(Wishes wishes) {
        assertEquals(0.5f, wishes.brightness());
        assertEquals(0.25f, wishes.quiet());
        assertEquals(0.75f, wishes.level(0));
        assertEquals("done", wishes.lookAt(99));
        assertArrayEquals(PIXELS, wishes.pixelsAt(199));
        assertEquals(1, wishes.acknowledgements());
        assertEquals(1, wishes.resets());
    }

    @Test
    void whatIsAskedForATimeEndsWithIt() {
        Wishes wishes = all();
        assertEquals(OptionalLong.of(1), wishes.lookLeft(99));
        assertEquals("", wishes.lookAt(100));
        assertEquals(OptionalLong.empty(), wishes.lookLeft(100));
        assertArrayEquals(PIXELS, wishes.pixelsAt(100));
        assertEquals(0, wishes.pixelsAt(200).length);
    }

    /** System.nanoTime may be negative and may overflow: only differences count. */
    @Test
    void timesMayPassTheLargestNumber() {
        Wishes wishes = Wishes.NONE.withLook("done", Long.MIN_VALUE + 5);
        assertEquals("done", wishes.lookAt(Long.MAX_VALUE - 5));
        assertEquals(OptionalLong.of(11), wishes.lookLeft(Long.MAX_VALUE - 5));
        assertEquals("", wishes.lookAt(Long.MIN_VALUE + 5));
    }

    @Test
    void aLightWithoutALevelOfItsOwnIsAsTheLookSays() {
        Wishes wishes = Wishes.NONE.withLevels(new float[] {0.75f, Float.NaN});
        assertEquals(0.75f, wishes.level(0));
        assertTrue(Float.isNaN(wishes.level(1)));
        assertTrue(Float.isNaN(wishes.level(2)));
        assertArrayEquals(new float[] {0.75f}, wishes.levels(1));
        assertArrayEquals(new float[] {0.75f, Float.NaN, Float.NaN, Float.NaN}, wishes.levels(4));
    }

    @Test
    void keepsNoArrayOfOthers() {
        float[] levels = {0.5f};
        float[] pixels = PIXELS.clone();
        Wishes wishes = Wishes.NONE.withLevels(levels).withPixels(pixels, 10);
        levels[0] = 0;
        pixels[0] = 0;
        assertEquals(0.5f, wishes.level(0));
        assertArrayEquals(PIXELS, wishes.pixelsAt(0));
    }

    @Test
    void otherLightsTakeOverWhatIsNotForCertainOnes() {
        Wishes wishes = all().forOtherLights();
        assertTrue(Float.isNaN(wishes.level(0)));
        assertEquals(0, wishes.pixelsAt(0).length);
        assertEquals(0.5f, wishes.brightness());
        assertEquals(0.25f, wishes.quiet());
        assertEquals("done", wishes.lookAt(0));
        assertEquals(1, wishes.acknowledgements());
        assertEquals(1, wishes.resets());
    }

    @Test
    void isTheSameWrittenDownAndReadBack() {
        Wishes.Values values = new Wishes.Values(
                0.5f, 0.25f, List.of(0.75f), "done", 100, List.of(0.1f, 0.2f, 0.3f, 1f), 200, 1, 1);
        assertEquals(values, all().values());
        assertAll(Wishes.of(values));
        assertEquals(values, Wishes.of(values).values());
    }
}
