package dev.lampwright.guard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.guard.RestlessLight.Kind;
import dev.lampwright.guard.RestlessLight.Rgb;
import dev.lampwright.look.Fitting;
import dev.lampwright.protocol.Frame;
import java.util.Map;
import java.util.SplittableRandom;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.statistics.Statistics;

/**
 * Whatever the light does, nothing that a person can see flashes more than three times in any second: ten thousand sequences, counted by
 * {@link EverySecond}, which shares no code with the guard. A failing seed is printed, and tried again automatically the next time.
 */
class FlashLimitTest {
    private static final double SECONDS = 2.2;
    private static final long MILLI = 1_000_000;

    @Property(tries = 6000, shrinking = ShrinkingMode.BOUNDED, edgeCases = EdgeCasesMode.NONE)
    void neverMoreThanThreeFlashes(@ForAll("light") RestlessLight light) {
        Shown shown = new Shown(light, light.fitting(light.seed()));
        Guards guards = guards(light, light.fitting(light.seed()));
        for (int tick = 0; tick < ticks(light); tick++) {
            shown.at(tick, make(guards, light, tick));
        }
        assertLawful(shown);
    }

    /**
     * The file is read again every few frames, with other zones each time. What does not depend on zones is judged as if nothing had
     * happened.
     */
    @Property(tries = 2000, shrinking = ShrinkingMode.BOUNDED, edgeCases = EdgeCasesMode.NONE)
    void neverMoreThanThreeFlashesAcrossReloads(
            @ForAll("light") RestlessLight light, @ForAll @IntRange(min = 1, max = 40) int every) {
        Shown shown = new Shown(
                light, new Fitting(light.pixels(), Map.of(), light.fitting(0).dimmers()));
        Guards guards = guards(light, light.fitting(0));
        for (int tick = 0; tick < ticks(light); tick++) {
            if (tick % every == 0) {
                Guards next = guards(light, light.fitting(tick / every % 5));
                assertTrue(next.takeOver(guards), "the light of the last second is known");
                guards = next;
            }
            shown.at(tick, make(guards, light, tick));
        }
        assertLawful(shown);
    }

    /** Frames are shown late, by varying times, and some are never shown. */
    @Property(tries = 2000, shrinking = ShrinkingMode.BOUNDED, edgeCases = EdgeCasesMode.NONE)
    void neverMoreThanThreeFlashesWhenFramesAreLateOrLost(
            @ForAll("light") RestlessLight light,
            @ForAll @IntRange(min = 0, max = 150) int late,
            @ForAll @IntRange(min = 0, max = 60) int lostPercent) {
        SplittableRandom chance = new SplittableRandom(light.seed());
        Shown shown = new Shown(light, light.fitting(light.seed()));
        Guards guards = guards(light, light.fitting(light.seed()));
        guards.expectLate(late * MILLI);
        long last = 0;
        for (int tick = 0; tick < ticks(light); tick++) {
            Frame frame = make(guards, light, tick);
            if (chance.nextInt(100) >= lostPercent) {
                last = Math.max(last + 1, nanos(light, tick) + chance.nextInt(late + 1) * MILLI);
                shown.counter.see(frame, last);
            }
        }
        assertLawful(shown);
    }

    /** Counter and light are effective: without a guard much of it flashes too often, some of each kind. */
    @Property(tries = 600, seed = "20", edgeCases = EdgeCasesMode.NONE)
    void withoutAGuardMuchOfItFlashes(@ForAll("light") RestlessLight light) {
        Shown shown = new Shown(light, light.fitting(light.seed()));
        for (int tick = 0; tick < ticks(light); tick++) {
            Frame frame = new Frame(light.setup().stripBytes(), 1);
            light.draw(tick, frame);
            shown.at(tick, frame);
        }
        boolean flashes = shown.counter.most() > 3;
        Statistics.label("too often")
                .collect(flashes)
                .coverage(coverage -> coverage.check(true).percentage(percentage -> percentage > 20));
        Statistics.label("ways").collect(flashes ? light.kind() : "calm").coverage(coverage -> {
            for (Kind kind : Kind.values()) {
                coverage.check(kind).count(count -> count > 0);
            }
        });
    }

