package dev.lampwright.toml;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A table, an array or another value of a text, and where it is. Places are in characters from the beginning of the text. */
final class TomlPart {
    /** How a part was created, which decides how it is changed. */
    enum Kind {
        /** Has its own header; also the outermost table, which has none. */
        SECTION,
        /** Created by headers of tables within it. */
        ON_THE_WAY,
        /** Created by dotted keys. */
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
     * A key as written.
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

    /** For a table: its contents, by name. */
    final Map<String, TomlPart> inner = new LinkedHashMap<>();

    /** For an array. */
    final List<TomlPart> elements = new ArrayList<>();

    /** For a section or braces: the values given there, with or without dotted keys, in the order of the text. */
    final List<TomlPart> pairs = new ArrayList<>();

    /** For a value with a key. */
    Key key;

    /** For a section with a header: the names in that. */
    Key header;

    /** For a value or a header: where it begins. */
    int from;

    /** For a value or a header: the position after its end. */
    int to;

    /** The comma after a value, or {@link #NOWHERE}. */
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

    /** Whether it has its own value text. */
    boolean isLiteral() {
        return kind == Kind.BRACES || kind == Kind.BRACKETS || kind == Kind.SCALAR;
    }

    /** Whether it, or something in it, is created by a header. */
    boolean hasHeaders() {
        return kind == Kind.SECTION || kind == Kind.ON_THE_WAY || kind == Kind.SECTIONS;
    }

    /** Whether this is another part or within it. */
    boolean isWithin(TomlPart other) {
        TomlPart part = this;
        while (part != null && part != other) {
            part = part.around;
        }
        return part == other;
    }

    /** The section or the braces that contain the pair of a value. */
    TomlPart container() {
        TomlPart part = around;
        while (part.kind == Kind.DOTTED) {
            part = part.around;
        }
        return part;
    }

    /** What a name leads to; null if there is nothing. */
    TomlPart find(String next) {
        if (!isArray()) {
            return inner.get(next);
        }
        int index = index(next);
        return index >= 0 && index < elements.size() ? elements.get(index) : null;
    }

    /** The index that a name stands for; −1 if it is not a number. */
    static int index(String name) {
        boolean digits = !name.isEmpty() && name.length() <= 9 && name.chars().allMatch(c -> c >= '0' && c <= '9');
        return digits ? Integer.parseInt(name) : -1;
    }

    /** The names in its header, without those of array elements. */
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
