package dev.lampwright.look;

import java.util.Arrays;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * When a layer is lit, written as sea charts write the character of a light. Sources: IHO INT 1 section P10; IALA Recommendation
 * R0110. {@code swell} is our own: a smooth rise and fall. A value: two that light alike are equal.
 */
public final class Rhythm {
    /** Always lit: F. */
    public static final Rhythm FIXED = new Rhythm(1, new double[] {1}, false);

    private static final Pattern NOTATION =
            Pattern.compile("(F|Iso|Oc|Fl|LFl|Q|VQ|Mo|swell)(?:\\(([^)]+)\\))?(?: ?([0-9]+(?:\\.[0-9]+)?) ?s)?");
    /** A flash of INT 1 is shorter than 2 s; this is long enough to be seen by one who only glances. */
    private static final double FLASH_S = 0.5;
    /** INT 1: a long flash lasts 2 s or more. */
    private static final double LONG_FLASH_S = 2.0;
    /** INT 1: quick is 50 to 79 flashes a minute; this is 60. */
    private static final double QUICK_S = 1.0;
    /** INT 1: very quick is 80 to 159 flashes a minute; this is 100. */
    private static final double VERY_QUICK_S = 0.6;
    /** IALA R0110: a dot of a Morse light lasts about 0.5 s, a dash three times as long. */
    private static final double DOT_S = 0.5;
    /** How long light takes to come or go, so that nothing is harsh. Like a lamp's own inertia; common practice, no source. */
    private static final double EDGE_S = 0.1;

    /** The letters of the international Morse code, from A on. Source: Recommendation ITU-R M.1677-1, section 1.1.1. */
    private static final String[] MORSE = {
        ".-", "-...", "-.-.", "-..", ".", "..-.", "--.", "....", "..", ".---", "-.-", ".-..", "--",
        "-.", "---", ".--.", "--.-", ".-.", "...", "-", "..-", "...-", ".--", "-..-", "-.--", "--.."
    };

    private final double period;
    private final double[] changes;
    private final boolean swell;

    /** Lit from 0 to the first change, dark to the second, lit to the third, and so on. */
    private Rhythm(double period, double[] changes, boolean swell) {
        this.period = period;
        this.changes = changes;
        this.swell = swell;
    }

    /**
     * Reads a rhythm.
     *
     * @param text for instance {@code F}, {@code Iso 2s}, {@code Oc 4s}, {@code Fl 3s}, {@code Fl(2) 6s}, {@code LFl 10s}, {@code Q},
     *     {@code VQ}, {@code Mo(U) 15s}, {@code swell 4s}
     * @return the rhythm
     * @throws IllegalArgumentException if it is none; the message says why and what would be right
     */
    public static Rhythm parse(String text) {
        Matcher matcher = NOTATION.matcher(text.strip());
        if (!matcher.matches()) {
            throw wrong(text, "write one such as \"Iso 2s\", \"Fl(2) 6s\", \"Q\" or \"swell 4s\"");
        }
        String kind = matcher.group(1);
        String group = matcher.group(2);
        double period = matcher.group(3) == null ? Double.NaN : Double.parseDouble(matcher.group(3));
        return switch (kind) {
            case "F" -> FIXED;
            case "Q" -> of(text, orElse(period, QUICK_S), QUICK_S / 2);
            case "VQ" -> of(text, orElse(period, VERY_QUICK_S), VERY_QUICK_S / 2);
            case "Iso" -> of(text, period, period / 2);
            case "Oc" -> of(text, period, period * 3 / 4);
            case "LFl" -> of(text, period, LONG_FLASH_S);
            case "Fl" -> of(text, period, flashes(text, group));
            case "Mo" -> of(text, period, morse(text, group));
            default -> new Rhythm(of(text, period).period, new double[0], true);
        };
    }

    /**
     * How far a layer is lit.
     *
     * @param seconds since its look came on, 0 or more
     * @return 0 to 1
     */
    public float level(double seconds) {
        double phase = seconds % period;
        if (swell) {
            return (float) (0.5 - 0.5 * Math.cos(2 * Math.PI * phase / period));
        }
        return isFixed() ? 1 : edged(phase);
    }

    /** Half lit at the very moment of a change, and fully EDGE_S / 2 later. */
    private float edged(double phase) {
        boolean lit = true;
        double last = 0;
        double next = period;
        for (double change : changes) {
            if (phase < change) {
                next = change;
                break;
            }
            last = change;
            lit = !lit;
        }
        double away = Math.min(0.5, Math.min(phase - last, next - phase) / EDGE_S);
        return (float) (lit ? 0.5 + away : 0.5 - away);
    }

    /**
     * How long one cycle lasts.
     *
     * @return seconds
     */
    public double period() {
        return period;
    }

    /**
     * Whether light comes and goes at a stroke, rather than being there always or rising and falling smoothly.
     *
     * @return false for {@code F} and {@code swell}
     */
    public boolean flashes() {
        return !swell && !isFixed();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Rhythm rhythm
                && period == rhythm.period
                && swell == rhythm.swell
                && Arrays.equals(changes, rhythm.changes);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(changes) + Double.hashCode(period) + Boolean.hashCode(swell);
    }

    /** Only what is always lit has no change within its period. */
    private boolean isFixed() {
        return changes.length == 1 && changes[0] >= period;
    }

    private static double orElse(double value, double other) {
        return Double.isNaN(value) ? other : value;
    }

    private static Rhythm of(String text, double period, double... changes) {
        if (Double.isNaN(period) || period <= 0) {
            throw wrong(text, "it needs a period, such as \"" + withoutPeriod(text) + " 4s\"");
        }
        if (changes.length > 0 && changes[changes.length - 1] >= period) {
            throw wrong(text, "its light does not fit into its period; make it longer");
        }
        return new Rhythm(period, changes, false);
    }

    /** What comes before the seconds in a rhythm that is otherwise correct. */
    private static String withoutPeriod(String text) {
        String bare = text.strip();
        int end = bare.indexOf(')') + 1;
        while (end < bare.length() && Character.isLetter(bare.charAt(end))) {
            end++;
        }
        return bare.substring(0, end);
    }

    private static double[] flashes(String text, String group) {
        int count = 1;
        if (group != null) {
            if (!group.matches("[1-9]")) {
                throw wrong(text, "a group has 1 to 9 flashes, such as \"Fl(2) 6s\"");
            }
            count = Integer.parseInt(group);
        }
        double[] changes = new double[2 * count - 1];
        Arrays.setAll(changes, i -> (i + 1) * FLASH_S);
        return changes;
    }

    private static double[] morse(String text, String group) {
        String signs = group == null ? "" : signs(group.toUpperCase(Locale.ROOT));
        if (signs.isEmpty()) {
            throw wrong(text, "name a letter, such as \"Mo(U) 15s\"");
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

    /** Dots and dashes of a letter from A to Z; empty if it is not one letter. */
    private static String signs(String letter) {
        boolean known = letter.length() == 1 && letter.charAt(0) >= 'A' && letter.charAt(0) <= 'Z';
        return known ? MORSE[letter.charAt(0) - 'A'] : "";
    }

    private static IllegalArgumentException wrong(String text, String right) {
        return new IllegalArgumentException("\"" + text + "\" is not a valid rhythm; " + right);
    }
}
