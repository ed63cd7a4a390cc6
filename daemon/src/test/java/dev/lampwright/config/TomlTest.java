package dev.lampwright.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Examples of the TOML 1.0 specification (toml.io; from memory). */
class TomlTest {
    private static Map<String, Object> parse(String text) throws ConfigException {
        return Toml.parse(text, "t.toml");
    }

    private static Mistake mistake(String text) {
        List<Mistake> mistakes =
                assertThrows(ConfigException.class, () -> parse(text)).mistakes();
        assertEquals(1, mistakes.size());
        return mistakes.get(0);
    }

    @Test
    void keys() throws ConfigException {
        assertEquals(Map.of("bare_key", "v", "bare-key", "v", "1234", "v"), parse("""
                bare_key = "v"
                bare-key = "v"
                1234 = "v"
                """));
        assertEquals(Map.of("127.0.0.1", "v", "ʎǝʞ", "v", "quoted \"value\"", "v", "", "blank"), parse("""
                "127.0.0.1" = "v"
                "ʎǝʞ" = "v"
                'quoted "value"' = "v"
                "" = "blank"
                """));
    }

    @Test
    void dottedKeys() throws ConfigException {
        assertEquals(
                Map.of(
                        "physical", Map.of("color", "orange", "shape", "round"),
                        "site", Map.of("google.com", true),
                        "3", Map.of("14159", "pi")),
                parse("""
                physical.color = "orange"
                physical . shape = "round"
                site."google.com" = true
                3.14159 = "pi"
                """));
    }

    @Test
    void strings() throws ConfigException {
        assertEquals(
                "I'm a string. \"You can quote me\". Name\tJos\u00E9\nLocation\tSF.",
                parse("""
                str = "I'm a string. \\"You can quote me\\". Name\\tJos\\u00E9\\nLocation\\tSF."
                """).get("str"));
        assertEquals("The quick brown fox jumps over the lazy dog.", parse("""
                str = ""\"
                The quick brown \\


                  fox jumps over \\
                    the lazy dog.""\"
                """).get("str"));
        assertEquals(
                "C:\\Users\\nodejs\\templates",
                parse("s = 'C:\\Users\\nodejs\\templates'").get("s"));
        assertEquals("'That,' she said, 'is still pointless.'", parse("""
                s = ''''That,' she said, 'is still pointless.''''
                """).get("s"));
    }

    @ParameterizedTest
    @CsvSource({
        "+99, 99",
        "42, 42",
        "0, 0",
        "-17, -17",
        "1_000, 1000",
        "5_349_221, 5349221",
        "0xDEADBEEF, 3735928559",
        "0xdead_beef, 3735928559",
        "0o01234567, 342391",
        "0o755, 493",
        "0b11010110, 214"
    })
    void integers(String toml, long value) throws ConfigException {
        assertEquals(value, ((Number) parse("n = " + toml).get("n")).longValue());
    }

    @ParameterizedTest
    @CsvSource({
        "+1.0, 1",
        "3.1415, 3.1415",
        "-0.01, -0.01",
        "5e+22, 5e22",
        "1e06, 1e6",
        "-2E-2, -0.02",
        "6.626e-34, 6.626e-34",
        "224_617.445_991_228, 224617.445991228",
        "inf, Infinity",
        "-inf, -Infinity",
        "nan, NaN"
    })
    void floats(String toml, double value) throws ConfigException {
        assertEquals(value, ((Number) parse("n = " + toml).get("n")).doubleValue());
    }

    @Test
    void booleansAndDates() throws ConfigException {
        assertEquals(Map.of("t", true, "f", false), parse("t = true\nf = false"));
        assertEquals(LocalDate.of(1979, 5, 27), parse("d = 1979-05-27").get("d"));
        assertEquals(LocalTime.of(7, 32), parse("d = 07:32:00").get("d"));
    }

    @Test
    void arrays() throws ConfigException {
        assertEquals(
                List.of(List.of(1, 2), List.of("a", "b", "c")),
                parse("n = [ [ 1, 2 ], [\"a\", 'b', \"c\"] ]").get("n"));
        assertEquals(List.of(new BigDecimal("0.1"), 1), parse("""
                n = [
                  0.1,
                  1, # this is ok
                ]
                """).get("n"));
    }

    @Test
    void tables() throws ConfigException {
        assertEquals(
                Map.of("dog", Map.of("tater.man", Map.of("type", Map.of("name", "pug")))),
                parse("[dog.\"tater.man\"]\ntype.name = \"pug\""));
        assertEquals(Map.of("point", Map.of("x", 1, "y", 2)), parse("point = { x = 1, y = 2 }"));
    }

