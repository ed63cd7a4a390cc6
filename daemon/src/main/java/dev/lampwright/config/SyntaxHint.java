package dev.lampwright.config;

import java.util.List;

/**
 * What to tell the user when the TOML parser complains.
 *
 * @param begins how the parser's complaint begins
 * @param what what is wrong, in plain words
 * @param whatWouldBeRight what to do
 */
record SyntaxHint(String begins, String what, String whatWouldBeRight) {
    private static final String CLOSE = "close what is still open: a quote, a bracket or a brace";

    private static final List<SyntaxHint> ALL = List.of(
            new SyntaxHint(
                    "Unknown token",
                    "what stands there is neither a key nor a value",
                    "put text in \"quotes\", and write numbers without a unit"),
            new SyntaxHint(
                    "Newline not permitted",
                    "the line ends too early",
                    "close the quote or bracket, or give the value, on the same line"),
            new SyntaxHint(
                    "Comment not permitted",
                    "the comment comes too early",
                    "give the value, or close the bracket, before the comment"),
            new SyntaxHint("Premature end of file", "the file ends too early", CLOSE),
            new SyntaxHint("EOF in wrong state", "the file ends too early", CLOSE),
            new SyntaxHint(
                    "More data after value",
                    "something follows a value",
                    "end the line after a value, and put commas between the values of an array"),
            new SyntaxHint("Duplicate key", "a key is given twice", "keep one of the two"),
            new SyntaxHint(
                    "Table redefined",
                    "the table has been there before",
                    "keep one [header] for each table, with all its keys below it"),
            new SyntaxHint(
                    "Path into existing",
                    "a key that has a value already is used as a table",
                    "keep the value or the table"),
            new SyntaxHint(
                    "Object already closed",
                    "the table has been given in braces already",
                    "put all its keys into the braces, or below one [header]"),
            new SyntaxHint(
                    "Array already finished",
                    "the array has been given in brackets already",
                    "put all its elements into the brackets, or below [[headers]]"),
            new SyntaxHint(
                    "Unknown escape",
                    "a \\ stands before a character that it does not go with",
                    "write \\\\ for \\, or put the text in 'single quotes'"),
            new SyntaxHint("Zero-prefixed", "the number begins with 0", "take the zeros before the number away"));

    /**
     * The hint for a complaint.
     *
     * @param complaint what the parser says
     * @return the hint, with the parser's own words if there is none for them
     */
    static SyntaxHint about(String complaint) {
        return ALL.stream()
                .filter(hint -> complaint.startsWith(hint.begins))
                .findFirst()
                .orElseGet(() -> new SyntaxHint(
                        complaint, "is not TOML (" + complaint + ")", "write it as TOML 1.0 has it (toml.io)"));
    }
}
