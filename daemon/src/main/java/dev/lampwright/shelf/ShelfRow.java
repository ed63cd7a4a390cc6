package dev.lampwright.shelf;

import java.util.Comparator;
import java.util.function.Function;
import java.util.regex.Pattern;

/**
 * A rig on the shelf.
 *
 * @param status what it reported last
 * @param standing how much it needs a person
 * @param heardSeconds how long ago that was, in s; NaN if it is not known
 * @param twice whether several daemons report under its prefix
 */
public record ShelfRow(RigStatus status, Standing standing, double heardSeconds, boolean twice) {
    private static final Pattern NUMBER = Pattern.compile("\\d+");
    private static final int DIGITS = 12;

    /** Who needs a person first, then who is ready soonest, then by name, where 2 comes before 10. */
    public static final Comparator<ShelfRow> ORDER = Comparator.comparing(ShelfRow::standing)
            .thenComparingDouble(ShelfRow::soonest)
            .thenComparing(byName(RigStatus::rig))
            .thenComparing(byName(RigStatus::prefix));

    /**
     * A rig of this process.
     *
     * @param status what it reports now
     * @return its row
     */
    public static ShelfRow here(RigStatus status) {
        return new ShelfRow(status, Standing.of(status, false), 0, false);
    }

    /**
     * To the minute, so that rigs that are ready at nearly the same time do not keep swapping places. Comparing puts NaN, for an unknown
     * time, last.
     */
    private double soonest() {
        return standing == Standing.WORKING ? Math.rint(status.doing().leftSeconds() / 60) : 0;
    }

    private static Comparator<ShelfRow> byName(Function<RigStatus, String> name) {
        return Comparator.comparing(row -> padded(name.apply(row.status())), String.CASE_INSENSITIVE_ORDER);
    }

    private static String padded(String name) {
        return NUMBER.matcher(name)
                .replaceAll(number ->
                        "0".repeat(Math.max(0, DIGITS - number.group().length())) + number.group());
    }
}
