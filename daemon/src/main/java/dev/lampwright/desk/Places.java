package dev.lampwright.desk;

import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import java.util.BitSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Zones by name, pixels and runs of pixels by number. */
final class Places {
    private static final Pattern RUN = Pattern.compile("(\\d{1,5})(?:-(\\d{1,5}))?");

    private final Fitting fitting;

    Places(Fitting fitting) {
        this.fitting = fitting;
    }

    /**
     * Reads the name of a place.
     *
     * @param place a zone, or pixels such as 3 or 5-9
     * @return its canonical name: the lower number first
     */
    String require(String place) throws RefusedException {
        if (fitting.zones().containsKey(place)) {
            return place;
        }
        Matcher run = RUN.matcher(place);
        if (!run.matches()) {
            throw new RefusedException(
                    Reason.UNKNOWN_ZONE,
                    Request.shown(place),
                    String.join(", ", fitting.zones().keySet()));
        }
        int one = Integer.parseInt(run.group(1));
        int other = run.group(2) == null ? one : Integer.parseInt(run.group(2));
        int first = Math.min(one, other);
        int last = Math.max(one, other);
        if (last >= fitting.pixels()) {
            throw new RefusedException(Reason.PAST_THE_END, place, fitting.pixels() - 1);
        }
        return first == last ? Integer.toString(first) : first + "-" + last;
    }

    /**
     * The pixels of a place.
     *
     * @param place as {@link #require} returned it
     * @return a new set
     */
    BitSet pixels(String place) {
        BitSet pixels = new BitSet();
        Zone zone = fitting.zones().get(place);
        if (zone == null) {
            int middle = place.indexOf('-');
            int first = Integer.parseInt(middle < 0 ? place : place.substring(0, middle));
            pixels.set(first, 1 + Integer.parseInt(place.substring(middle + 1)));
            return pixels;
        }
        for (int i = 0; i < zone.pixelCount(); i++) {
            pixels.set(zone.pixel(i));
        }
        return pixels;
    }
}
