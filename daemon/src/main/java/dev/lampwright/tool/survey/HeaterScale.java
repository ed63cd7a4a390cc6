package dev.lampwright.tool.survey;

import dev.lampwright.payload.Unit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/**
 * Whether heaters are reported in tenths, hundredths or kelvin without saying so, judged by how cold the coldest is and how hot the
 * hottest. Considers values named as a bed's or a nozzle's temperature, and values that approach another value and stay there as a heater
 * does.
 */
final class HeaterScale {
    /** Nothing of a printer is hotter, in °F or K. Common practice, no source. */
    private static final double HOTTEST = 900;

    /** A room with a printer, in K: 8 to 50 °C. Common practice, no source. */
    private static final double COLDEST_ROOM_K = 281;

    private static final double HOTTEST_ROOM_K = 323;

    /** No bed is this hot in °C. Common practice, no source. */
    private static final double NO_BED_C = 200;

    private static final double MOVED = 25;
    private static final int FEW = 6;
    private static final int MOST = 60;
    private static final double[] SCALES = {1, 0.1, 0.01};

    private final List<Trail> actuals = new ArrayList<>();
    private double hottest;
    private double coldest = Double.POSITIVE_INFINITY;
    private double coldestBed = Double.NEGATIVE_INFINITY;

    /**
     * Evaluates.
     *
     * @param trails all values
     */
    HeaterScale(Collection<Trail> trails) {
        List<Trail> numbers = trails.stream()
                .filter(trail -> trail.numeric() && trail.most() > 0 && trail.least() >= 0)
                .toList();
        List<Trail> targets =
                numbers.stream().filter(Trail::isLikeATarget).limit(MOST).toList();
        for (Trail trail : numbers) {
            boolean bed = Thermometer.isTemperatureOf(trail, Concept.BED);
            boolean named = bed || Thermometer.isTemperatureOf(trail, Concept.NOZZLE);
            boolean isTarget = trail.names().speakOf(Concept.TARGET)
                    || Moves.of(trail.series()).distinct() <= FEW;
            if (named && trail.names().speakOf(Concept.TARGET)) {
                hottest = Math.max(hottest, trail.most());
            } else if (named || (!isTarget && isHeater(trail, targets))) {
                take(trail, bed);
            }
        }
    }

    private void take(Trail trail, boolean bed) {
        actuals.add(trail);
        hottest = Math.max(hottest, trail.most());
        coldest = Math.min(coldest, trail.least());
        coldestBed = bed ? Math.max(coldestBed, trail.least()) : coldestBed;
    }

    private static boolean isHeater(Trail actual, List<Trail> targets) {
        return targets.stream().anyMatch(target -> target != actual && FollowEvidence.proves(actual, target));
    }

    /** How they are reported; {@link Gauge#PLAIN} if nothing rules out °C, or if it may be °F. */
    Gauge gauge() {
        if (actuals.isEmpty()) {
            return Gauge.PLAIN;
        }
        for (double scale : SCALES) {
            if (hottest * scale <= HOTTEST) {
                boolean kelvin = isKelvin(scale);
                return kelvin ? new Gauge(Unit.KELVIN, scale) : scale == 1 ? Gauge.PLAIN : new Gauge(Unit.OWN, scale);
            }
        }
        return Gauge.PLAIN;
    }

    private boolean isKelvin(double scale) {
        boolean room = coldest * scale >= COLDEST_ROOM_K && coldest * scale <= HOTTEST_ROOM_K;
        boolean moved = (hottest - coldest) * scale > MOVED;
        return room && (moved || coldestBed * scale > NO_BED_C);
    }
}
