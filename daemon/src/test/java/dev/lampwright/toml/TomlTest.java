package dev.lampwright.toml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Examples of the TOML 1.0 specification (toml.io; from memory). */
class TomlTest {
    private static Map<String, Object> parse(String text) {
        TomlDocument document = Toml.read(text);
        assertEquals(List.of(), document.mistakes());
        return document.values();
    }

    @Test
    void keys() {
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
    void dottedKeys() {
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
    void strings() {
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
    void integers(String toml, long value) {
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
    void floats(String toml, double value) {
        assertEquals(value, ((Number) parse("n = " + toml).get("n")).doubleValue());
    }

    @Test
    void booleansAndDates() {
        assertEquals(Map.of("t", true, "f", false), parse("t = true\nf = false"));
        assertEquals(LocalDate.of(1979, 5, 27), parse("d = 1979-05-27").get("d"));
        assertEquals(LocalTime.of(7, 32), parse("d = 07:32:00").get("d"));
        assertEquals(
                LocalTime.of(0, 32, 0, 999_999_000),
                parse("d = 00:32:00.999999").get("d"));
        assertEquals(
                LocalDateTime.of(1979, 5, 27, 7, 32),
                parse("d = 1979-05-27T07:32:00").get("d"));
        assertEquals(
                OffsetDateTime.of(1979, 5, 27, 7, 32, 0, 0, ZoneOffset.UTC),
                parse("d = 1979-05-27 07:32:00Z").get("d"));
        assertEquals(
                OffsetDateTime.of(1979, 5, 27, 0, 32, 0, 999_999_000, ZoneOffset.ofHours(-7)),
                parse("d = 1979-05-27T00:32:00.999999-07:00").get("d"));
    }

    @Test
    void whatIsFinerThanTheClockIsCutOff() {
        assertEquals(
                LocalTime.of(7, 32, 0, 123_456_789),
                parse("d = 07:32:00.1234567899").get("d"));
    }

    @Test
    void arrays() {
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
    void tables() {
        assertEquals(
                Map.of("dog", Map.of("tater.man", Map.of("type", Map.of("name", "pug")))),
                parse("[dog.\"tater.man\"]\ntype.name = \"pug\""));
        assertEquals(Map.of("point", Map.of("x", 1, "y", 2)), parse("point = { x = 1, y = 2 }"));
    }

    @Test
    void arraysOfTables() {
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
                "name = \"Tom\"\nname = \"Pradyun\"",
                "spelling = \"favorite\"\n\"spelling\" = \"favourite\"",
                "fruit.apple = 1\nfruit.apple.smooth = true",
                "a = \"\\uD800\"",
                "a = \"\"\"\\ x\"\"\"",
                "str = '''Here are fifteen apostrophes: ''''''''''''''''''",
                "invalid_float_1 = .7",
                "invalid_float_2 = 7.",
                "invalid_float_3 = 3.e+20",
                "n = 1__0",
                "n = _1",
                "n = 0x_1",
                "n = +0x1",
                "t = 07:32",
                "[product]\ntype.name = \"Nail\"\ntype = { edible = false }",
                "[product]\ntype = { name = \"Nail\" }\ntype.edible = false",
                "[fruit]\napple = \"red\"\n[fruit]\norange = \"orange\"",
                "[fruit]\napple = \"red\"\n[fruit.apple]\ntexture = \"smooth\"",
                "[fruit]\napple.color = \"red\"\n[fruit.apple]",
                "[fruit.physical]\ncolor = \"red\"\n[[fruit]]\nname = \"apple\"",
                "fruits = []\n[[fruits]]",
                "[[fruits]]\nname = \"a\"\n[[fruits.varieties]]\nname = \"b\"\n[fruits.varieties]\nname = \"c\"",
                "[[fruits]]\n[fruits.physical]\ncolor = \"red\"\n[[fruits.physical]]\ncolor = \"green\"",
                "p = { x = 1, y = 2, }",
                "p = { x = 1,\ny = 2 }",
                "[a]\n[a]",
                "[]",
                "[a.]",
                "a = 1\rb = 2",
                "# a comment with \u0001"
            })
    void invalid(String text) {
        assertNotEquals(List.of(), Toml.read(text).mistakes());
    }

    @Test
    void tablesMayComeInAnyOrderAndGrowBelowDottedKeys() {
        assertEquals(Map.of("x", Map.of("y", Map.of("z", Map.of("w", Map.of())))), parse("[x.y.z.w]\n[x]\n"));
        assertEquals(
                Map.of("fruit", Map.of("apple", Map.of("color", "red", "texture", Map.of("smooth", true)))),
                parse("[fruit]\napple.color = \"red\"\n[fruit.apple.texture]\nsmooth = true"));
    }

    @Test
    void linesMayEndInCarriageReturnAndLineFeed() {
        assertEquals(Map.of("a", 1, "b", "x\r\ny"), parse("a = 1\r\nb = \"\"\"x\r\ny\"\"\"\r\n"));
    }

    @Test
    void whatNoLongHoldsStaysExact() {
        assertEquals(
                new BigInteger("99999999999999999999"),
                parse("n = 99_999_999_999_999_999_999").get("n"));
        assertEquals(new BigDecimal("1e999999999"), parse("n = 1e999999999").get("n"));
    }
}
