package dev.lampwright.toml;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A table, an array or another value of a text, and where it is there. Places are in characters from the beginning of the text. */
final class TomlPart {
    /** How a part came to be, which decides how it is changed. */
    enum Kind {
        /** Has a header of its own; the outermost table is one without. */
        SECTION,
        /** Made by headers of tables within it. */
        ON_THE_WAY,
        /** Made by keys with dots. */
        DOTTED,
        /** Headers in double brackets. */
        SECTIONS,
        /** In braces. */
        BRACES,
        /** In brackets. */
        BRACKETS,
        /** Anything else. */
        SCALAR
    }

    /**
     * A key as it was written.
     *
     * @param from where it begins
     * @param nameEnds where each of its names ends
     */
    record Key(int from, List<Integer> nameEnds) {}

    /** None. */
    static final int NOWHERE = -1;

    final TomlPart around;
    final String name;
    Kind kind;

    /** Of a table: what is in it, by name. */
    final Map<String, TomlPart> inner = new LinkedHashMap<>();

    /** Of an array. */
    final List<TomlPart> elements = new ArrayList<>();

    /** Of a section or braces: values that are given there, with dotted keys or without, in the order of the text. */
    final List<TomlPart> pairs = new ArrayList<>();

    /** Of a value with a key. */
    Key key;

    /** Of a value or a header: where it begins. */
    int from;

    /** Of a value or a header: behind its end. */
    int to;

    /** The comma behind a value, or {@link #NOWHERE}. */
    int comma = NOWHERE;

    TomlPart(TomlPart around, String name, Kind kind) {
        this.around = around;
        this.name = name;
        this.kind = kind;
    }

    boolean isTable() {
        return kind == Kind.SECTION || kind == Kind.ON_THE_WAY || kind == Kind.DOTTED || kind == Kind.BRACES;
    }

    boolean isArray() {
        return kind == Kind.SECTIONS || kind == Kind.BRACKETS;
    }

    /** Whether it has a value's text of its own. */
    boolean isLiteral() {
        return kind == Kind.BRACES || kind == Kind.BRACKETS || kind == Kind.SCALAR;
    }

    /** Whether a header somewhere makes it, or something in it. */
    boolean hasHeaders() {
        return kind == Kind.SECTION || kind == Kind.ON_THE_WAY || kind == Kind.SECTIONS;
    }

    /** Whether this is another or within it. */
    boolean isWithin(TomlPart other) {
        TomlPart part = this;
        while (part != null && part != other) {
            part = part.around;
        }
        return part == other;
    }

    /** The section or the braces in which the pair of a value is. */
    TomlPart container() {
        TomlPart part = around;
        while (part.kind == Kind.DOTTED) {
            part = part.around;
        }
        return part;
    }

    /** What a name leads to; nothing is null. */
    TomlPart find(String next) {
        if (!isArray()) {
            return inner.get(next);
        }
        int index = index(next);
        return index >= 0 && index < elements.size() ? elements.get(index) : null;
    }

    /** The number that a name is; −1 if it is none. */
    static int index(String name) {
        boolean digits = !name.isEmpty() && name.length() <= 9 && name.chars().allMatch(c -> c >= '0' && c <= '9');
        return digits ? Integer.parseInt(name) : -1;
    }

    /** The names by which a header calls it: those of arrays' elements are left out. */
    List<String> headerNames() {
        List<String> names = new ArrayList<>();
        for (TomlPart part = this; part.around != null; part = part.around) {
            if (!part.around.isArray()) {
                names.add(0, part.name);
            }
        }
        return names;
    }
}
