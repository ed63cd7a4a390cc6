package dev.lampwright.payload;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class CsvFieldTest {
    private static List<String> fields(String line) {
        return CsvField.fields(line, ',', 100);
    }

    /** RFC 4180, section 2, rules 4 to 7: its examples, of which the first line counts here. */
    @Test
    void readsAsRfc4180Says() {
        assertEquals(List.of("aaa", "bbb", "ccc"), fields("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"));
        assertEquals(List.of("aaa", "bbb", "ccc"), fields("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx"));
        assertEquals(List.of("aaa", "b\r\nbb", "ccc"), fields("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx"));
        assertEquals(List.of("aaa", "b\"bb", "ccc"), fields("\"aaa\",\"b\"\"bb\",\"ccc\""));
        assertEquals(List.of(" a", " b "), fields(" a, b "));
    }

    @Test
    void emptyFieldsAreFields() {
        assertEquals(List.of(""), fields(""));
        assertEquals(List.of("", "", ""), fields(",,"));
        assertEquals(List.of("a", ""), fields("a,"));
        assertEquals(List.of("", "a"), fields("\"\",a"));
    }

    @Test
    void aQuoteThatDoesNotEndTakesTheRest() {
        assertEquals(List.of("a", "b,c"), fields("a,\"b,c"));
    }

    @Test
    void takesTheFieldOfANumber() {
        assertEquals(Optional.of("c"), new CsvField(3, ';').from("a;b;c;d"));
        assertEquals(Optional.of("a"), new CsvField(1, '\t').from("a\tb"));
        assertEquals(Optional.empty(), new CsvField(3, ';').from("a;b"));
    }

    @Test
    void refusesWhatCanBeNoField() {
        assertThrows(IllegalArgumentException.class, () -> new CsvField(0, ','));
        assertThrows(IllegalArgumentException.class, () -> new CsvField(1, '"'));
        assertThrows(IllegalArgumentException.class, () -> new CsvField(1, '\n'));
    }
}
