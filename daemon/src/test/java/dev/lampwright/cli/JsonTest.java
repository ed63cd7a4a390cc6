package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class JsonTest {
    /** Jackson as a second opinion: it reads back what was written. */
    private static Object readBack(Object value) throws JsonProcessingException {
        return new ObjectMapper().readValue(Json.of(value), Object.class);
    }

    @Test
    void values() throws JsonProcessingException {
        Map<String, Object> value = Map.of(
                "text",
                "a",
                "whole",
                5,
                "number",
                0.25,
                "yes",
                true,
                "list",
                List.of(1, "b", List.of()),
                "map",
                Map.of());
        assertEquals(value, readBack(value));
    }

    /** RFC 8259, section 7: quotation mark, reverse solidus and U+0000 to U+001F must be escaped. */
    @Test
    void everyCharacterOfTheBasicPlane() throws JsonProcessingException {
        String all = IntStream.range(0, Character.MIN_SURROGATE)
                .mapToObj(Character::toString)
                .collect(Collectors.joining("", "", "\uD83D\uDCA1"));
        assertEquals(all, readBack(all));
    }

    @Test
    void oneLine() {
        assertEquals("{\"a\":\"\\u000a\\\"\\\\\"}", Json.of(Map.of("a", "\n\"\\")));
    }

    @Test
    void whatIsNoJson() {
        assertThrows(IllegalArgumentException.class, () -> Json.of(Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> Json.of(new Object()));
    }
}
