package dev.lampwright.toml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is reported about texts that are not TOML: where, what to do, all at once and each once. */
class TomlMistakesTest {
    private static final String DEEP = "arrays, tables and dotted keys are nested more than 64 deep";

    /** The service's stacks are larger. */
    private static final long SMALL_STACK = 256 * 1024;

    private static List<String> places(String text) {
        return Toml.read(text).mistakes().stream()
                .map(mistake -> mistake.line() + ":" + mistake.column())
                .toList();
    }

    private static TomlMistake mistake(String text) {
        List<TomlMistake> mistakes = Toml.read(text).mistakes();
        assertEquals(1, mistakes.size(), mistakes.toString());
        return mistakes.get(0);
    }

    private static List<Arguments> single() {
        return List.of(
                Arguments.of("a = 1\nb = two\n", "2:5", "\"two\" is not a value", "put text in \"quotes\""),
                Arguments.of("a = \n", "1:5", "the value is missing", "on the same line"),
                Arguments.of("a = # b", "1:5", "the value is missing", "before any comment"),
                Arguments.of("a = \"x\nb = 1", "1:5", "the quote that opens here is not closed", "close it"),
                Arguments.of("a = 1\nb = \"\"\"x\n\ny\n", "2:5", "the \"\"\" that opens here", "close it"),
                Arguments.of("a = [1,\n2", "1:5", "the [ that opens here is not closed", "close it with ]"),
                Arguments.of("a = [\n1,\n2\n\n[strip]\nb = 3", "1:5", "the [ that opens here", "close it with ]"),
                Arguments.of("a = [\"x\"\nb = 3", "1:5", "the [ that opens here", "close it with ]"),
                Arguments.of("a = { b = 1\nc = 2", "1:5", "the { that opens here", "close it with }"),
                Arguments.of("a = { b = 1,\nc = 2 }", "1:5", "the { that opens here", "on the same line"),
                Arguments.of("a = [{ b = 1,\nc = 2 },\n{ b = 3 }]", "1:6", "the { that opens here", "same line"),
                Arguments.of("\na = [1\n2]", "3:1", "\"2]\" is where a comma or a ] should be", "commas"),
                Arguments.of("a = { b = 1 c = 2 }", "1:13", "\"c = 2 }\" is where a comma", "commas"),
                Arguments.of("a = { b = 1, }", "1:14", "a comma is before the }", "remove it"),
                Arguments.of("a = 5 mm", "1:7", "something follows: \"mm\"", "without a unit"),
                Arguments.of("[a] b = 1", "1:5", "something follows: \"b = 1\"", "after the header"),
                Arguments.of("[a\nb = 1", "1:1", "the header that begins here is not closed", "close it with ]"),
                Arguments.of("[[a]\nb = 1", "1:1", "the header that begins here is not closed", "with ]]"),
                Arguments.of("a: 1", "1:2", "there is no = after the key", "key = value"),
                Arguments.of("// a", "1:1", "\"// a\" is not a key", "key = value"),
                Arguments.of("a = 01", "1:5", "the number begins with 0", "zeros"),
                Arguments.of("a = True", "1:5", "\"True\" is not a value", "small letters: true"),
                Arguments.of("a = 22:30", "1:5", "\"22:30\" is not a value", "in \"quotes\", or give it with seconds"),
                Arguments.of("a = \u201cx\u201d", "1:5", "\"\u201cx\u201d\" is not a value", "straight \"quotes\""),
                Arguments.of("a = 2020-13-41", "1:5", "is not a date or a time that exists", "quotes"),
                Arguments.of("a = 1e99999999999", "1:5", "exponent is too large", "ordinary size"),
                Arguments.of("a = \"\\q\"", "1:6", "a \\ is before a character", "'single quotes'"),
                Arguments.of("a = \"\\UFFFFFFFF\"", "1:6", "not a character of Unicode", "\\u00B0"),
                Arguments.of("a = \"x\u0001\"", "1:7", "has the control character U+0001", "remove it"),
                Arguments.of("a = [1,,2]", "1:8", "\",2]\" is where a value should be", "quotes"),
                Arguments.of("\n[a]\nb = 1\n[c]\n[a]\n", "5:0", "already appears on line 2", "one [header]"),
                Arguments.of("a = {}\n[a.b]", "2:0", "already given in braces, on line 1", "into the braces"),
                Arguments.of("a = [{}]\n[[a]]", "2:0", "already given in brackets, on line 1", "into the brackets"),
                Arguments.of("a = 1\n[a.b]", "2:0", "on line 1 already", "the value or the table"));
    }

    @ParameterizedTest
    @MethodSource("single")
    void eachIsReportedOnceWithItsPlaceAndWhatToDo(String text, String place, String what, String right) {
        TomlMistake mistake = mistake(text);
        assertEquals(place, mistake.line() + ":" + mistake.column());
        assertTrue(mistake.what().contains(what), mistake.toString());
        assertTrue(mistake.whatWouldBeRight().contains(right), mistake.toString());
    }

    @Test
    void aKeyGivenTwiceIsNamedWithBothLines() {
        TomlMistake mistake = mistake("[strip]\npixels = 1\n# again\npixels = 2\n\n[zones]\n");
        assertEquals(
                new TomlMistake(4, 0, List.of("strip", "pixels"), "is given on line 2 already", "keep one of the two"),
                mistake);
        assertEquals(
                List.of("a", "1", "b"),
                mistake("[[a]]\nb = 1\n[[a]]\nb = 1\nb = 2\n").key());
    }

