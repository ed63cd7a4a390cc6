package dev.lampwright.look;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Reads a rhythm. Sources: IHO INT 1, section P10, for the notation and the rates (in IHO S-4 it is B-471, from memory); IALA
 * Recommendation R0110 and the table of IALA's NAVGUIDE for groups. Anything else is refused with a list of what is valid.
 */
final class RhythmNotation {
    private static final String NUMBER = "([0-9]+(?:\\.[0-9]+)?)";
    private static final Pattern CHART =
            Pattern.compile("(F|Iso|Oc|Fl|LFl|Q|VQ|UQ|Mo|swell)(?:\\(([^)]*)\\))?(\\+LFl)?(?: ?" + NUMBER + " ?s)?");
    private static final Pattern OWN = Pattern.compile("on " + NUMBER + " ?s off " + NUMBER + " ?s(?: |$)");

    /** A flash of INT 1 is shorter than 2 s; this is long enough to be seen at a glance. */
    private static final double FLASH_S = 0.5;
    /** INT 1, P10.5: a long flash lasts 2 s or more. */
    private static final double LONG_FLASH_S = 2.0;
    /** INT 1, P10.6: quick is 50 to 79 flashes a minute; this is 60. */
    private static final double QUICK_S = 1.0;
    /** INT 1, P10.7: very quick is 80 to 159 flashes a minute; this is 100. */
    private static final double VERY_QUICK_S = 0.6;
    /** INT 1, P10.8: ultra quick is 160 flashes a minute or more; this is 160, since more would be over the flash limit. */
    private static final double ULTRA_QUICK_S = 60.0 / 160;
    /** IALA NAVGUIDE, table of rhythmic characters: Oc(2) and Oc(2+1) have eclipses of 1 s, with 1 s of light between those of a group. */
    private static final double ECLIPSE_S = 1.0;
    /** IALA R0110: a dot of a Morse light lasts about 0.5 s, a dash three times as long. */
    private static final double DOT_S = 0.5;

    private static final int MOST_IN_A_GROUP = 9;
    private static final int MOST_STRETCHES = 20;
    private static final double LONGEST_S = 86_400;

    /** Everything that is valid, by examples. */
    static final String UNDERSTOOD =
            "\"F\", \"Iso 2s\", \"Oc 4s\", \"Oc(2) 6s\", \"Fl 3s\", \"Fl(2) 6s\", \"Fl(2+1) 10s\", \"LFl 10s\","
                    + " \"Q\", \"Q(3) 10s\", \"Q(6)+LFl 15s\", \"VQ\", \"VQ(3) 5s\", \"UQ\", \"Mo(U) 15s\", \"swell 4s\", \"on 0.5s off 1.5s\"";

    /** The letters of the international Morse code, from A on. Source: Recommendation ITU-R M.1677-1, section 1.1.1. */
    private static final String[] MORSE = {
        ".-", "-...", "-.-.", "-..", ".", "..-.", "--.", "....", "..", ".---", "-.-", ".-..", "--",
        "-.", "---", ".--.", "--.-", ".-.", "...", "-", "..-", "...-", ".--", "-..-", "-.--", "--.."
    };

    private final String text;
    private String kind = "";
    private String group = "";
    private boolean longAtEnd;
    private double period = Double.NaN;

    RhythmNotation(String text) {
        this.text = text;
    }

    /**
     * Parses it.
     *
     * @return the rhythm
     * @throws IllegalArgumentException if it is not valid; the message says why and, after a semicolon, what would be valid
     */
    Rhythm rhythm() {
        String bare = text.strip();
        if (bare.startsWith("on ")) {
            return own(bare);
        }
        Matcher matcher = CHART.matcher(bare);
        if (!matcher.matches()) {
            throw wrong("write one such as " + UNDERSTOOD);
        }
        kind = matcher.group(1);
        group = matcher.group(2) == null ? "" : matcher.group(2);
        longAtEnd = matcher.group(3) != null;
        period = matcher.group(4) == null ? Double.NaN : Double.parseDouble(matcher.group(4));
        refuseIf(
                matcher.group(2) != null
                        && Stream.of("F", "Iso", "LFl", "UQ", "swell").anyMatch(kind::equals),
                "group");
        refuseIf(longAtEnd && (group.isEmpty() || !kind.endsWith("Q")), "+LFl");
        refuseIf(!Double.isNaN(period) && (kind.equals("F") || kind.equals("UQ")), "time");
        return charted(matcher.group(2) != null);
    }

