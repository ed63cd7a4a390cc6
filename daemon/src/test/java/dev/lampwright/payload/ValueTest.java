package dev.lampwright.payload;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.lampwright.testing.Alder;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ValueTest {
    private static Optional<Value> at(String json, Cut... cuts) throws UnreadableException {
        return new Payload(Alder.bytes("{\"at\": " + json + "}"))
                .at(new Source("t", PayloadPath.at("/at"), List.of(cuts)));
    }

    private static Value value(String json) throws UnreadableException {
        return at(json).orElseThrow();
    }

    @Test
    void eachKindOfJsonIsAKindOfValue() throws UnreadableException {
        assertEquals(new Value.Numeric(41), value("41"));
        assertEquals(new Value.Numeric(41.5), value("41.5"));
        assertEquals(new Value.Text("41.5"), value("\"41.5\""));
        assertEquals(new Value.Text(" "), value("\" \""));
        assertEquals(new Value.Flag(false), value("false"));
        assertEquals(new Value.None(), value("null"));
        assertEquals(new Value.Structure(), value("{}"));
        assertEquals(new Value.Structure(), value("[41]"));
    }

    /** A printer that leaves a value out says something different from one that says that there is none. */
    @Test
    void whatIsNotThereIsNoValue() throws UnreadableException {
        Payload payload = new Payload(Alder.bytes("{\"at\": 1}"));
        assertEquals(Optional.empty(), payload.at(new Source("t", PayloadPath.at("/other"))));
        assertEquals(Optional.empty(), payload.at(new Source("t", PayloadPath.at("/at/more"))));
    }

    /** A binding names the word that the sender wrote, so 1.0 differs from 1, whatever they are as numbers. */
    @ParameterizedTest
    @CsvSource({
        "1, 1, 1",
        "1.0, 1.0, 1",
        "-0, 0, 0",
        "10.50, 10.5, 10.5",
        "1e2, 100.0, 100",
        "1e10, 1.0E10, 10000000000",
        "9007199254740993, 9007199254740993, 9007199254740992",
        "123456789012345678901234567890, 123456789012345678901234567890, 1.2345678901234568e29",
        "1e400, Infinity, Infinity",
    })
    void aNumberIsTheWordThatItIsWrittenAsAndTheNearestDouble(String json, String word, double number)
            throws UnreadableException {
        Value.Numeric value = (Value.Numeric) value(json);
        assertEquals(Optional.of(word), value.word());
        assertEquals(number, value.value());
    }

    @Test
    void onlyWholeNumbersAreWhole() throws UnreadableException {
        assertEquals(OptionalLong.of(Long.MIN_VALUE), ((Value.Numeric) value("-9223372036854775808")).whole());
        assertEquals(OptionalLong.empty(), ((Value.Numeric) value("9223372036854775808")).whole());
        assertEquals(OptionalLong.empty(), ((Value.Numeric) value("1.0")).whole());
        assertNotEquals(value("1"), value("1.0"));
    }

    @Test
    void aNumberKeepsItsDigits() throws UnreadableException {
        assertEquals(new BigDecimal("0.1"), ((Value.Numeric) value("0.1")).exact());
        assertEquals(
                new BigDecimal("123456789012345678901234567890"),
                ((Value.Numeric) value("123456789012345678901234567890")).exact());
        Value precise =
                JsonLine.read("{\"at_s\": 1.0000000000000000001}").value("at_s").orElseThrow();
        assertEquals(new BigDecimal("1.0000000000000000001"), ((Value.Numeric) precise).exact());
    }

    @ParameterizedTest
    @CsvSource({"true, true", "false, false", "null, null", "'\" Run \"', ' Run '"})
    void othersAreWordsToo(String json, String word) throws UnreadableException {
        assertEquals(Optional.of(word), value(json).word());
    }

    /** Anything that is a word can be cut. */
    @ParameterizedTest
    @CsvSource({"true, ue", "12.5, 5", "null, ll", "'\"a; b \"', b"})
    void aCutIsMadeOfTheWord(String json, String part) throws UnreadableException {
        Excerpt end = new Excerpt("(?<value>(ue|5|ll|b ?))$");
        assertEquals(Optional.of(new Value.Text(part)), at(json, end));
        assertEquals(Optional.empty(), at(json, end, new Excerpt("(?<value>x)"), end));
    }

    @ParameterizedTest
    @ValueSource(strings = {"{}", "[\"a\"]"})
    void nothingIsCutOutOfAStructure(String json) throws UnreadableException {
        assertEquals(Optional.empty(), value(json).word());
        assertThrows(UnreadableException.class, () -> at(json, new CsvField(1, ';')));
    }

    @Test
    void aBarePayloadIsText() throws UnreadableException {
        Source bare = new Source("t", PayloadPath.BARE);
        assertEquals(Optional.of(new Value.Text("41.5")), new Payload(Alder.bytes(" 41.5\n")).at(bare));
        assertEquals(Optional.of(new Value.Text("null")), new Payload(Alder.bytes("null")).at(bare));
        assertEquals(Optional.of(new Value.Text("")), new Payload(new byte[0]).at(bare));
    }
}