    @Test
    void arraysOfTables() throws ConfigException {
        Map<String, Object> apple = Map.of(
                "name", "apple",
                "physical", Map.of("color", "red"),
                "varieties", List.of(Map.of("name", "red delicious"), Map.of("name", "granny smith")));
        Map<String, Object> banana = Map.of("name", "banana", "varieties", List.of(Map.of("name", "plantain")));
        assertEquals(Map.of("fruits", List.of(apple, banana)), parse("""
                [[fruits]]
                name = "apple"
                [fruits.physical]
                color = "red"
                [[fruits.varieties]]
                name = "red delicious"
                [[fruits.varieties]]
                name = "granny smith"
                [[fruits]]
                name = "banana"
                [[fruits.varieties]]
                name = "plantain"
                """));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "key = # INVALID",
                "first = \"Tom\" last = \"Preston-Werner\"",
                "= \"no key name\"",
                "\"\"\"key\"\"\" = \"not allowed\"",
                "invalid_float_1 = .7",
                "invalid_float_2 = 7.",
                "invalid_float_3 = 3.e+20",
                "[product]\ntype.name = \"Nail\"\ntype = { edible = false }",
                "[fruit]\napple = \"red\"\n[fruit.apple]\ntexture = \"smooth\"",
                "fruits = []\n[[fruits]]",
                "[a]\n[a]"
            })
    void invalid(String text) {
        mistake(text);
    }

    @Test
    void aMistakeOfSyntaxHasLineAndColumn() {
        Mistake mistake = mistake("a = 1\nb = two\n");
        assertEquals(
                "t.toml:2: column 5: what stands there is neither a key nor a value; put text in \"quotes\", and write numbers without a unit",
                mistake.toString());
    }

    private static List<Arguments> mistakesOfSyntax() {
        return List.of(
                Arguments.of("a = \n", 1, "on the same line"),
                Arguments.of("a = \"x\nb = 1", 1, "close the quote"),
                Arguments.of("a = [1,\n2", 2, "close what is still open"),
                Arguments.of("a = # b", 1, "before the comment"),
                Arguments.of("\na = [1\n2]", 3, "commas"),
                Arguments.of("\n[a]\nb = 1\n[c]\n[a]\n", 5, "one [header]"),
                Arguments.of("a = {}\n[a.b]", 2, "into the braces"),
                Arguments.of("a = [{}]\n[[a]]", 2, "into the brackets"),
                Arguments.of("a = 1\n[a.b]", 2, "the value or the table"),
                Arguments.of("a = 01", 1, "zeros"),
                Arguments.of("a = \"\\q\"", 1, "'single quotes'"),
                Arguments.of("a = \"\\UFFFFFFFF\"", 1, "toml.io"));
    }

    @ParameterizedTest
    @MethodSource("mistakesOfSyntax")
    void mistakesOfSyntaxSayWhatToDo(String text, int line, String right) {
        Mistake mistake = mistake(text);
        assertEquals(line, mistake.line());
        assertEquals("", mistake.key());
        assertTrue(mistake.whatWouldBeRight().contains(right), mistake.toString());
    }

    @Test
    void aKeyGivenTwiceIsNamedWithBothLines() {
        assertEquals(
                "t.toml:4: strip.pixels: is given on line 2 already; keep one of the two",
                mistake("[strip]\npixels = 1\n# again\npixels = 2\n\n[zones]\n").toString());
    }

    @Test
    void aDateThatIsNone() {
        assertEquals(0, mistake("a = 2020-13-41").line());
    }

    /** Each with a value that stands in so many tables and arrays, the outermost table among them, from line 3 on. */
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
    void nestingHasALimitThatIsToldWithItsLine(String what, IntFunction<String> nested) throws ConfigException {
        parse("a = 1\n\n" + nested.apply(Toml.DEEPEST) + "\nb = 2\n");
        for (int deep : new int[] {Toml.DEEPEST + 1, 900, 50_000}) {
            String text = "a = 1\n\n" + nested.apply(deep) + "\nb = 2\n";
            assertEquals(
                    "t.toml:3: arrays, tables and dotted keys stand more than 64 deep in each other;"
                            + " take brackets, braces or parts of the key away",
                    mistake(text).toString());
        }
    }

    @Test
    void nestingOverManyLinesIsTooDeepWhereItGetsSo() throws ConfigException {
        int arrays = Toml.DEEPEST - 1;
        parse("x = " + "[\n".repeat(arrays) + "]".repeat(arrays));
        assertEquals(
                Toml.DEEPEST,
                mistake("x = " + "[\n".repeat(900) + "]".repeat(900)).line());
    }
}
