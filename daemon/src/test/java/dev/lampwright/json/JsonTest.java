package dev.lampwright.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class JsonTest {
    @Test
    void keysAreInTheOrderInWhichTheyWerePut() {
        JsonObject object = new JsonObject()
                .put("text", "a \"b\"\n")
                .put("yes", true)
                .put("count", 9_007_199_254_740_993L)
                .put("float", 0.1f)
                .put("double", 61.0)
                .put("unknown", Double.NaN)
                .put("within", new JsonObject())
                .put("list", new JsonArray());
        assertEquals(
                "{\"text\":\"a \\\"b\\\"\\n\",\"yes\":true,\"count\":9007199254740993,\"float\":0.1,\"double\":61.0,"
                        + "\"unknown\":null,\"within\":{},\"list\":[]}",
                object.text());
        assertEquals(
                "{\"a\":2,\"b\":1}",
                new JsonObject().put("a", 1).put("b", 1).put("a", 2).text());
    }

    @Test
    void whatIsNotThereIsLeftOut() {
        JsonObject object = new JsonObject()
                .putIfAny("text", "")
                .putIfAny("within", new JsonObject())
                .putRounded("number", Double.NaN)
                .putRounded("largest", Double.POSITIVE_INFINITY);
        assertEquals("{}", object.text());
        object.putIfAny("text", "x").putIfAny("within", new JsonObject().put("a", 1));
        assertEquals("{\"text\":\"x\",\"within\":{\"a\":1}}", object.text());
    }

    @Test
    void roundedNumbersHaveThreeDecimalsAtMostAndNoExponent() {
        JsonObject object = new JsonObject()
                .putRounded("a", 0.0005)
                .putRounded("b", 0.0015)
                .putRounded("c", 1e9)
                .putRounded("d", -0.25);
        assertEquals("{\"a\":0,\"b\":0.002,\"c\":1000000000,\"d\":-0.25}", object.text());
    }

    @Test
    void arraysHoldNumbersAndWhatIsPutTogether() {
        JsonArray array = new JsonArray()
                .add(1)
                .add(0.7f)
                .add(Float.NaN)
                .add(0.25)
                .add(Double.NaN)
                .add(new JsonArray().add(2))
                .add(new JsonObject().put("a", "b"));
        assertEquals("[1,0.7,null,0.25,null,[2],{\"a\":\"b\"}]", array.text());
    }

    @Test
    void mapsAndCollectionsAreWritten() {
        assertEquals(
                "{\"a\":[1,\"b\",true,1000]}", Json.of(Map.of("a", List.of(1, "b", true, new BigDecimal("1E+3")))));
        List<Object> itself = new ArrayList<>();
        itself.add(new Object());
        assertThrows(IllegalArgumentException.class, () -> Json.of(itself));
    }

    @Test
    void onlyOneWholeValueIsRead() {
        assertEquals("b", Json.read(" {\"a\": \"b\"} ").orElseThrow().path("a").asText());
        assertTrue(Json.read("null").orElseThrow().isNull());
        for (String text : List.of("", " ", "nonsense", "{} {}", "{\"a\":", "1 2")) {
            assertTrue(Json.read(text).isEmpty(), text);
        }
    }
}