    private Rhythm charted(boolean grouped) {
        return switch (kind) {
            case "F" -> Rhythm.FIXED;
            case "Q" -> quick(grouped, QUICK_S);
            case "VQ" -> quick(grouped, VERY_QUICK_S);
            case "UQ" -> Rhythm.changing(ULTRA_QUICK_S, ULTRA_QUICK_S / 2);
            case "Iso" -> of(period / 2);
            case "Oc" -> grouped && !group.equals("1") ? occulting() : of(period * 3 / 4);
            case "LFl" -> of(LONG_FLASH_S);
            case "Fl" -> grouped && group.contains("+") ? groups(FLASH_S, FLASH_S) : of(flashes(grouped));
            case "Mo" -> of(morse());
            default -> swell();
        };
    }

    private Rhythm swell() {
        requirePeriod();
        return Rhythm.swelling(period);
    }

    /** Explicit times: on and off alternating, as often as written. */
    private Rhythm own(String bare) {
        List<Double> changes = new ArrayList<>();
        Matcher matcher = OWN.matcher(bare);
        double at = 0;
        int end = 0;
        while (matcher.find() && matcher.start() == end) {
            for (int each = 1; each <= 2; each++) {
                double seconds = Double.parseDouble(matcher.group(each));
                if (seconds == 0 || seconds > LONGEST_S) {
                    throw wrong("give each on and each off more than 0 s, and a day at most");
                }
                at += seconds;
                changes.add(at);
            }
            end = matcher.end();
        }
        if (end < bare.length() || changes.size() > MOST_STRETCHES) {
            throw wrong("write \"on 0.5s off 1.5s\", up to " + MOST_STRETCHES / 2 + " times in a row");
        }
        changes.remove(changes.size() - 1);
        Rhythm rhythm = Rhythm.changing(
                at, changes.stream().mapToDouble(Double::doubleValue).toArray());
        return rhythm.withEdge(Math.min(Rhythm.USUAL_EDGE_S, rhythm.longestEdge()));
    }

    /** A single flash, or a group of flashes with darkness of the same length between them; then the remaining darkness. */
    private Rhythm quick(boolean grouped, double every) {
        if (!grouped || group.equals("1")) {
            refuseIf(longAtEnd, "+LFl");
            return Double.isNaN(period) ? within(every, every / 2) : of(every / 2);
        }
        if (!longAtEnd) {
            return groups(every / 2, every / 2);
        }
        int[] counts = counts();
        refuseIf(counts.length > 1, "+LFl");
        double[] changes = Arrays.copyOf(run(counts[0], every / 2, every / 2), 2 * counts[0] + 1);
        changes[2 * counts[0] - 1] = counts[0] * every;
        changes[2 * counts[0]] = counts[0] * every + LONG_FLASH_S;
        return of(changes);
    }

    /** Groups of flashes. The rest of the period is shared evenly among the pauses after them, as in the NAVGUIDE's Oc(2+1) 12s. */
    private Rhythm groups(double flash, double gap) {
        int[] counts = counts();
        double taken = Arrays.stream(counts)
                .mapToDouble(n -> n * flash + (n - 1) * gap)
                .sum();
        double pause = pause(taken, counts.length, gap);
        double at = 0;
        List<Double> changes = new ArrayList<>();
        for (int count : counts) {
            for (int i = 0; i < count; i++) {
                changes.add(at + flash);
                at += flash + (i < count - 1 ? gap : pause);
                changes.add(at);
            }
        }
        return closed(changes);
    }

