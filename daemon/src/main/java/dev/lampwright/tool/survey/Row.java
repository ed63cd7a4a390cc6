package dev.lampwright.tool.survey;

import java.util.Optional;

/**
 * What was heard of one value, for a table.
 *
 * @param topic its topic
 * @param place where in the payload it stands
 * @param count how often it came
 * @param perSecond how often a second; 0 if it came once only
 * @param range the smallest and the largest number, or the different words; shortened
 * @param last the newest value
 * @param found what it is, if that is known
 */
public record Row(
        String topic, String place, long count, double perSecond, String range, String last, Optional<Found> found) {}
