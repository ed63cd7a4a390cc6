package dev.lampwright.desk;

import dev.lampwright.colour.CssColour;
import dev.lampwright.colour.Light;
import dev.lampwright.desk.Ask.Circumstances;
import dev.lampwright.desk.Ask.Outcome;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import java.time.Duration;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Single pixels and zones in colours of their own, for a time. What one message asks for is seen in one frame. */
final class PixelsAsk {
    private static final Pattern RUN = Pattern.compile("(\\d{1,5})(?:-(\\d{1,5}))?");

    private PixelsAsk() {}

    /** Lights the pixels that a request asks for, as {@link Ask#done} does. */
    static Outcome done(Ask ask, Request request, Circumstances circumstances, StandingWishes before)
            throws RefusedException {
        Optional<String> word = request.word(ask.word());
        if (word.isPresent()) {
            if (!word.get().equals(Spoken.AUTO)) {
                throw new RefusedException(ask.word() + " is \"" + Request.shown(word.get()) + "\"; " + ask.wanted());
            }
            StandingWishes none = before.with(before.wishes().withPixels(new float[0], circumstances.nanos()));
            return new Outcome(none, "pixels as the look says");
        }
        Map<String, String> colours = request.words(ask.word());
        Duration time = request.lasting(Ask.A_MINUTE);
        if (colours.isEmpty()) {
            throw ask.missing();
        }
        float[] rgba = circumstances.fitting().canvas().rgba();
        Arrays.fill(rgba, Float.NaN);
        for (Map.Entry<String, String> entry : colours.entrySet()) {
            lay(zone(circumstances.fitting(), entry.getKey()), light(entry.getKey(), entry.getValue()), rgba);
        }
        StandingWishes standing = before.with(before.wishes().withPixels(rgba, circumstances.nanos() + time.toNanos()));
        return new Outcome(standing, lit(rgba) + " pixels for " + Spoken.seconds(time));
    }

    private static Zone zone(Fitting fitting, String place) throws RefusedException {
        Zone zone = fitting.zones().get(place);
        if (zone != null) {
            return zone;
        }
        Matcher run = RUN.matcher(place);
        if (!run.matches()) {
            throw new RefusedException("there is no zone \"" + Request.shown(place) + "\"; choose one of: "
                    + String.join(", ", fitting.zones().keySet()) + ", or pixels such as 3 or 5-9");
        }
        int first = Integer.parseInt(run.group(1));
        int last = run.group(2) == null ? first : Integer.parseInt(run.group(2));
        if (Math.max(first, last) >= fitting.pixels()) {
            throw new RefusedException(
                    place + " is past the end of the strip; stay within 0-" + (fitting.pixels() - 1));
        }
        return Zone.run(first, last);
    }

    private static Light light(String place, String colour) throws RefusedException {
        try {
            return CssColour.parse(colour);
        } catch (IllegalArgumentException e) {
            throw new RefusedException(
                    Request.shown(place) + ": " + e.getMessage().replace(colour, Request.shown(colour)));
        }
    }

    private static void lay(Zone zone, Light light, float[] rgba) {
        for (int i = 0; i < zone.pixelCount(); i++) {
            int at = 4 * zone.pixel(i);
            rgba[at] = light.red();
            rgba[at + 1] = light.green();
            rgba[at + 2] = light.blue();
            rgba[at + 3] = 1;
        }
    }

    private static int lit(float[] rgba) {
        int lit = 0;
        for (int i = 0; i < rgba.length; i += 4) {
            lit += Float.isNaN(rgba[i]) ? 0 : 1;
        }
        return lit;
    }
}