    /** The same the other way round: light before each group of eclipses. */
    private Rhythm occulting() {
        int[] counts = counts();
        double taken = Arrays.stream(counts).map(n -> 2 * n - 1).sum() * ECLIPSE_S;
        double light = pause(taken, counts.length, ECLIPSE_S);
        double at = 0;
        List<Double> changes = new ArrayList<>();
        for (int count : counts) {
            for (int i = 0; i < count; i++) {
                at += i == 0 ? light : ECLIPSE_S;
                changes.add(at);
                at += ECLIPSE_S;
                changes.add(at);
            }
        }
        return closed(changes);
    }

    private double pause(double taken, int groups, double gap) {
        requirePeriod();
        double pause = (period - taken) / groups;
        if (pause <= gap) {
            throw wrong("its groups are not far enough apart; make its period longer than "
                    + shortened(taken + groups * gap) + " s");
        }
        return pause;
    }

    /** The changes without the last, which is the end of the period. */
    private Rhythm closed(List<Double> changes) {
        return Rhythm.changing(
                period,
                changes.stream()
                        .limit(changes.size() - 1L)
                        .mapToDouble(Double::doubleValue)
                        .toArray());
    }

    private Rhythm of(double... changes) {
        requirePeriod();
        return within(period, changes);
    }

    private Rhythm within(double seconds, double... changes) {
        if (changes[changes.length - 1] >= seconds) {
            throw wrong("its light does not fit into its period; make it longer");
        }
        return Rhythm.changing(seconds, changes);
    }

    private void requirePeriod() {
        if (!(period > 0 && period < Double.POSITIVE_INFINITY)) {
            throw wrong("it needs a period, such as \"" + withoutPeriod() + (group.isEmpty() ? " 4s\"" : " 10s\""));
        }
    }

    /** The part before the seconds. */
    private String withoutPeriod() {
        return kind + (group.isEmpty() ? "" : '(' + group + ')') + (longAtEnd ? "+LFl" : "");
    }

    private int[] counts() {
        if (!group.matches("[1-9](?:\\+[1-9]){0,2}")) {
            throw wrong("a group has 1 to " + MOST_IN_A_GROUP + " flashes, such as \"" + kind
                    + "(3) 10s\", or two or three of them, \"" + kind + "(2+1) 12s\"");
        }
        return Arrays.stream(group.split("\\+")).mapToInt(Integer::parseInt).toArray();
    }

    private double[] flashes(boolean grouped) {
        return run(grouped ? counts()[0] : 1, FLASH_S, FLASH_S);
    }

    private static double[] run(int count, double flash, double gap) {
        double[] changes = new double[2 * count - 1];
        double at = 0;
        for (int i = 0; i < changes.length; i++) {
            at += i % 2 == 0 ? flash : gap;
            changes[i] = at;
        }
        return changes;
    }

    private double[] morse() {
        String signs = signs(group.toUpperCase(Locale.ROOT));
        if (signs.isEmpty()) {
            throw wrong("name a letter, such as \"Mo(U) 15s\"");
        }
        double[] changes = new double[2 * signs.length() - 1];
        double at = 0;
        for (int i = 0; i < signs.length(); i++) {
            at += signs.charAt(i) == '-' ? 3 * DOT_S : DOT_S;
            changes[2 * i] = at;
            at += DOT_S;
            if (2 * i + 1 < changes.length) {
                changes[2 * i + 1] = at;
            }
        }
        return changes;
    }

    /** The dots and dashes of a letter from A to Z; empty if it is not one letter. */
    private static String signs(String letter) {
        boolean known = letter.length() == 1 && letter.charAt(0) >= 'A' && letter.charAt(0) <= 'Z';
        return known ? MORSE[letter.charAt(0) - 'A'] : "";
    }

    private static String shortened(double seconds) {
        return String.valueOf(Math.round(10 * seconds) / 10.0);
    }

    private void refuseIf(boolean wrong, String part) {
        if (wrong) {
            throw wrong(kind + " takes no " + part + " here; write one such as " + UNDERSTOOD);
        }
    }

    private IllegalArgumentException wrong(String right) {
        return new IllegalArgumentException("\"" + text + "\" is not a valid rhythm; " + right);
    }
}
