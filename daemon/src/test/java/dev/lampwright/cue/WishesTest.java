package dev.lampwright.cue;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
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
        assertAll(
                all().withBrightness(0.5).withQuiet(0.25).withLook("done", 100).withPixels(PIXELS, 200));
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
        assertEquals("done", wishes.lookAt(99));
        assertEquals("", wishes.lookAt(100));
        assertArrayEquals(PIXELS, wishes.pixelsAt(100));
        assertEquals(0, wishes.pixelsAt(200).length);
    }

    /** System.nanoTime may be negative and may overflow: only differences count. */
    @Test
    void timesMayPassTheLargestNumber() {
        Wishes wishes = Wishes.NONE.withLook("done", Long.MIN_VALUE + 5);
        assertEquals("done", wishes.lookAt(Long.MAX_VALUE - 5));
        Wishes then = Wishes.NONE.until(Long.MIN_VALUE + 5, wishes);
        assertSame(then, then.at(Long.MAX_VALUE - 5));
        assertSame(wishes, then.at(Long.MIN_VALUE + 5));
        assertEquals("", wishes.lookAt(Long.MIN_VALUE + 5));
    }

    @Test
    void aLightWithoutALevelOfItsOwnIsAsTheLookSays() {
        Wishes wishes = Wishes.NONE.withLevels(new float[] {0.75f, Float.NaN});
        assertEquals(0.75f, wishes.level(0));
        assertTrue(Float.isNaN(wishes.level(1)));
        assertTrue(Float.isNaN(wishes.level(2)));
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
    void whatIsWishedNextFollowsInItsFrame() {
        Wishes last = all();
        Wishes next = Wishes.NONE.withBrightness(0.3).until(200, last);
        Wishes first = Wishes.NONE.until(100, next);
        assertSame(first, first.at(99));
        assertSame(next, first.at(100));
        assertSame(next, first.at(199));
        assertSame(last, first.at(200));
    }

    @Test
    void aFadeIsAsLongAsUsualUnlessSomebodySays() {
        Wishes wishes = Wishes.NONE.with(Wish.LEVELS_FADE, new float[] {Float.NaN, 3});
        assertTrue(Float.isNaN(wishes.fade(Wish.LEVELS_FADE, 0)));
        assertEquals(3, wishes.fade(Wish.LEVELS_FADE, 1));
        assertTrue(Float.isNaN(wishes.fade(Wish.LEVELS_FADE, 2)));
        assertTrue(Float.isNaN(wishes.fade(Wish.LOOK_FADE)));
        assertFalse(wishes.plain(), "so that it is recorded");
    }

    @Test
    void whatWasTakenBackIsPlain() {
        Wishes back = Wishes.NONE
                .withLook("done", 5)
                .withLook("", 7)
                .withPixels(PIXELS, 5)
                .withPixels(new float[0], 7)
                .withBrightness(0.5)
                .withBrightness(1);
        assertTrue(back.plain());
    }

    @Test
    void isTheSameWrittenDownAndReadBack() {
        Wishes read = Wishes.NONE;
        for (Wish wish : Wish.values()) {
            read = copied(all(), read, wish);
        }
        assertAll(read);
        assertEquals(100, read.untilNanos(Wish.LOOK));
        assertEquals(200, read.untilNanos(Wish.PIXELS));
        assertEquals(List.of(0.1f, 0.2f, 0.3f, 1f), read.floats(Wish.PIXELS));
        assertEquals(List.of(0.75f), read.floats(Wish.LEVELS));
    }

    private static Wishes copied(Wishes from, Wishes to, Wish wish) {
        return switch (wish.kind()) {
            case SHARE -> to.with(wish, from.share(wish));
            case COUNT -> to.withCount(wish, from.count(wish));
            case COUNTS -> to.withCounts(wish, from.counts(wish));
            case FLOATS, SECONDS -> to.with(wish, array(from.floats(wish)));
            case NAME_FOR_A_TIME -> to.with(wish, from.name(wish), from.untilNanos(wish));
            case FLOATS_FOR_A_TIME -> to.with(wish, array(from.floats(wish)), from.untilNanos(wish));
        };
    }

    private static float[] array(List<Float> floats) {
        float[] array = new float[floats.size()];
        for (int i = 0; i < array.length; i++) {
            array[i] = floats.get(i);
        }
        return array;
    }

    @Test
    void aWishOfAnotherKindIsRefused() {
        assertThrows(ClassCastException.class, () -> Wishes.NONE.with(Wish.LOOK, 0.5));
        assertThrows(ClassCastException.class, () -> Wishes.NONE.share(Wish.RESETS));
    }
}
