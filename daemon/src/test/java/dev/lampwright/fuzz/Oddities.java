package dev.lampwright.fuzz;

import java.util.List;
import java.util.SplittableRandom;

/** Values that programs tend to stumble over. */
final class Oddities {
    private static final int SHOWN = 300;
    private static final List<String> TEXTS = List.of(
            "",
            " ",
            "null",
            "\u0000",
            "\n",
            "\r\nWARN forged",
            "\u001b[31mred\u001b[0m",
            "\u2028",
            "\u202egnp.exe",
            "\ufeff",
            "\ue000\ue001",
            "\uf8ff",
            "🔥",
            "👩‍👩‍👧‍👦",
            "e\u0301\u0301\u0301\u0301",
            "ß",
            "İ",
            "fınıshed",
            "ﬁ",
            "٣",
            "½",
            "//",
            "/",
            "+",
            "#",
            "$SYS/x",
            "%s%n%d",
            "{}",
            "${jndi:ldap://127.0.0.1/x}",
            "../../etc/passwd",
            "'; DROP TABLE lights; --",
            "<script>alert(1)</script>",
            "(?<value>(a+)+)$",
            "=cmd|' /C calc'!A0",
            "\\",
            "\"",
            "'");
    private static final List<String> NUMBERS = List.of(
            "0",
            "-0",
            "-1",
            "1e308",
            "1e309",
            "-1e309",
            "1e-400",
            "0.1e",
            ".5",
            "5.",
            "+5",
            "0x10",
            "1_000",
            "1,5",
            "NaN",
            "nan",
            "Infinity",
            "-inf",
            "9223372036854775808",
            "99999999999999999999999999999999999999",
            "2147483648",
            "255",
            "256",
            "65535",
            "65536",
            "00",
            "٣",
            "1e2147483648",
            "12:30",
            "PT99999999999999999999H");

    private Oddities() {}

    /** A text, rarely a long one. */
    static String text(SplittableRandom chance) {
        return switch (chance.nextInt(6)) {
            case 0 -> number(chance);
            case 1 -> new String(characters(chance, 1 + chance.nextInt(12)), 0, 12).strip();
            case 2 -> pick(TEXTS, chance) + pick(TEXTS, chance);
            case 3 ->
                chance.nextInt(6) == 0
                        ? (pick(TEXTS, chance) + "x").repeat(1 + chance.nextInt(8000))
                        : pick(TEXTS, chance);
            default -> pick(TEXTS, chance);
        };
    }

    private static int[] characters(SplittableRandom chance, int from) {
        int[] characters = new int[12];
        for (int i = 0; i < characters.length; i++) {
            int character = i < from ? chance.nextInt(0x2FFFF) : 0x20;
            characters[i] = Character.getType(character) == Character.SURROGATE ? 0xFFFD : character;
        }
        return characters;
    }

    /** Something like a number. */
    static String number(SplittableRandom chance) {
        return chance.nextInt(3) == 0
                ? Double.toString(Double.longBitsToDouble(chance.nextLong()))
                : pick(NUMBERS, chance);
    }

    /** JSON, or nearly. */
    static String json(SplittableRandom chance, List<String> keys) {
        return json(chance, keys, 3);
    }

    private static String json(SplittableRandom chance, List<String> keys, int depth) {
        return switch (depth == 0 ? chance.nextInt(4) : chance.nextInt(9)) {
            case 0 -> number(chance);
            case 1 -> quoted(text(chance));
            case 2 -> pick(List.of("true", "false", "null", "True", "undefined", ""), chance);
            case 3 -> quoted(pick(keys, chance));
            case 4 -> "[" + json(chance, keys, depth - 1) + "," + json(chance, keys, depth - 1) + "]";
            case 5 -> deep(chance);
            default -> object(chance, keys, depth);
        };
    }

    private static String object(SplittableRandom chance, List<String> keys, int depth) {
        StringBuilder object = new StringBuilder("{");
        for (int i = chance.nextInt(4); i >= 0; i--) {
            String key = chance.nextInt(5) == 0 ? text(chance) : pick(keys, chance);
            object.append(quoted(key)).append(':').append(json(chance, keys, depth - 1));
            object.append(i > 0 ? "," : "");
        }
        return object.append(chance.nextInt(12) == 0 ? "" : "}").toString();
    }

    private static String deep(SplittableRandom chance) {
        int levels = chance.nextInt(4) == 0 ? 20_000 : 60;
        return chance.nextBoolean()
                ? "[".repeat(levels) + "]".repeat(levels)
                : "{\"phase\":".repeat(levels) + "1" + "}".repeat(levels);
    }

    private static String quoted(String text) {
        return "\"" + text.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
    }

    /** Bytes of no meaning. */
    static byte[] bytes(SplittableRandom chance, int most) {
        byte[] bytes = new byte[chance.nextInt(most + 1)];
        chance.nextBytes(bytes);
        return bytes;
    }

    /** One of some things. */
    static <T> T pick(List<T> all, SplittableRandom chance) {
        return all.get(chance.nextInt(all.size()));
    }

    /** A text for display on one line: unprintable characters as numbers, and long texts shortened. */
    static String shown(String text) {
        StringBuilder shown = new StringBuilder();
        text.codePoints().limit(SHOWN).forEach(character -> {
            if (character >= 0x20 && character < 0x7F) {
                shown.appendCodePoint(character);
            } else {
                shown.append(String.format("\\u{%x}", character));
            }
        });
        return text.length() > SHOWN ? shown + "... (" + text.length() + " characters)" : shown.toString();
    }
}
