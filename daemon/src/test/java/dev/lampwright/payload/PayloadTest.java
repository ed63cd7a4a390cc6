package dev.lampwright.payload;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Alder;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The limits of one message, and what is reported about one that cannot be read. */
class PayloadTest {
    private static final Source WHOLE = new Source("t", PayloadPath.at(""));
    private static final Source FIRST = new Source("t", PayloadPath.at("/0"));
    private static final Source BARE = new Source("t", PayloadPath.BARE);

    private static Payload of(String text) {
        return new Payload(Alder.bytes(text));
    }

    private static String complaint(Payload payload) {
        return assertThrows(UnreadableException.class, () -> payload.at(FIRST)).getMessage();
    }

    /** RFC 8259: one JSON text, and nothing after it. */
    @ParameterizedTest
    @ValueSource(strings = {"[41", "[41]]", "41 42", "RUN", "{\"a\":1,}", "['a']"})
    void whatIsNotJsonIsRefusedEachTimeItIsAsked(String text) {
        Payload payload = of(text);
        assertEquals("the message is not JSON", complaint(payload));
        assertEquals("the message is not JSON", complaint(payload));
        assertTrue(payload.json().isEmpty());
    }

    @Test
    void anEmptyMessageHasNothingInIt() throws UnreadableException {
        assertEquals(Optional.empty(), of("").at(WHOLE));
    }

    @Test
    void theWholeDocumentIsAValueToo() throws UnreadableException {
        assertEquals(Optional.of(new Value.Numeric(41)), of(" 41 ").at(WHOLE));
    }

    @Test
    void readsAHundredLevelsAndNoMore() throws UnreadableException {
        assertEquals(
                Optional.of(new Value.Structure()),
                of("[".repeat(100) + "]".repeat(100)).at(FIRST));
        assertEquals(
                "the message's JSON is too deep, or a name or number in it too long",
                complaint(of("[".repeat(101) + "]".repeat(101))));
    }

    @Test
    void readsAMebibyteAndNoMore() throws UnreadableException {
        String most = "[1" + " ".repeat(Payload.MOST_BYTES - 3) + "]";
        assertEquals(Optional.of(new Value.Numeric(1)), of(most).at(FIRST));
        assertEquals(Optional.of(new Value.Text(most)), of(most).at(BARE));
        assertEquals("the message is longer than 1 MiB", complaint(of(most + " ")));
        assertThrows(UnreadableException.class, () -> of(most + " ").at(BARE));
    }

    /** The array counts as well, and so does every value in it. */
    @Test
    void readsFiftyThousandValuesAndNoMore() throws UnreadableException {
        String most = "[1" + ",1".repeat(Payload.MOST_VALUES - 2) + "]";
        assertEquals(Optional.of(new Value.Numeric(1)), of(most).at(FIRST));
        String tooMany = "[1" + ",1".repeat(Payload.MOST_VALUES - 1) + "]";
        assertEquals("the message's JSON has more than 50000 values in it", complaint(of(tooMany)));
        String nested = "[[]" + ",[]".repeat(Payload.MOST_VALUES - 1) + "]";
        assertEquals("the message's JSON has more than 50000 values in it", complaint(of(nested)));
        String longButFew = "[1,\"" + "a".repeat(Payload.MOST_VALUES) + "\"]";
        assertEquals(Optional.of(new Value.Numeric(1)), of(longButFew).at(FIRST));
        assertEquals("the message is not JSON", complaint(of(longButFew + "]")));
    }

    @Test
    void aLogGetsTheBeginning() {
        assertEquals("{\"now\": 41}", of("{\"now\": 41}").beginning());
        String beginning = of("é".repeat(300)).beginning();
        assertTrue(beginning.startsWith("é".repeat(55)) && beginning.length() <= 62, beginning);
    }

    @Test
    void cutsAreMadeOneAfterTheOtherAndStripped() throws UnreadableException {
        Source source = new Source("t", PayloadPath.BARE, List.of(new CsvField(2, ';'), new CsvField(1, ',')));
        assertEquals(Optional.of(new Value.Text("60")), of("41.5; 60 ,7;RUN").at(source));
        assertEquals(Optional.empty(), of("41.5").at(source));
        assertEquals("the payload itself, field 2, field 1", source.place());
        assertEquals("/plate/now", new Source("t", PayloadPath.at("/plate/now")).place());
    }

    @Test
    void pathsThatAreWrittenAlikeAreEqual() {
        assertEquals(PayloadPath.at("/a/0"), PayloadPath.at("/a/0"));
        assertEquals(PayloadPath.at("/a/0").hashCode(), PayloadPath.at("/a/0").hashCode());
        assertNotEquals(PayloadPath.at("/a/0"), PayloadPath.at("/a/1"));
        assertNotEquals(PayloadPath.at(""), PayloadPath.BARE);
        assertFalse(PayloadPath.at("").bare());
        assertTrue(PayloadPath.BARE.bare());
        assertEquals("/a/0", PayloadPath.at("/a/0").pointer());
        assertEquals("/a/0", PayloadPath.at("/a/0").toString());
        assertEquals("the payload itself", PayloadPath.BARE.toString());
        assertThrows(IllegalArgumentException.class, () -> PayloadPath.at("a"));
    }

    /** The decimal marker is the point or the comma: 22nd CGPM (2003), resolution 10 (from memory). */
    @ParameterizedTest
    @CsvSource({
        "41, OWN, 41",
        "-41.5, OWN, -41.5",
        "+.5, OWN, 0.5",
        "1e3, OWN, 1000",
        "1.5E-1, OWN, 0.15",
        "'41,5', OWN, 41.5",
        "41.5 °C, CELSIUS, 41.5",
        "41.5, CELSIUS, 41.5",
        "50%, PERCENT, 50",
        "5 Min, MINUTES, 5",
        "P1DT1S, ISO_8601, 86401",
        "1:00:01, CLOCK, 3601"
    })
    void aNumberIsReadWithItsUnit(String text, Unit unit, double number) throws UnreadableException {
        assertEquals(number, Measure.of(text, unit), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({
        "cold, OWN, the value is not a number",
        "'1,2,3', OWN, the value is not a number",
        "41 °C, OWN, 'the value is not just a number; name its unit, or cut the number out with a pattern'",
        "41 °F, CELSIUS, the value has something other than °C after its number",
        "'', OWN, the value is not a number",
        "10000000000000000000000000000000000000000, OWN, the value is not a number"
    })
    void whatIsNotANumberInItsUnitIsRefused(String text, Unit unit, String words) {
        assertEquals(
                words,
                assertThrows(UnreadableException.class, () -> Measure.of(text, unit))
                        .getMessage());
    }
}
