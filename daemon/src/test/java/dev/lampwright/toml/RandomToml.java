package dev.lampwright.toml;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Writes random TOML 1.0, and notes where it has put each key. The same seed gives the same text. */
public final class RandomToml {
    private static final List<String> SCALARS = List.of(
            "1",
            "0x1F",
            "6.5e-3",
            "true",
            "1979-05-27T07:32:00Z",
            "inf",
            "\"a # no comment, [no] = table\"",
            "\"quote \\\" and backslash \\\\\"",
            "'C:\\no\\escape\\'",
            "\"\"",
            "''");
    private static final List<String> LONG_STRINGS = List.of(
            "\"\"\"\nfirst\nkey = 1\n[table]\n\"\"\"",
            "'''\n[[literal]]\nit's ''fine''\n'''",
            "\"\"\"ends in a quote\"\"\"\"",
            "\"\"\"goes \\\n   on \\\"\"\"\nhere\"\"\"",
            "''''quoted'\n'''''");

    private final Random random;
    private final String newline;
    private final StringBuilder text = new StringBuilder();
    private final Map<List<String>, Integer> lines = new LinkedHashMap<>();
    private int line = 1;
    private int names;

    /**
     * Writes a text.
     *
     * @param seed the same seed gives the same text
     */
    public RandomToml(long seed) {
        random = new Random(seed);
        newline = random.nextBoolean() ? "\n" : "\r\n";
        pairs(List.of());
        for (int i = random.nextInt(6); i > 0; i--) {
            if (random.nextBoolean()) {
                table();
            } else {
                arrayOfTables();
            }
        }
    }

    /**
     * The text.
     *
     * @return valid TOML 1.0
     */
    public String text() {
        return text.toString();
    }

    Map<List<String>, Integer> lines() {
        return lines;
    }

    private void table() {
        filler();
        List<String> path = dotted(List.of(), "[");
        note(path);
        put("]");
        endLine();
        pairs(path);
    }

    private void arrayOfTables() {
        filler();
        String name = "array" + names++;
        for (int i = 0; i <= random.nextInt(3); i++) {
            note(List.of(name));
            note(List.of(name, "" + i));
            put("[[" + name + "]]");
            endLine();
            pairs(List.of(name, "" + i));
            note(List.of(name, "" + i, "within"));
            put("[" + name + " . within]");
            endLine();
            pairs(List.of(name, "" + i, "within"));
        }
    }

    private void pairs(List<String> table) {
        for (int i = random.nextInt(5); i > 0; i--) {
            filler();
            pair(table, true);
            endLine();
        }
    }

    private void pair(List<String> table, boolean mayBreak) {
        List<String> path = dotted(table, "");
        note(path);
        put(random.nextBoolean() ? "=" : " \t= ");
        value(path, mayBreak, 3);
    }

    /** Writes a new key of one or more names, and notes the tables that it makes on the way. */
    private List<String> dotted(List<String> table, String before) {
        put(before);
        List<String> path = new ArrayList<>(table);
        for (int i = random.nextInt(3); i > 0; i--) {
            path.add(name());
            note(path);
            put(random.nextBoolean() ? "." : " . ");
        }
        path.add(name());
        return path;
    }

    private String name() {
        String name = "k" + names++;
        return switch (random.nextInt(5)) {
            case 0 -> written('"' + name + ".]#=\"", name + ".]#=");
            case 1 -> written("'" + name + " \"'", name + " \"");
            case 2 -> written('"' + name + "\\u00E9\\t\\\"\\\\\"", name + "\u00E9\t\"\\");
            case 3 -> written('"' + name + "\\U0001F4A1\"", name + "\uD83D\uDCA1");
            default -> written(name + "-_9", name + "-_9");
        };
    }

    private String written(String toml, String name) {
        put(toml);
        return name;
    }

    private void value(List<String> path, boolean mayBreak, int depth) {
        int kind = random.nextInt(depth > 0 ? 5 : 2);
        if (kind == 2 || kind == 3) {
            array(path, mayBreak, depth - 1);
        } else if (kind == 4) {
            inlineTable(path, depth - 1);
        } else if (kind == 1 && mayBreak) {
            put(LONG_STRINGS.get(random.nextInt(LONG_STRINGS.size())).replace("\n", newline));
        } else {
            put(SCALARS.get(random.nextInt(SCALARS.size())));
        }
    }

    private void array(List<String> path, boolean mayBreak, int depth) {
        put("[");
        int count = random.nextInt(4);
        for (int i = 0; i < count; i++) {
            space(mayBreak);
            List<String> element = new ArrayList<>(path);
            element.add("" + i);
            note(element);
            value(element, mayBreak, depth);
            space(mayBreak);
            put(i < count - 1 || random.nextBoolean() ? "," : "");
        }
        space(mayBreak);
        put("]");
    }

    private void inlineTable(List<String> path, int depth) {
        put("{ ");
        for (int i = random.nextInt(3); i >= 0; i--) {
            List<String> key = dotted(path, "");
            note(key);
            put(" = ");
            value(key, false, depth);
            put(i > 0 ? ", " : " ");
        }
        put("}");
    }

    private void space(boolean mayBreak) {
        if (mayBreak && random.nextInt(3) == 0) {
            put(random.nextBoolean() ? newline : " # a comment, ] } \" '" + newline + "  ");
        }
    }

    private void filler() {
        while (random.nextInt(3) == 0) {
            put(random.nextBoolean() ? newline : "\t# [comment] = \"\"\"" + newline);
        }
    }

    private void endLine() {
        put((random.nextInt(4) == 0 ? " # end ''' of line" : "") + newline);
    }

    private void note(List<String> path) {
        lines.putIfAbsent(List.copyOf(path), line);
    }

    private void put(String toml) {
        text.append(toml);
        line += (int) toml.chars().filter(c -> c == '\n').count();
    }
}
