package dev.lampwright.payload;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Durations reported as text. */
final class Durations {
    private static final int MOST_CHARS = 40;
    private static final String NUMBER = "(\\d+(?:[.,]\\d+)?)";
    private static final Pattern WEEKS = Pattern.compile("P" + NUMBER + "W", Pattern.CASE_INSENSITIVE);
    private static final Pattern DAYS_AND_TIME = Pattern.compile(
            "P(?:" + NUMBER + "D)?(?:T(?:" + NUMBER + "H)?(?:" + NUMBER + "M)?(?:" + NUMBER + "S)?)?",
            Pattern.CASE_INSENSITIVE);
    private static final Pattern CLOCK = Pattern.compile("(\\d+):([0-5]?\\d):([0-5]?\\d(?:\\.\\d+)?)");
    private static final Pattern TWO_PARTS = Pattern.compile("(\\d{1,5}):([0-5]\\d)");
    private static final Pattern NAMED_PARTS = Pattern.compile(
            part(UnitWords.DAYS) + part(UnitWords.HOURS) + part(UnitWords.MINUTES) + part(UnitWords.SECONDS),
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
    /** One number with one letter, other than those that everybody uses, may be of any unit: 12 g is rather a weight. */
    private static final Pattern ONE_LETTER =
            Pattern.compile(NUMBER + "\\s*[\\p{L}&&[^dhms\\p{IsHan}\\p{IsHangul}]]", Pattern.CASE_INSENSITIVE);

    private static final double[] DAYS_AND_TIME_S = {86_400, 3600, 60, 1};
    private static final double[] CLOCK_S = {3600, 60, 1};
    private static final double WEEK_S = 604_800;

    private Durations() {}

    private static String part(String unit) {
        return "(?:" + NUMBER + "\\s*(?:" + unit + ")(?![\\p{L}\\p{M}])\\.?[\\s,]*)?";
    }

    /**
     * A duration of ISO 8601-1:2019, section 5.5.2: {@code PnW}, or {@code PnDTnHnMnS} leaving out parts that are not needed. Only the last
     * part may have a decimal fraction. Years and months are refused, as they have no fixed length; so is a sign.
     *
     * @param text for example {@code PT1H30M}
     * @return seconds
     * @throws UnreadableException if it is not such a duration
     */
    static double iso(String text) throws UnreadableException {
        Matcher weeks = WEEKS.matcher(text);
        Matcher parts = DAYS_AND_TIME.matcher(text);
        if (text.length() <= MOST_CHARS && weeks.matches()) {
            return number(weeks.group(1)) * WEEK_S;
        }
        boolean named = text.length() > 1 && Character.isLetter(text.charAt(text.length() - 1)) && !endsWithT(text);
        if (text.length() > MOST_CHARS || !named || !parts.matches() || fractionWithin(parts)) {
            throw new UnreadableException(
                    "the value is not an ISO 8601 duration of weeks, or of days, hours, minutes and seconds");
        }
        return sum(parts, DAYS_AND_TIME_S);
    }

    private static boolean endsWithT(String text) {
        return text.endsWith("T") || text.endsWith("t");
    }

    private static boolean fractionWithin(Matcher parts) {
        boolean fraction = false;
        for (int i = 1; i <= parts.groupCount(); i++) {
            String part = parts.group(i);
            if (part != null && fraction) {
                return true;
            }
            fraction |= part != null && !part.matches("\\d+");
        }
        return false;
    }

    /**
     * Hours, minutes and seconds separated by colons.
     *
     * @param text for example {@code 1:30:00}
     * @return seconds
     * @throws UnreadableException if it is not valid, or minutes or seconds are 60 or more
     */
    static double clock(String text) throws UnreadableException {
        Matcher parts = CLOCK.matcher(text);
        if (text.length() > MOST_CHARS || !parts.matches()) {
            throw new UnreadableException("the value is not a time in hours, minutes and seconds such as 1:30:00");
        }
        return sum(parts, CLOCK_S);
    }

    /**
     * Two numbers separated by a colon: minutes and seconds, or hours and minutes.
     *
     * @param text for example {@code 90:30}
     * @return sixty times the first plus the second; seconds, if it is minutes and seconds
     * @throws UnreadableException if it is not valid, or the second is 60 or more
     */
    static double twoParts(String text) throws UnreadableException {
        Matcher parts = TWO_PARTS.matcher(text);
        if (text.length() > MOST_CHARS || !parts.matches()) {
            throw new UnreadableException("the value is not a time of two parts such as 1:30");
        }
        return 60 * number(parts.group(1)) + number(parts.group(2));
    }

    /**
     * Days, hours, minutes and seconds, each with its unit, in this order; unneeded parts are left out.
     *
     * @param text for example {@code 1h 30m}, {@code 2 days 3 hours} or {@code 12 min 05 s}
     * @return seconds
     * @throws UnreadableException if it is not valid
     */
    static double parts(String text) throws UnreadableException {
        Matcher parts = NAMED_PARTS.matcher(text);
        boolean isDoubtful = ONE_LETTER.matcher(text).matches();
        if (text.isBlank() || text.length() > MOST_CHARS || isDoubtful || !parts.matches()) {
            throw new UnreadableException("the value is not a time with units such as 1h 30m");
        }
        return sum(parts, DAYS_AND_TIME_S);
    }

    private static double sum(Matcher parts, double[] seconds) {
        double sum = 0;
        for (int i = 0; i < seconds.length; i++) {
            String part = parts.group(i + 1);
            sum += part == null ? 0 : number(part) * seconds[i];
        }
        return sum;
    }

    private static double number(String text) {
        return Double.parseDouble(text.replace(',', '.'));
    }
}
