package dev.lampwright.payload;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class JsonLineTest {
    @Test
    void isWrittenInTheOrderOfItsEntriesWithoutALineBreak() {
        Map<String, Object> entries = new LinkedHashMap<>();
        entries.put("z", "a\nb");
        entries.put("a", new BigDecimal("1E+3"));
        entries.put("n", null);
        entries.put("in", Map.of("x", 0.5));
        assertEquals("{\"z\":\"a\\nb\",\"a\":1000,\"n\":null,\"in\":{\"x\":0.5}}", JsonLine.of(entries));
    }

    @Test
    void isReadBack() throws UnreadableException {
        JsonLine line = JsonLine.read("{\"z\": 0.10, \"a\": {\"x\": \"RUN\"}, \"n\": null, \"l\": [1]}");
        assertEquals(List.of("z", "a", "n", "l"), line.keys());
        assertTrue(line.has("n"));
        assertFalse(line.has("x"));
        assertEquals(Optional.of(new Value.Numeric(new BigDecimal("0.1"))), line.value("z"));
        assertEquals(Optional.of(new Value.None()), line.value("n"));
        assertEquals(Optional.empty(), line.value("x"));
        assertEquals("{\"x\":\"RUN\"}", line.json("a"));
        JsonLine inner = line.object("a").orElseThrow();
        assertEquals(Optional.of(new Value.Text("RUN")), inner.value("x"));
        assertEquals(List.of(), line.object("nothing").orElseThrow().keys());
        for (String other : Arrays.asList("z", "n", "l")) {
            assertEquals(Optional.empty(), line.object(other), other);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"[1]", "1", "\"a\"", "null", ""})
    void anythingButAnObjectIsRefused(String text) {
        assertEquals("is not a JSON object", complaint(text));
    }

    /** RFC 8259, section 4, leaves open what a repeated name means; here it is a mistake. */
    @ParameterizedTest
    @ValueSource(strings = {"{\"a\":1,\"a\":2}", "{\"a\":1} {}", "{\"a\":1", "{a:1}", "{\n\n]"})
    void whatIsNotOneObjectIsRefusedInOneLine(String text) {
        String words = complaint(text);
        assertTrue(words.startsWith("is not one JSON object: "), words);
        assertFalse(words.contains("\n"), words);
    }

    private static String complaint(String text) {
        return assertThrows(UnreadableException.class, () -> JsonLine.read(text))
                .getMessage();
    }
}
