package dev.lampwright.desk;

import dev.lampwright.colour.Light;
import dev.lampwright.cue.Wish;
import dev.lampwright.cue.Wishes;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Fitting.DimmerUse;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Turns asks, which use names, into the wishes that light follows. */
final class Composer {
    private final Fitting fitting;
    private final DeskSettings settings;
    private final Places places;

    Composer(Fitting fitting, DeskSettings settings) {
        this.fitting = fitting;
        this.settings = settings;
        places = new Places(fitting);
    }

    /**
     * What light follows.
     *
     * @param standing the asks in effect; none of them has ended
     * @param night share of the light that quiet hours leave now
     * @param now the current time
     */
    Wishes wishes(StandingWishes standing, float night, Now now) {
        Wishes wishes = Wishes.NONE
                .withBrightness(standing.share(Aim.of(Ask.BRIGHTNESS)).orElse(settings.brightness()))
                .withQuiet(quiet(standing, night))
                .withCount(Wish.ACKNOWLEDGEMENTS, unnamed(standing.seen().acknowledgements()))
                .withCount(Wish.RESETS, unnamed(standing.seen().resets()))
                .withCounts(Wish.ACKNOWLEDGEMENTS_OF, named(standing.seen().acknowledgements()))
                .withCounts(Wish.RESETS_OF, named(standing.seen().resets()))
                .with(Wish.BRIGHTNESS_FADE, fade(standing, Ask.BRIGHTNESS))
                .with(Wish.QUIET_FADE, fade(standing, Ask.QUIET))
                .with(Wish.LOOK_FADE, fade(standing, Ask.LOOK))
                .with(Wish.PIXELS_FADE, fade(standing, Ask.PIXELS));
        return withPixels(withLook(withLevels(wishes, standing), standing, now), standing, now);
    }

    private static long unnamed(Map<String, Long> counts) {
        return counts.getOrDefault("", 0L);
    }

    private static Map<String, Long> named(Map<String, Long> counts) {
        Map<String, Long> named = new HashMap<>(counts);
        named.remove("");
        return named;
    }

    private float quiet(StandingWishes standing, float night) {
        Held asked = standing.held().get(Aim.of(Ask.QUIET));
        if (asked == null) {
            return night;
        }
        return asked.setting().word().equals(Spoken.ON) ? settings.quietLight() : 1;
    }

    /** No entries if all take the default time, so that wishes without a fade stay simple. */
    private static float[] fade(StandingWishes standing, Ask ask) {
        float fade = standing.fade(Aim.of(ask));
        return Float.isNaN(fade) ? new float[0] : new float[] {fade};
    }

    private Wishes withLevels(Wishes wishes, StandingWishes standing) {
        List<DimmerUse> dimmers = fitting.dimmers();
        float[] levels = new float[dimmers.size()];
        float[] fades = new float[dimmers.size()];
        Arrays.fill(levels, Float.NaN);
        Arrays.fill(fades, Float.NaN);
        boolean fading = false;
        for (int i = 0; i < levels.length; i++) {
            Aim aim = new Aim(Ask.WORK, dimmers.get(i).name());
            if (dimmers.get(i).isWhite()) {
                levels[i] = (float) standing.share(aim).orElse(Double.NaN);
                fades[i] = standing.fade(aim);
                fading |= !Float.isNaN(fades[i]);
            }
        }
        boolean own = !standing.of(Ask.WORK).isEmpty();
        return wishes.withLevels(own ? levels : new float[0]).with(Wish.LEVELS_FADE, fading ? fades : new float[0]);
    }

    private static Wishes withLook(Wishes wishes, StandingWishes standing, Now now) {
        Held look = standing.held().get(Aim.of(Ask.LOOK));
        return look == null ? wishes : wishes.withLook(look.setting().word(), until(look.end(), now));
    }

    private Wishes withPixels(Wishes wishes, StandingWishes standing, Now now) {
        List<Map.Entry<Aim, Held>> colours = standing.of(Ask.PIXELS);
        if (colours.isEmpty()) {
            return wishes;
        }
        float[] rgba = fitting.canvas().rgba();
        Arrays.fill(rgba, Float.NaN);
        long left = 0;
        for (Map.Entry<Aim, Held> colour : colours) {
            lay(
                    places.pixels(colour.getKey().name()),
                    Colours.light(colour.getValue().setting().word()),
                    rgba);
            left = Math.max(left, colour.getValue().end().leftNanos(now));
        }
        return wishes.withPixels(rgba, now.nanos() + left);
    }

    private static long until(End end, Now now) {
        return now.nanos() + end.leftNanos(now);
    }

    private static void lay(BitSet pixels, Light light, float[] rgba) {
        for (int i = pixels.nextSetBit(0); i >= 0; i = pixels.nextSetBit(i + 1)) {
            rgba[4 * i] = light.red();
            rgba[4 * i + 1] = light.green();
            rgba[4 * i + 2] = light.blue();
            rgba[4 * i + 3] = 1;
        }
    }
}