    /** Light that is calm by itself is left alone, everywhere. */
    @Property(tries = 500, shrinking = ShrinkingMode.BOUNDED, edgeCases = EdgeCasesMode.NONE)
    void calmLightIsLeftAlone(@ForAll("light") RestlessLight restless) {
        int slow = Math.max(1, restless.rate() * 2 / 5);
        RestlessLight light = new RestlessLight(
                Kind.OPPOSITE,
                restless.pixels(),
                restless.rate(),
                restless.grain(),
                restless.offset(),
                slow,
                restless.first(),
                restless.second(),
                restless.seed());
        Guards guards = guards(light, light.fitting(light.seed()));
        for (int tick = 0; tick < ticks(light); tick++) {
            make(guards, light, tick);
        }
        assertEquals(0, guards.heldFrames());
    }

    /** What was shown, and the counter that saw it. */
    private static final class Shown {
        private final RestlessLight light;
        private final EverySecond counter;

        Shown(RestlessLight light, Fitting judged) {
            this.light = light;
            counter = new EverySecond(light.setup(), judged, RestlessLight.VOLTS);
        }

        void at(int tick, Frame frame) {
            counter.see(frame, nanos(light, tick));
        }
    }

    private static void assertLawful(Shown shown) {
        int most = shown.counter.most();
        assertTrue(most <= 3, most + " flashes in a second");
    }

    private static Frame make(Guards guards, RestlessLight light, int tick) {
        Frame frame = new Frame(light.setup().stripBytes(), 1);
        light.draw(tick, frame);
        guards.hold(frame, nanos(light, tick));
        return frame;
    }

    private static Guards guards(RestlessLight light, Fitting fitting) {
        GuardSettings settings = new GuardSettings(
                GuardSettings.USUAL.dimOrder(), GuardSettings.USUAL.riseSeconds(), false, RestlessLight.VOLTS);
        return new Guards(light.setup(), fitting, settings, light.rate());
    }

    private static int ticks(RestlessLight light) {
        return (int) Math.ceil(SECONDS * light.rate()) + 1;
    }

    private static long nanos(RestlessLight light, int tick) {
        return tick * 1_000_000_000L / light.rate();
    }

    @Provide
    Arbitrary<RestlessLight> light() {
        Arbitrary<Integer> rates = Arbitraries.of(1, 2, 5, 8, 10, 15, 24, 30, 30, 60, 60, 120, 240);
        Arbitrary<Integer> pixels = Arbitraries.integers().between(1, 48);
        Arbitrary<Integer> grains = Arbitraries.integers().between(1, 32);
        Arbitrary<Integer> offsets = Arbitraries.integers().between(0, 31);
        Arbitrary<Integer> periods = Arbitraries.integers().between(1, 30);
        return Combinators.combine(
                        Arbitraries.of(Kind.class), pixels, rates, grains, offsets, periods, colours(), colours())
                .flatAs((kind, count, rate, grain, offset, period, first, second) -> Arbitraries.longs()
                        .map(seed -> new RestlessLight(kind, count, rate, grain, offset, period, first, second, seed)));
    }

    private static Arbitrary<Rgb> colours() {
        Arbitrary<Rgb> marked = Arbitraries.of(
                new Rgb(0, 0, 0),
                new Rgb(255, 255, 255),
                new Rgb(255, 0, 0),
                new Rgb(30, 0, 0),
                new Rgb(40, 25, 0),
                new Rgb(255, 60, 0),
                new Rgb(0, 0, 255),
                new Rgb(26, 26, 26));
        Arbitrary<Integer> level = Arbitraries.integers().between(0, 255);
        return Arbitraries.oneOf(
                marked, Combinators.combine(level, level, level).as(Rgb::new));
    }
}
