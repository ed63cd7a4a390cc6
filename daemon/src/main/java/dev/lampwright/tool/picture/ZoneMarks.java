package dev.lampwright.tool.picture;

import dev.lampwright.look.Zone;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The positions of zone names and direction arrows above a strip: in rows, so that none covers another. */
final class ZoneMarks {
    private static final String WHOLE = "strip";

    private final List<Mark> marks = new ArrayList<>();
    private final List<List<double[]>> taken = new ArrayList<>();

    /**
     * Pixels in a row.
     *
     * @param from pixel where the run begins, in the zone's direction
     * @param to pixel where it ends
     */
    record Run(int from, int to) {
        int length() {
            return Math.abs(to - from) + 1;
        }
    }

    /**
     * One zone.
     *
     * @param name its name
     * @param row 0 is nearest the strip
     * @param runs its pixels
     */
    record Mark(String name, int row, List<Run> runs) {
        /** The middle of the longest run, in pixels of the strip. */
        double middle() {
            Run longest = runs.get(0);
            for (Run run : runs) {
                longest = run.length() > longest.length() ? run : longest;
            }
            return (longest.from + longest.to) / 2.0;
        }
    }

    /**
     * Positions zones.
     *
     * @param zones by name; the whole strip, and zones that are not on the strip, are left out
     * @param pixels pixels of the strip
     * @param cell width of a pixel, in px
     * @param lettering the letters for the names
     */
    ZoneMarks(Map<String, Zone> zones, int pixels, int cell, Lettering lettering) {
        zones.forEach((name, zone) -> {
            List<Run> runs = runs(zone, pixels);
            if (!name.equals(WHOLE) && !runs.isEmpty()) {
                place(new Mark(name, 0, runs), cell, lettering.width(name));
            }
        });
    }

    /** The zones with their positions. */
    List<Mark> marks() {
        return marks;
    }

    /** How many rows there are. */
    int rows() {
        return taken.size();
    }

    private void place(Mark mark, int cell, double nameWidth) {
        double middle = (mark.middle() + 0.5) * cell;
        double left = middle - nameWidth / 2;
        double right = middle + nameWidth / 2;
        for (Run run : mark.runs) {
            left = Math.min(left, Math.min(run.from, run.to) * (double) cell);
            right = Math.max(right, (Math.max(run.from, run.to) + 1.0) * cell);
        }
        int row = 0;
        while (row < taken.size() && isTaken(taken.get(row), left, right)) {
            row++;
        }
        if (row == taken.size()) {
            taken.add(new ArrayList<>());
        }
        taken.get(row).add(new double[] {left, right});
        marks.add(new Mark(mark.name, row, mark.runs));
    }

    private static boolean isTaken(List<double[]> spans, double left, double right) {
        return spans.stream().anyMatch(span -> left < span[1] && right > span[0]);
    }

    /** Neighbours whose places increase, or decrease, by one. A mirrored zone has two, which meet in the middle. */
    private static List<Run> runs(Zone zone, int pixels) {
        List<Run> runs = new ArrayList<>();
        for (int from = 0; from < zone.pixelCount(); ) {
            int to = from;
            while (to + 1 < zone.pixelCount() && goesOn(zone, from, to)) {
                to++;
            }
            if (zone.pixel(from) < pixels) {
                boolean up = zone.place(from) <= zone.place(to);
                runs.add(up ? new Run(zone.pixel(from), zone.pixel(to)) : new Run(zone.pixel(to), zone.pixel(from)));
            }
            from = to + 1;
        }
        return runs;
    }

    private static boolean goesOn(Zone zone, int from, int at) {
        int pixelStep = zone.pixel(at + 1) - zone.pixel(at);
        int placeStep = zone.place(at + 1) - zone.place(at);
        boolean first = at == from;
        boolean samePixels = first || pixelStep == zone.pixel(from + 1) - zone.pixel(from);
        boolean samePlaces = first || placeStep == zone.place(from + 1) - zone.place(from);
        return Math.abs(pixelStep) == 1 && Math.abs(placeStep) == 1 && samePixels && samePlaces;
    }
}
