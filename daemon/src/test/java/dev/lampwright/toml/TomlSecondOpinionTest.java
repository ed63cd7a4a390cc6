package dev.lampwright.toml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.tomlj.TomlArray;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlTable;

/**
 * What another TOML 1.0 reader (tomlj 1.1.1) makes of the same texts. Texts with dates are left out: it refuses some that are valid, such
 * as {@code a = { b = [1979-05-27] }}.
 */
class TomlSecondOpinionTest {
    private static final String DATE = "1979";

    private static TomlParseResult other(String text) {
        return org.tomlj.Toml.parse(text);
    }

    /** It reports some mistakes by throwing. */
    private static boolean othersRefuse(String text) {
        try {
            return other(text).hasErrors();
        } catch (TomlParseError | AssertionError e) {
            return true;
        }
    }

    /** The values of both in one form, with each key's line: for scalars and arrays that are the value of a key. */
    private static Object theirs(Object value) {
        if (value instanceof TomlTable table) {
            Map<String, Object> map = new LinkedHashMap<>();
            for (String key : table.keySet()) {
                map.put(
                        key,
                        withLine(
                                table.get(List.of(key)),
                                table.inputPositionOf(List.of(key)).line()));
            }
            return map;
        }
        if (value instanceof TomlArray array) {
            return IntStream.range(0, array.size())
                    .mapToObj(i -> theirs(array.get(i)))
                    .toList();
        }
        return value instanceof String text ? text.replace("\r\n", "\n") : value;
    }

    private static Object withLine(Object value, int line) {
        return value instanceof TomlTable ? theirs(value) : List.of(line, theirs(value));
    }

    private static Object ours(TomlDocument document, List<String> path, Object value) {
        if (value instanceof Map<?, ?> table) {
            Map<Object, Object> map = new LinkedHashMap<>();
            table.forEach((key, inner) -> {
                List<String> at = within(path, key);
                Object read = ours(document, at, inner);
                map.put(key, inner instanceof Map ? read : List.of(document.line(at), read));
            });
            return map;
        }
        if (value instanceof List<?> array) {
            return IntStream.range(0, array.size())
                    .mapToObj(i -> ours(document, within(path, i), array.get(i)))
                    .toList();
        }
        if (value instanceof Number number) {
            return value instanceof Integer || value instanceof Long
                    ? (Object) number.longValue()
                    : (Object) number.doubleValue();
        }
        return value instanceof String text ? text.replace("\r\n", "\n") : value;
    }

    private static List<String> within(List<String> path, Object name) {
        List<String> inner = new ArrayList<>(path);
        inner.add(name.toString());
        return inner;
    }

    private static void assertSame(String text) {
        TomlParseResult other = other(text);
        TomlDocument document = Toml.read(text);
        assertEquals(List.of(), other.errors(), text);
        assertEquals(List.of(), document.mistakes(), text);
        assertEquals(theirs(other), ours(document, List.of(), document.values()), text);
    }

    @Test
    void randomTextsHaveTheSameValuesAndLines() {
        for (long seed = 0; seed < 500; seed++) {
            String text = new RandomToml(seed).text();
            if (!text.contains(DATE)) {
                assertSame(text);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"/dev/lampwright/config/example.toml", "/dev/lampwright/config/built-in.toml"})
    void soHaveTheFilesThatComeWithLampwright(String name) throws IOException {
        try (InputStream file = TomlSecondOpinionTest.class.getResourceAsStream(name)) {
            assertSame(new String(file.readAllBytes(), StandardCharsets.UTF_8));
        }
    }

    @Test
    void spoiltTextsAreRefusedByBothOrNeither() {
        Random random = new Random(7);
        int refused = 0;
        for (long seed = 0; seed < 2000; seed++) {
            String text = Mutation.of(new RandomToml(seed).text(), random);
            List<TomlMistake> mistakes = Toml.read(text).mistakes();
            if (!text.contains(DATE)) {
                assertEquals(othersRefuse(text), !mistakes.isEmpty(), () -> text + "\n" + mistakes);
                refused += mistakes.isEmpty() ? 0 : 1;
            }
        }
        assertTrue(refused > 400, "refused " + refused);
    }

    @Test
    void weReadDatesWhereTheyRefuseThem() {
        assertTrue(other("a = { b = [1979-05-27] }").hasErrors());
        assertEquals(List.of(), Toml.read("a = { b = [1979-05-27] }").mistakes());
    }

    @Test
    void weKeepWholeNumbersThatTheyFindTooLarge() {
        assertTrue(other("n = 99999999999999999999").hasErrors());
        assertEquals(
                new BigInteger("99999999999999999999"),
                Toml.read("n = 99999999999999999999").values().get("n"));
    }
}
