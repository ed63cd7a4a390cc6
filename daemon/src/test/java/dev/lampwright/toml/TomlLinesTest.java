package dev.lampwright.toml;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class TomlLinesTest {
    /** Forms of TOML 1.0 (toml.io, sections Keys, Table, Inline Table, Array of Tables; from memory). */
    private static final String FORMS = """
            # comment
            title = "TOML"
            physical.color = "orange"
            "127.0.0.1" = "value"
            'quoted "value"' = 2
            fruit . flavor = "banana"
            [servers]
              [servers.alpha]
              ip = "10.0.0.1" # comment

            [dog."tater.man"]
            type.name = "pug"
            [points]
            list = [ { x = 1, y = 2 },
              # between
              { x = 7,
            y = 8 } ]
            text = ""\"
            [not.a.table]
            ""\"
            after = 1
            [[products]]
            name = "Hammer"
            [[products]]
            [products.colour]
            name = "grey"
            [[products.varieties]]
            name = "a"
            [[products.varieties]]
            name = "b"
            """;

    private static final TomlDocument INDEX = Toml.read(FORMS);

    @Test
    void keys() {
        assertEquals(2, INDEX.line(List.of("title")));
        assertEquals(3, INDEX.line(List.of("physical", "color")));
        assertEquals(3, INDEX.line(List.of("physical")));
        assertEquals(4, INDEX.line(List.of("127.0.0.1")));
        assertEquals(5, INDEX.line(List.of("quoted \"value\"")));
        assertEquals(6, INDEX.line(List.of("fruit", "flavor")));
    }

    @Test
    void tables() {
        assertEquals(7, INDEX.line(List.of("servers")));
        assertEquals(8, INDEX.line(List.of("servers", "alpha")));
        assertEquals(9, INDEX.line(List.of("servers", "alpha", "ip")));
        assertEquals(11, INDEX.line(List.of("dog", "tater.man")));
        assertEquals(12, INDEX.line(List.of("dog", "tater.man", "type", "name")));
    }

    @Test
    void valuesOverSeveralLines() {
        assertEquals(14, INDEX.line(List.of("points", "list", "0", "y")));
        assertEquals(16, INDEX.line(List.of("points", "list", "1", "x")));
        assertEquals(17, INDEX.line(List.of("points", "list", "1", "y")));
        assertEquals(18, INDEX.line(List.of("points", "text")));
        assertEquals(21, INDEX.line(List.of("points", "after")));
    }

    @Test
    void arraysOfTables() {
        assertEquals(22, INDEX.line(List.of("products")));
        assertEquals(23, INDEX.line(List.of("products", "0", "name")));
        assertEquals(24, INDEX.line(List.of("products", "1")));
        assertEquals(25, INDEX.line(List.of("products", "1", "colour")));
        assertEquals(26, INDEX.line(List.of("products", "1", "colour", "name")));
        assertEquals(28, INDEX.line(List.of("products", "1", "varieties", "0", "name")));
        assertEquals(30, INDEX.line(List.of("products", "1", "varieties", "1", "name")));
    }

    @Test
    void whatIsMissingStandsWhereItsTableStands() {
        assertEquals(8, INDEX.line(List.of("servers", "alpha", "role")));
        assertEquals(7, INDEX.line(List.of("servers", "beta", "role")));
        assertEquals(0, INDEX.line(List.of("nowhere", "role")));
    }

    @Test
    void aTableStandsAtItsHeaderEvenIfAKeyBelowCameEarlier() {
        assertEquals(2, Toml.read("[a.b]\n[a]\nc = 1\n").line(List.of("a")));
    }

    @Test
    void randomTextsAreFoundWhereTheyWereWritten() {
        for (long seed = 0; seed < 1000; seed++) {
            RandomToml toml = new RandomToml(seed);
            TomlDocument document = Toml.read(toml.text());
            Set<List<String>> parsed = new LinkedHashSet<>();
            collect(List.of(), document.values(), parsed);
            assertEquals(parsed, toml.lines().keySet(), toml.text());
            String shown = "seed " + seed + "\n" + toml.text();
            toml.lines().forEach((path, line) -> assertEquals(line, document.line(path), () -> path + " in " + shown));
            assertEquals(List.of(), document.mistakes(), shown);
        }
    }

    private static void collect(List<String> path, Object value, Set<List<String>> into) {
        if (!path.isEmpty()) {
            into.add(path);
        }
        if (value instanceof Map<?, ?> map) {
            map.forEach((key, inner) -> collect(inner(path, key), inner, into));
        } else if (value instanceof List<?> list) {
            for (int i = 0; i < list.size(); i++) {
                collect(inner(path, i), list.get(i), into);
            }
        }
    }

    private static List<String> inner(List<String> path, Object name) {
        List<String> inner = new ArrayList<>(path);
        inner.add(name.toString());
        return List.copyOf(inner);
    }
}
