package dev.lampwright.toml;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The tables and arrays of a text while it is read: what is in them, on which line, and what may still be added to each. Containers are
 * plain maps and lists; what is known about one is found by its identity.
 */
final class TomlTree {
    private final Map<String, Object> root = new LinkedHashMap<>();
    private final IdentityHashMap<Object, Container> containers = new IdentityHashMap<>();

    /** How a table or an array was created, which decides what may be added to it. */
    private enum Origin {
        /** Created by a header of a table within it: may get its own header. */
        ON_THE_WAY,
        /** Has its own header, or is an element of an array of tables. */
        HEADER,
        /** Created by a dotted key: grows by such keys and by headers of tables within it. */
        DOTTED_KEY,
        /** Headers in double brackets add to it. */
        ARRAY_OF_TABLES,
        /** Braces or brackets: complete once they are closed. */
        LITERAL
    }

    /** What is known about a table or an array. */
    private static final class Container {
        private final Container around;
        private final String name;
        private final int depth;
        private final Map<String, Integer> lines = new HashMap<>();
        private int[] elementLines = {};
        private Origin origin;
        private boolean closed;

        Container(Container around, String name, Origin origin) {
            this.around = around;
            this.name = name;
            this.depth = around == null ? 1 : around.depth + 1;
            this.origin = origin;
        }

        List<String> path(String key) {
            List<String> path = new ArrayList<>();
            path.add(key);
            for (Container inner = this; inner.around != null; inner = inner.around) {
                path.add(0, inner.name);
            }
            return path;
        }

        void noteElement(int index, int line) {
            if (index == elementLines.length) {
                elementLines = Arrays.copyOf(elementLines, Math.max(4, 2 * index));
            }
            elementLines[index] = line;
        }
    }

    TomlTree() {
        containers.put(root, new Container(null, "", Origin.HEADER));
    }

    Map<String, Object> root() {
        return root;
    }

    /** A detached outermost table, for what follows a header that could not be read. */
    Map<String, Object> apart() {
        Map<String, Object> apart = new LinkedHashMap<>();
        containers.put(apart, new Container(null, "", Origin.HEADER));
        return apart;
    }

    int line(List<String> path) {
        Object value = root;
        int line = 0;
        for (String name : path) {
            int inner = lineOf(value, name);
            if (inner == 0) {
                return line;
            }
            line = inner;
            value = value instanceof List<?> list ? list.get(Integer.parseInt(name)) : ((Map<?, ?>) value).get(name);
        }
        return line;
    }

    private int lineOf(Object value, String name) {
        if (value instanceof List<?> list) {
            int index = name.length() <= 9 && name.chars().allMatch(c -> c >= '0' && c <= '9') && !name.isEmpty()
                    ? Integer.parseInt(name)
                    : -1;
            return index >= 0 && index < list.size() ? containers.get(value).elementLines[index] : 0;
        }
        return value instanceof Map ? containers.get(value).lines.getOrDefault(name, 0) : 0;
    }

    /**
     * The table of a header in single brackets.
     *
     * @param names the names in it, 1 or more
     * @param line its line
     * @return the table, new, or created earlier along the way
     */
    Map<String, Object> table(List<String> names, int line) throws TomlException {
        Map<String, Object> parent = parent(names, line);
        String name = names.get(names.size() - 1);
        Container around = containers.get(parent);
        Object there = parent.get(name);
        if (there == null) {
            return newTable(parent, name, Origin.HEADER, line);
        }
        Container known = containers.get(there);
        if (!(there instanceof Map) || known.origin != Origin.ON_THE_WAY) {
            throw notATable(there, around, name, line);
        }
        known.origin = Origin.HEADER;
        around.lines.put(name, line);
        return asTable(there);
    }

    /**
     * A new element of an array of tables.
     *
     * @param names the names in its header in double brackets, 1 or more
     * @param line its line
     * @return the new table
     */
    Map<String, Object> element(List<String> names, int line) throws TomlException {
        Map<String, Object> parent = parent(names, line);
        String name = names.get(names.size() - 1);
        Object there = parent.get(name);
        if (there == null) {
            there = newArray(parent, name, Origin.ARRAY_OF_TABLES, line);
        }
        Container array = containers.get(there);
        if (array == null || array.origin != Origin.ARRAY_OF_TABLES) {
            throw notAnArray(there, containers.get(parent), name, line);
        }
        List<Object> elements = asArray(there);
        Map<String, Object> table = new LinkedHashMap<>();
        note(table, new Container(array, Integer.toString(elements.size()), Origin.HEADER), line);
        array.noteElement(elements.size(), line);
        elements.add(table);
        return table;
    }

    /** The table that contains the last name of a header. */
    private Map<String, Object> parent(List<String> names, int line) throws TomlException {
        Map<String, Object> table = root;
        for (String name : names.subList(0, names.size() - 1)) {
            Object there = table.get(name);
            if (there == null) {
                there = newTable(table, name, Origin.ON_THE_WAY, line);
            } else if (isArrayOfTables(there)) {
                there = asArray(there).get(asArray(there).size() - 1);
            } else if (!(there instanceof Map) || containers.get(there).closed) {
                throw notATable(there, containers.get(table), name, line);
            }
            table = asTable(there);
        }
        return table;
    }

