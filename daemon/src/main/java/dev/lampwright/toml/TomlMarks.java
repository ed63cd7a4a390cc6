package dev.lampwright.toml;

import java.util.List;

/** Receives where the parts of a text begin and end while it is read, in characters from its beginning. */
interface TomlMarks {
    /** Nobody listens. */
    TomlMarks NONE = new TomlMarks() {};

    /** A key, or the names of a header, starts here. */
    default void keyBegins(int at) {}

    /** A name of the key ends here. */
    default void nameEnds(int at) {}

    /**
     * A header was read.
     *
     * @param names its names
     * @param element whether it is in double brackets
     * @param from where its first bracket is
     * @param to after its last bracket
     */
    default void header(List<String> names, boolean element, int from, int to) {}

    /** The last key read, unless it was a header's, gets a value. */
    default void pair(List<String> names) {}

    /** A value starts here: that of the preceding pair, or the next element of the open array. */
    default void valueBegins(int at) {}

    /** The last value that started ends here. */
    default void valueEnds(int at) {}

    /** The last value that ended is followed by this comma. */
    default void comma(int at) {}
}
