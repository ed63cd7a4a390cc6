package dev.lampwright.toml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;

/**
 * Random changes of random texts. The expected result of each is worked out on plain maps and lists, which share no code with the editor;
 * and lines that a change does not concern stay as they are.
 */
class TomlEditorPropertyTest {
    private static final String NEW = "new key";
    private static final int LINES_OF_A_STRING = 5;

    @Property(tries = 300, shrinking = ShrinkingMode.OFF, edgeCases = EdgeCasesMode.NONE)
    void aChangeIsTheOneThatWasAskedFor(@ForAll long seed) {
        String text = new RandomToml(seed).text();
        Random random = new Random(seed);
        for (int i = 0; i < 4; i++) {
            text = changed(text, random);
        }
    }

    private static String changed(String before, Random random) {
        Map<String, Object> values = Toml.read(before).values();
        List<List<String>> paths = new ArrayList<>();
        collect(values, List.of(), paths);
        List<String> path = paths.get(random.nextInt(paths.size()));
        TomlEditor editor = TomlEditor.of(before);
        Object wanted = copy(values);
        String story;
        if (path.isEmpty() || random.nextInt(3) == 0) {
            path = behind(values, path);
            story = "add " + path;
            Object value = value(random, 3);
            editor.set(path, value);
            put(wanted, path, value);
            assertOthersStay(lines(before), lines(editor.text()), story, before, editor.text());
        } else if (random.nextBoolean()) {
            story = "remove " + path;
            editor.remove(path);
            take(wanted, path);
            assertOthersStay(lines(editor.text()), lines(before), story, before, editor.text());
        } else {
            Object value = value(random, 3);
            story = "set " + path + " " + value;
            if (!isElementByHeader(before, path)) {
                editor.set(path, value);
                put(wanted, path, value);
            }
        }
        String story2 = story + "\n" + before + "\n--- became\n" + editor.text();
        assertEquals(List.of(), Toml.read(editor.text()).mistakes(), story2);
        assertEquals(
                shown(pruned(wanted, path)),
                shown(pruned(copy(Toml.read(editor.text()).values()), path)),
                story2);
        return editor.text();
    }

    @Property(tries = 150, shrinking = ShrinkingMode.OFF, edgeCases = EdgeCasesMode.NONE)
    void aScalarIsReplacedOnItsLinesAlone(@ForAll long seed) {
        String before = new RandomToml(seed).text();
        TomlDocument document = Toml.read(before);
        List<List<String>> paths = new ArrayList<>();
        collect(document.values(), List.of(), paths);
        for (List<String> path : paths) {
            TomlEditor editor = TomlEditor.of(before);
            Object value = TomlValues.at(document.values(), path).orElseThrow();
            if (value instanceof Map || value instanceof List) {
                continue;
            }
            editor.set(path, 12345);
            List<String> were = lines(before);
            List<String> are = lines(editor.text());
            int line = document.line(path);
            assertEquals(were.subList(0, line - 1), are.subList(0, line - 1));
            int same = Math.max(0, were.size() - line - LINES_OF_A_STRING);
            assertEquals(were.subList(were.size() - same, were.size()), are.subList(are.size() - same, are.size()));
            assertEquals(comments(before, value), comments(editor.text(), 12345), path + "\n" + before);
        }
    }

    @Property(tries = 150, shrinking = ShrinkingMode.OFF, edgeCases = EdgeCasesMode.NONE)
    void whatIsThereAlreadyChangesNothing(@ForAll long seed) {
        String before = new RandomToml(seed).text();
        TomlEditor editor = TomlEditor.of(before);
        Map<String, Object> values = Toml.read(before).values();
        List<List<String>> paths = new ArrayList<>();
        collect(values, List.of(), paths);
        paths.remove(0);
        paths.forEach(path -> editor.set(path, TomlValues.at(values, path).orElseThrow()));
        assertEquals(before, editor.text());
    }

    @Property(tries = 150, shrinking = ShrinkingMode.OFF, edgeCases = EdgeCasesMode.NONE)
    void whatIsAddedAndRemovedLeavesNoTrace(@ForAll long seed) {
        String before = new RandomToml(seed).text();
        Map<String, Object> values = Toml.read(before).values();
        List<List<String>> paths = new ArrayList<>();
        collect(values, List.of(), paths);
        for (List<String> path : paths) {
            TomlPart part = TomlLayout.of(before).find(path);
            boolean grows = part.isTable() && part.kind != TomlPart.Kind.ON_THE_WAY && !part.inner.isEmpty();
            if (grows && (part.around != null || !part.pairs.isEmpty())) {
                for (Object value : List.of(7, Map.of("x", 1))) {
                    TomlEditor editor = TomlEditor.of(before);
                    List<String> added = behind(values, path);
                    editor.set(added, value);
                    String between = editor.text();
                    editor.remove(added);
                    assertEquals(dense(before), dense(editor.text()), added + "\n" + between);
                }
            }
        }
    }

    /** Without empty lines, one of which may be too many between sections that had none. */
    private static String dense(String text) {
        return text.replaceAll("(\r?\n)+", "\n");
    }

