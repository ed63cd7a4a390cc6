package dev.lampwright.tool.survey;

import dev.lampwright.payload.Source;
import java.util.List;

/**
 * A reading that Lampwright has no name for, under the name that the survey proposes: a number such as a fan's, or one of the two that a
 * further heater has.
 *
 * @param key the name in the configuration
 * @param source where it is reported
 * @param unit the unit for the configuration; empty for none
 * @param scale factor for the number; 1 to keep it unchanged
 * @param range what counts as 0 and what counts as 1; empty if that is open or follows from the unit
 * @param certain whether there is no doubt about what it is, nor about its unit and its range
 * @param reasons why, worded for the user; doubts come last
 */
public record FoundOwn(
        String key,
        Source source,
        String unit,
        double scale,
        List<Double> range,
        boolean certain,
        List<String> reasons) {
    /** Keeps copies of the lists. */
    public FoundOwn {
        range = List.copyOf(range);
        reasons = List.copyOf(reasons);
    }
}
