package dev.lampwright.tool.fit;

import java.util.List;

/**
 * What an answer looks like, for a terminal that has more than lines. Whatever the form, the answer is a line.
 *
 * @param kind what is asked for
 * @param least the smallest number
 * @param most the largest number
 * @param usual the answer to begin with; empty for none
 * @param skip the code of what an empty line means; empty if it means the usual answer, or nothing
 * @param suggestions answers that many people give
 */
public record Form(Kind kind, double least, double most, String usual, String skip, List<String> suggestions) {
    /** A line of text. */
    static final Form TEXT = new Form(Kind.TEXT, 0, 0, "", "", List.of());
    /** One of several answers. */
    static final Form CHOICE = TEXT.of(Kind.CHOICE);
    /** The Enter key. */
    static final Form ENTER = TEXT.of(Kind.ENTER);

    /** Kinds of answers. */
    public enum Kind {
        /** One of several answers. */
        CHOICE,
        /** One of the corners of a rectangle. */
        CORNER,
        /** A number with decimals. */
        NUMBER,
        /** A whole number. */
        WHOLE,
        /** A whole number that the light follows while it is chosen; an empty line says that it is right. */
        SLIDER,
        /** Text. */
        TEXT,
        /** The path of a file with a password. */
        SECRET,
        /** The path of a file with certificates. */
        CERTIFICATES,
        /** Nothing but the Enter key. */
        ENTER
    }

    /** Keeps a copy. */
    public Form {
        suggestions = List.copyOf(suggestions);
    }

    /** A number with decimals. */
    static Form number(double least, double most) {
        return new Form(Kind.NUMBER, least, most, "", "", List.of());
    }

    /** A whole number. */
    static Form whole(int least, int most) {
        return number(least, most).of(Kind.WHOLE);
    }

    /** A whole number that the light follows. */
    static Form slider(int least, int most, int at) {
        return whole(least, most).of(Kind.SLIDER).usually(Integer.toString(at));
    }

    /** The same for another kind. */
    Form of(Kind other) {
        return new Form(other, least, most, usual, skip, suggestions);
    }

    /** The same with an answer to begin with, which an empty line means as well. */
    Form usually(String answer) {
        return new Form(kind, least, most, answer, skip, suggestions);
    }

    /** The same with a code of what an empty line means. */
    Form skipped(String code) {
        return new Form(kind, least, most, usual, code, suggestions);
    }

    /** The same with answers that many people give. */
    Form suggesting(List<String> answers) {
        return new Form(kind, least, most, usual, skip, answers);
    }
}