    private boolean isArrayOfTables(Object value) {
        return value instanceof List && containers.get(value).origin == Origin.ARRAY_OF_TABLES;
    }

    /**
     * The table that contains the last name of a key.
     *
     * @param table where the key is
     * @param names the names in it, 1 or more
     * @param line its line
     * @return the table, created if missing
     */
    Map<String, Object> tableOf(Map<String, Object> table, List<String> names, int line) throws TomlException {
        Map<String, Object> inner = table;
        for (String name : names.subList(0, names.size() - 1)) {
            Object there = inner.get(name);
            if (there == null) {
                there = newTable(inner, name, Origin.DOTTED_KEY, line);
            } else if (!(there instanceof Map) || containers.get(there).closed) {
                throw notATable(there, containers.get(inner), name, line);
            }
            inner = asTable(there);
        }
        return inner;
    }

    /**
     * Records a key, before its value is read.
     *
     * @throws TomlException if the table already has it
     */
    void note(Map<String, Object> table, String name, int line) throws TomlException {
        Container container = containers.get(table);
        Integer earlier = container.lines.putIfAbsent(name, line);
        if (earlier != null) {
            throw wrong(container.path(name), line, "is given on line " + earlier + " already", "keep one of the two");
        }
    }

    void noteElement(List<Object> array, int line) {
        containers.get(array).noteElement(array.size(), line);
    }

    /** A new table in braces, which is the value of a key or the next element of an array. */
    Map<String, Object> literalTable(Object around, String name, int line) throws TomlException {
        Map<String, Object> table = new LinkedHashMap<>();
        note(table, new Container(containers.get(around), name, Origin.LITERAL), line);
        return table;
    }

    /** A new array in brackets, which is the value of a key or the next element of an array. */
    List<Object> literalArray(Object around, String name, int line) throws TomlException {
        List<Object> array = new ArrayList<>();
        note(array, new Container(containers.get(around), name, Origin.LITERAL), line);
        return array;
    }

    /** Ends a table in braces: nothing more can be added to it, nor to the tables created by its dotted keys. */
    void close(Map<String, Object> table) {
        containers.get(table).closed = true;
        for (Object inner : table.values()) {
            if (inner instanceof Map && !containers.get(inner).closed) {
                close(asTable(inner));
            }
        }
    }

    private Map<String, Object> newTable(Map<String, Object> parent, String name, Origin origin, int line)
            throws TomlException {
        Map<String, Object> table = new LinkedHashMap<>();
        add(parent, name, table, origin, line);
        return table;
    }

    private List<Object> newArray(Map<String, Object> parent, String name, Origin origin, int line)
            throws TomlException {
        List<Object> array = new ArrayList<>();
        add(parent, name, array, origin, line);
        return array;
    }

    private void add(Map<String, Object> parent, String name, Object container, Origin origin, int line)
            throws TomlException {
        Container around = containers.get(parent);
        note(container, new Container(around, name, origin), line);
        around.lines.putIfAbsent(name, line);
        parent.put(name, container);
    }

    private void note(Object container, Container known, int line) throws TomlException {
        if (known.depth > Toml.DEEPEST) {
            throw tooDeep(line);
        }
        containers.put(container, known);
    }

    static TomlException tooDeep(int line) {
        return new TooDeepException(new TomlMistake(
                line,
                0,
                List.of(),
                "arrays, tables and dotted keys are nested more than " + Toml.DEEPEST + " deep",
                "remove brackets, braces or parts of the key"));
    }

    private TomlException notATable(Object there, Container around, String name, int line) {
        Integer earlier = around.lines.get(name);
        if (there instanceof Map && !containers.get(there).closed) {
            return wrong(
                    around.path(name),
                    line,
                    "is a table that already appears on line " + earlier,
                    "keep one [header] for each table, with all its keys below it");
        }
        if (there instanceof Map) {
            return wrong(
                    around.path(name),
                    line,
                    "is already given in braces, on line " + earlier,
                    "put all its keys into the braces, or below one [header]");
        }
        return notAnArray(there, around, name, line);
    }

    private TomlException notAnArray(Object there, Container around, String name, int line) {
        Integer earlier = around.lines.get(name);
        if (there instanceof List && !isArrayOfTables(there)) {
            return wrong(
                    around.path(name),
                    line,
                    "is already given in brackets, on line " + earlier,
                    "put all its elements into the brackets, or below [[headers]]");
        }
        return wrong(
                around.path(name),
                line,
                "is used as " + (isArrayOfTables(there) ? "a table, but is an array" : "a table or an array")
                        + ", but has been given on line " + earlier + " already",
                "keep the value or the table");
    }

    private static TomlException wrong(List<String> path, int line, String what, String whatWouldBeRight) {
        return new TomlException(new TomlMistake(line, 0, path, what, whatWouldBeRight));
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> asTable(Object value) {
        return (Map<String, Object>) value;
    }

    @SuppressWarnings("unchecked")
    private static List<Object> asArray(Object value) {
        return (List<Object>) value;
    }
}
