package dev.lampwright.fuzz;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * One change of a configuration's text: of its bytes, of its words, of its lines or of its values.
 *
 * @param seed selects it
 */
record Edit(long seed) {
    private static final Pattern WORD = Pattern.compile("[A-Za-z0-9_.+-]+|\"[^\"\n]*\"|[\\[\\]{}=,]");
    private static final Pattern VALUE = Pattern.compile("(?m)(?<==)[^#\n]*");
    private static final Pattern NUMBER = Pattern.compile("(?<=[ \\[\"-])\\d+(\\.\\d+)?(?=[ ,\\]\"\n-])");
    private static final Pattern NAME = Pattern.compile("\"[a-z. -]+\"");
    private static final Pattern PAIR = Pattern.compile("(?m)^([^#=\n\\[]+)=([^#\n]*)");
    private static final Pattern TABLE = Pattern.compile("(?ms)^\\[.*?(?=^\\[|\\z)");
    private static final Pattern COMMENTED = Pattern.compile("(?m)^# (?=[a-z_A-Z0-9.]+ = )");
    private static final int LONG = 70_000;
    private static final int DEEP = 300;

    /** The text after this change, which may leave it unchanged. */
    byte[] of(byte[] text) {
        SplittableRandom chance = new SplittableRandom(seed);
        return switch (chance.nextInt(5)) {
            case 0 -> bytes(text, chance);
            case 1 -> lines(text, chance);
            default -> utf8(words(new String(text, StandardCharsets.UTF_8), chance));
        };
    }

    private static byte[] bytes(byte[] text, SplittableRandom chance) {
        if (text.length == 0) {
            return Oddities.bytes(chance, 10);
        }
        int at = chance.nextInt(text.length);
        int to = Math.min(text.length, at + chance.nextInt(chance.nextInt(8) == 0 ? 2000 : 12));
        byte[] put = switch (chance.nextInt(5)) {
            case 0 -> Oddities.bytes(chance, 5);
            case 1 -> utf8(Oddities.text(chance));
            case 2 -> Arrays.copyOfRange(text, at, to);
            case 3 -> new byte[] {(byte) (text[at] ^ 1 << chance.nextInt(8))};
            default -> new byte[0];
        };
        ByteArrayOutputStream spoilt = new ByteArrayOutputStream();
        spoilt.write(text, 0, at);
        spoilt.writeBytes(put);
        boolean cut = chance.nextInt(20) == 0;
        spoilt.write(text, to, cut ? 0 : text.length - to);
        return spoilt.toByteArray();
    }

    private static byte[] lines(byte[] text, SplittableRandom chance) {
        List<String> lines = new ArrayList<>(Arrays.asList(new String(text, StandardCharsets.UTF_8).split("\n", -1)));
        int one = chance.nextInt(lines.size());
        int other = chance.nextInt(lines.size());
        switch (chance.nextInt(4)) {
            case 0 -> Collections.swap(lines, one, other);
            case 1 -> lines.add(other, lines.get(one));
            case 2 -> lines.remove(one);
            default -> lines.set(one, lines.get(one).replaceFirst("^# ", ""));
        }
        return utf8(String.join("\n", lines));
    }

    private static String words(String text, SplittableRandom chance) {
        return switch (chance.nextInt(13)) {
            case 0 -> replaced(text, WORD, pick(text, WORD, chance), chance);
            case 1 -> replaced(text, WORD, Oddities.text(chance), chance);
            case 2 -> replaced(text, VALUE, " " + pick(text, VALUE, chance).strip() + " ", chance);
            case 3 -> replaced(text, VALUE, " " + value(chance) + " ", chance);
            case 4 -> replaced(text, VALUE, " " + Oddities.number(chance) + " ", chance);
            case 5 -> swapped(text, chance);
            case 6 -> text + "\n" + pick(text, TABLE, chance);
            case 7, 8 -> replaced(text, NUMBER, number(chance), chance);
            case 9, 10 -> replaced(text, NAME, pick(text, NAME, chance), chance);
            case 11 -> replaced(text, COMMENTED, "", chance);
            default ->
                replaced(text, VALUE, " \"" + Oddities.text(chance).replaceAll("[\"\\\\\n\r]", "") + "\" ", chance);
        };
    }

    /** A number that may be valid. */
    private static String number(SplittableRandom chance) {
        return switch (chance.nextInt(4)) {
            case 0 -> Integer.toString(chance.nextInt(12));
            case 1 -> Integer.toString(chance.nextInt(300));
            case 2 -> Double.toString(chance.nextInt(200) / 100.0);
            default -> Oddities.pick(List.of("1", "3", "30", "255", "256", "1000", "5000", "65535", "65536"), chance);
        };
    }

    /** A value, usually of a wrong type. */
    private static String value(SplittableRandom chance) {
        return switch (chance.nextInt(10)) {
            case 0 -> "\"" + "x".repeat(chance.nextInt(LONG)) + "\"";
            case 1 -> "[".repeat(chance.nextInt(DEEP)) + "1" + "]".repeat(chance.nextInt(DEEP));
            case 2 -> "{ a = ".repeat(chance.nextInt(DEEP)) + "1" + " }".repeat(chance.nextInt(DEEP));
            case 3 -> "[" + "1, ".repeat(chance.nextInt(20_000)) + "]";
            case 4 -> "\"" + "0+".repeat(chance.nextInt(3000)) + "0\"";
            case 5 ->
                Oddities.pick(List.of("true", "false", "{}", "[]", "\"\"", "''", "[[]]", "[{}]", "\"\"\""), chance);
            case 6 -> Oddities.pick(List.of("1979-05-27T07:32:00Z", "07:32:00", "1979-05-27", "inf", "-nan"), chance);
            case 7 -> "[\"red\", \"red\", 1, true, { by = \"bed.heat\" }]";
            case 8 ->
                "\"\\u" + Integer.toHexString(0x10000 + chance.nextInt(0x10000)).substring(1) + "\"";
            default -> Integer.toString(chance.nextInt(-3, 400));
        };
    }

    private static String swapped(String text, SplittableRandom chance) {
        List<MatchResult> pairs = PAIR.matcher(text).results().toList();
        if (pairs.isEmpty()) {
            return text;
        }
        MatchResult pair = Oddities.pick(pairs, chance);
        String other = pair.group(2).strip() + " = " + pair.group(1).strip() + " ";
        return text.substring(0, pair.start()) + other + text.substring(pair.end());
    }

    private static String replaced(String text, Pattern what, String by, SplittableRandom chance) {
        List<MatchResult> found = what.matcher(text).results().toList();
        if (found.isEmpty()) {
            return text;
        }
        MatchResult one = Oddities.pick(found, chance);
        return text.substring(0, one.start()) + by + text.substring(one.end());
    }

    private static String pick(String text, Pattern what, SplittableRandom chance) {
        List<MatchResult> found = what.matcher(text).results().toList();
        return found.isEmpty() ? "" : Oddities.pick(found, chance).group();
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
