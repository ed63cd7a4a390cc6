package dev.lampwright.look;

import dev.lampwright.colour.Ember;
import java.util.stream.LongStream;

/**
 * The glow of a bar that is struck at random and cools. The seed determines where and when it is struck. When its look starts, the bar has
 * been burning for a while.
 *
 * @param brightestK temperature that is shown at full light, in K; 1000 to 10000
 * @param strikeK the most by which a strike heats one pixel, in K
 * @param strikesPerPixelSecond how many strikes fall on each pixel in a second, up to 60
 * @param diffusion how quickly heat spreads, in pixels² a second, 0 to 30
 * @param timeConstantSeconds time in which heat falls to 1/e, in s
 * @param seed determines where and when strikes fall
 */
public record EmberPaint(
        double brightestK,
        double strikeK,
        double strikesPerPixelSecond,
        double diffusion,
        double timeConstantSeconds,
        long seed)
        implements PaintSpec {
    /** A fire: red in its hollows and orange in its flames, about 1500 K in the mean. */
    public static final EmberPaint USUAL = new EmberPaint(1650, 650, 5, 4, 0.75, 1);

    private static final double ROOM_K = 295;
    private static final int STEPS_BEFORE = 180;
    private static final int MOST_STEPS_AT_ONCE = 600;
    /**
     * Light follows heat this slowly, in s: so that strikes in quick succession merge into one glow and do not flash more than three times
     * a second. Our own choice.
     */
    private static final double LAG_S = 0.6;

    private static final float FOLLOWED = (float) -Math.expm1(-HeatBar.STEP_S / LAG_S);

    @Override
    public Paint make() {
        return new Embers(this);
    }

    /** The burning bar. */
    private static final class Embers implements Paint {
        private final EmberPaint settings;
        private final Ember glow;
        private final long strikes;
        private HeatBar bar;
        private long[] chances = {};
        private long step = Long.MAX_VALUE;
        private float[] shown = {};

        Embers(EmberPaint settings) {
            this.settings = settings;
            glow = Ember.of(settings.brightestK());
            strikes = Chance.limit(settings.strikesPerPixelSecond() * HeatBar.STEP_S);
            bar = new HeatBar(0, 0, 1);
        }

        @Override
        public float[] paint(Moment moment, Cover cover, float[] room) {
            burnUntil((long) Math.floor(moment.seconds() / HeatBar.STEP_S), cover.pixels());
            return shown;
        }

        private void burnUntil(long wanted, int pixels) {
            if (pixels != chances.length) {
                chances = LongStream.range(0, pixels)
                        .map(i -> Chance.root(settings.seed(), i))
                        .toArray();
                bar = new HeatBar(pixels, settings.diffusion(), settings.timeConstantSeconds());
                shown = new float[4 * pixels];
                step = Long.MAX_VALUE;
            }
            if (step > wanted) {
                bar.chill();
                darken();
                step = -STEPS_BEFORE;
            }
            step = Math.max(step, wanted - MOST_STEPS_AT_ONCE);
            for (; step < wanted; step++) {
                burn();
            }
        }

        private void darken() {
            for (int i = 0; i < shown.length; i++) {
                shown[i] = i % 4 == 3 ? 1 : 0;
            }
        }

        private void burn() {
            for (int i = 0; i < chances.length; i++) {
                if (Chance.happens(chances[i], 2 * step, strikes)) {
                    bar.strike(i, settings.strikeK() * Chance.share(chances[i], 2 * step + 1));
                }
            }
            bar.step();
            for (int i = 0; i < chances.length; i++) {
                glow.approach(ROOM_K + bar.heat(i), FOLLOWED, shown, 4 * i);
            }
        }
    }
}