    @Test
    void allAreReportedAtOnceInTheOrderOfTheText() {
        String text = """
                a = 1 # right
                b = 2 c = 3
                d =
                a = 4
                f = "x
                [g
                h = 1
                [i]
                layers = [
                  { x = 1 y = 2 },
                  { x = 1, y = 2 },
                  { x = },
                ]
                [i]
                colours = ["red"
                last = tru
                """;
        assertEquals(
                List.of("2:7", "3:4", "4:0", "5:5", "6:1", "10:11", "12:9", "14:0", "15:11", "16:8"), places(text));
    }

    @Test
    void whatFollowsAMistakeIsStillRead() {
        Map<String, Object> values =
                Toml.read("x = [1 2\n3]\n[t]\nk = 1\nv = {\n[u]\nk = 2\n").values();
        assertEquals(1, ((Map<?, ?>) values.get("t")).get("k"));
        assertEquals(Map.of("k", 2), values.get("u"));
    }

    @Test
    void aTextThatIsSomethingElseEndsAfterFiftyMistakes() {
        assertEquals(
                Toml.MOST_MISTAKES, places("<p>no toml</p>\n".repeat(10_000)).size());
    }

    /** Each with a value that is in this many tables and arrays, including the outermost table, from line 3 on. */
    private static List<Arguments> nested() {
        return List.of(
                Arguments.of("arrays", (IntFunction<String>)
                        deep -> "x = " + "[".repeat(deep - 1) + "1" + "]".repeat(deep - 1)),
                Arguments.of("empty arrays", (IntFunction<String>)
                        deep -> "x = " + "[".repeat(deep - 1) + "]".repeat(deep - 1)),
                Arguments.of("tables", (IntFunction<String>)
                        deep -> "x = " + "{ y = ".repeat(deep - 1) + "1" + "}".repeat(deep - 1)),
                Arguments.of("a dotted key", (IntFunction<String>) deep -> "x" + ".x".repeat(deep - 1) + " = 1"),
                Arguments.of("a header", (IntFunction<String>)
                        deep -> "[x" + ".x".repeat(deep - 2) + "] # and below\ny = 1"),
                Arguments.of("an array of tables", (IntFunction<String>)
                        deep -> "[[x" + ".x".repeat(deep - 3) + "]]\ny = 1"),
                Arguments.of("all of it", (IntFunction<String>)
                        deep -> "x" + ".x".repeat(deep - 6) + " = [{ z.z = [[ 1 ]]}]"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("nested")
    void nestingHasALimitThatIsReportedWithItsLine(String what, IntFunction<String> nested) {
        assertEquals(List.of(), places("a = 1\n\n" + nested.apply(Toml.DEEPEST) + "\nb = 2\n"));
        for (int deep : new int[] {Toml.DEEPEST + 1, 900, 50_000}) {
            TomlMistake mistake = mistake("a = 1\n\n" + nested.apply(deep) + "\nb = 2\n");
            assertEquals(
                    new TomlMistake(3, 0, List.of(), DEEP, "remove brackets, braces or parts of the key"), mistake);
        }
    }

    @Test
    void nestingOverManyLinesIsTooDeepWhereItGetsThere() {
        int arrays = Toml.DEEPEST - 1;
        assertEquals(List.of(), places("x = " + "[\n".repeat(arrays) + "]".repeat(arrays)));
        assertEquals(
                Toml.DEEPEST,
                mistake("x = " + "[\n".repeat(900) + "]".repeat(900)).line());
    }

    @Test
    void spoiltTextsComeToAnEndWithMistakesWithinTheText() {
        Random random = new Random(1);
        for (long seed = 0; seed < 3000; seed++) {
            String text = Mutation.of(new RandomToml(seed).text(), random);
            int lines = (int) text.chars().filter(c -> c == '\n').count() + 1;
            for (TomlMistake mistake : Toml.read(text).mistakes()) {
                assertTrue(mistake.line() >= 1 && mistake.line() <= lines, () -> mistake + " in\n" + text);
            }
        }
    }

    /** A mebibyte each, the maximum for a file. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "[",
                "]",
                "{",
                "}",
                "a.",
                "[[",
                "a={",
                "[{a=",
                "\"",
                "'",
                "\"\"\"",
                "\\",
                "=",
                ",",
                "1",
                "1_",
                "#",
                "a = 1\n",
                "a = [\n",
                "x",
                "\n",
                " ",
                "\u0001",
                "a = [1,",
                "a = {b=1\n",
                "\"\\u",
                "1,",
                "- ",
                "[a]\n",
                "[[a]]\n",
                "é"
            })
    void whateverIsRepeatedIsReadInASmallStack(String piece) throws InterruptedException {
        String pieces = piece.repeat((1 << 20) / piece.length());
        for (String before : List.of("", "a = ", "a = [\n", "a = \"\"\"")) {
            boolean[] read = {false};
            Runnable reading = () -> {
                Toml.read(before + pieces);
                read[0] = true;
            };
            Thread reader = new Thread(null, reading, "reader", SMALL_STACK);
            reader.start();
            reader.join(60_000);
            assertTrue(read[0], before);
        }
    }
}