    /** All of the fewer lines are among the more, in order, except those that a pair or an element was added to or removed from. */
    private static void assertOthersStay(
            List<String> fewer, List<String> more, String story, String before, String after) {
        int[][] common = new int[fewer.size() + 1][more.size() + 1];
        for (int i = fewer.size() - 1; i >= 0; i--) {
            for (int k = more.size() - 1; k >= 0; k--) {
                common[i][k] = fewer.get(i).equals(more.get(k))
                        ? common[i + 1][k + 1] + 1
                        : Math.max(common[i + 1][k], common[i][k + 1]);
            }
        }
        assertTrue(fewer.size() - common[0][0] <= 2, story + "\n" + before + "\n--- became\n" + after);
    }

    private static List<String> lines(String text) {
        return List.of(text.split("\n", -1));
    }

    /** How many comments there are, not counting hashes within the value. */
    private static long comments(String text, Object value) {
        return text.chars().filter(c -> c == '#').count()
                - value.toString().chars().filter(c -> c == '#').count();
    }

    /** Headers create an array whose elements are tables: they cannot become anything else. */
    private static boolean isElementByHeader(String text, List<String> path) {
        TomlPart part = TomlLayout.of(text).find(path);
        return part.around != null && part.around.kind == TomlPart.Kind.SECTIONS;
    }

    private static void collect(Object value, List<String> path, List<List<String>> paths) {
        paths.add(path);
        if (value instanceof Map<?, ?> table) {
            table.forEach((name, inner) -> collect(inner, within(path, name), paths));
        }
        if (value instanceof List<?> array) {
            for (int i = 0; i < array.size(); i++) {
                collect(array.get(i), within(path, i), paths);
            }
        }
    }

    /** A path that does not exist yet, in the table or the array at another, or around it. */
    private static List<String> behind(Map<String, Object> values, List<String> path) {
        Object value = path.isEmpty() ? values : TomlValues.at(values, path).orElseThrow();
        if (value instanceof Map<?, ?> table) {
            int number = table.size();
            while (table.containsKey(NEW + number)) {
                number++;
            }
            return within(path, NEW + number);
        }
        boolean tables = value instanceof List<?> array && array.stream().anyMatch(each -> each instanceof Map);
        return value instanceof List<?> array && !tables
                ? within(path, array.size())
                : behind(values, path.subList(0, path.size() - 1));
    }

    private static List<String> within(List<String> path, Object name) {
        List<String> inner = new ArrayList<>(path);
        inner.add(name.toString());
        return inner;
    }

    private static Object value(Random random, int depth) {
        return switch (random.nextInt(depth > 0 ? 6 : 4)) {
            case 0 -> random.nextInt(100);
            case 1 -> "text \"' \\ # " + random.nextInt(10);
            case 2 -> random.nextBoolean();
            case 3 -> List.of();
            case 4 -> {
                Map<String, Object> table = new LinkedHashMap<>();
                for (int i = random.nextInt(3); i >= 0; i--) {
                    table.put("n" + random.nextInt(4), value(random, depth - 1));
                }
                yield table;
            }
            default -> {
                List<Object> array = new ArrayList<>();
                for (int i = random.nextInt(3); i >= 0; i--) {
                    array.add(value(random, depth - 1));
                }
                yield array;
            }
        };
    }

    private static Object copy(Object value) {
        if (value instanceof Map<?, ?> table) {
            Map<Object, Object> copy = new LinkedHashMap<>();
            table.forEach((key, inner) -> copy.put(key, copy(inner)));
            return copy;
        }
        if (value instanceof List<?> array) {
            List<Object> copy = new ArrayList<>();
            array.forEach(inner -> copy.add(copy(inner)));
            return copy;
        }
        return value;
    }

    private static Object around(Object values, List<String> path) {
        Object value = values;
        for (String name : path.subList(0, path.size() - 1)) {
            value = value instanceof Map<?, ?> table ? table.get(name) : ((List<?>) value).get(Integer.parseInt(name));
        }
        return value;
    }

    @SuppressWarnings("unchecked")
    private static void put(Object values, List<String> path, Object value) {
        Object around = around(values, path);
        String name = path.get(path.size() - 1);
        if (around instanceof Map<?, ?> table) {
            ((Map<Object, Object>) table).put(name, value);
        } else {
            List<Object> array = (List<Object>) around;
            int index = Integer.parseInt(name);
            if (index == array.size()) {
                array.add(value);
            } else {
                array.set(index, value);
            }
        }
    }

    private static void take(Object values, List<String> path) {
        Object around = around(values, path);
        String name = path.get(path.size() - 1);
        if (around instanceof Map<?, ?> table) {
            table.remove(name);
        } else {
            ((List<?>) around).remove(Integer.parseInt(name));
        }
    }

    /** Without empty tables and arrays on the way to a path: what only its contents created is removed with them. */
    private static Object pruned(Object values, List<String> path) {
        for (int depth = path.size() - 1; depth > 0; depth--) {
            List<String> part = path.subList(0, depth);
            Object there = TomlValues.at(values, part).orElse("");
            if ((there instanceof Map<?, ?> table && table.isEmpty())
                    || (there instanceof List<?> array && array.isEmpty())) {
                take(values, part);
            }
        }
        return values;
    }

    /** Regardless of the order of keys. */
    private static String shown(Object value) {
        if (value instanceof Map<?, ?> table) {
            return table.entrySet().stream()
                    .map(entry -> entry.getKey() + "=" + shown(entry.getValue()))
                    .sorted()
                    .toList()
                    .toString();
        }
        return value instanceof List<?> array
                ? "L" + array.stream().map(TomlEditorPropertyTest::shown).toList()
                : String.valueOf(value);
    }
}
