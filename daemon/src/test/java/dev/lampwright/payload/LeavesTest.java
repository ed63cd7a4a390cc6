package dev.lampwright.payload;

import static dev.lampwright.testing.Bounds.assertAtMost;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Alder;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LeavesTest {
    private static List<Leaf> leaves(String payload) {
        return Leaves.of(Alder.bytes(payload)).list();
    }

    private static List<String> told(String payload) {
        return leaves(payload).stream()
                .map(leaf -> new Source("t", leaf.path(), leaf.cuts()).place() + " = " + leaf.text())
                .toList();
    }

    /** RFC 6901, section 5: the pointers to the single values of its document. */
    @Test
    void pointsAsRfc6901Says() {
        String document = "{\"foo\": [\"bar\", \"baz\"], \"\": 0, \"a/b\": 1, \"c%d\": 2, \"e^f\": 3, \"g|h\": 4,"
                + " \"i\\\\j\": 5, \"k\\\"l\": 6, \" \": 7, \"m~n\": 8}";
        assertEquals(
                List.of(
                        "/foo/0 = bar",
                        "/foo/1 = baz",
                        "/ = 0",
                        "/a~1b = 1",
                        "/c%d = 2",
                        "/e^f = 3",
                        "/g|h = 4",
                        "/i\\j = 5",
                        "/k\"l = 6",
                        "/  = 7",
                        "/m~0n = 8"),
                told(document));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "41.5 | 41.5 | OWN",
                "41,5 | 41.5 | OWN",
                "41.5 °C | 41.5 | CELSIUS",
                "106 °F | 106 | FAHRENHEIT",
                "42% | 42 | PERCENT",
                "12 min | 12 | MINUTES",
                "PT1M30S | 90 | ISO_8601",
                "0:01:30 | 90 | CLOCK",
                "true | NaN | OWN",
                "RUN 3 | NaN | OWN",
            })
    void readsNumbersWithTheirUnit(String payload, double number, Unit unit) {
        Leaf leaf = leaves(payload).get(0);
        assertEquals(PayloadPath.BARE, leaf.path());
        assertEquals(number, leaf.number());
        assertEquals(unit, leaf.unit());
        assertEquals(number, leaves("{\"a\": \"" + payload + "\"}").get(0).number());
    }

    @Test
    void aLineOfValuesIsItsFields() {
        assertEquals(
                List.of(
                        "the payload itself, field 1 = RUN",
                        "the payload itself, field 2 = 41.5",
                        "the payload itself, field 3 = 60"),
                told("RUN;41.5;60\r\n"));
    }

    @Test
    void aLineOfNumbersWithDecimalCommasIsItsFields() {
        List<Leaf> leaves = leaves("41,5;60");
        assertEquals(List.of(41.5, 60.0), leaves.stream().map(Leaf::number).toList());
    }

    @Test
    void aTextIsItselfAndItsNumbersByTheWordsBefore() {
        List<Leaf> leaves = leaves("bed 41.5 of 60, tip: -3/215 C");
        assertEquals(
                List.of("bed 41.5 of 60, tip: -3/215 C", "41.5", "60", "-3", "215"),
                leaves.stream().map(Leaf::text).toList());
        assertEquals(List.of("tip", "", "2"), leaves.get(4).names());
    }

    /** What is suggested for a text can be bound, and yields the number. */
    @Test
    void whatIsCutOutIsWhatIsTold() throws UnreadableException {
        byte[] payload = Alder.bytes("bed 41.5 of 60, tip: -3/215 C");
        for (Leaf leaf : Leaves.of(payload).list()) {
            assertEquals(
                    leaf.text(),
                    new Payload(payload)
                            .at(new Source("t", leaf.path(), leaf.cuts()))
                            .flatMap(Value::word)
                            .orElseThrow());
        }
    }

    /** The value with a name in a text, by the last of its names. */
    private static List<String> named(String text) {
        return leaves(text).stream()
                .skip(1)
                .map(leaf -> String.join(" ", leaf.names()).strip() + " = " + leaf.text())
                .toList();
    }

    /** 22nd CGPM (2003), resolution 10: the decimal marker is the point or the comma; from memory. */
    @Test
    void numbersInATextMayHaveADecimalComma() {
        assertEquals(List.of("bed  1 = 41,5", "bed  2 = 60,0"), named("bed 41,5 (60,0) °C"));
    }

    /** The word before a number is enough only if it occurs once. */
    @Test
    void aWordThatComesAgainIsToldApartByTheOneFurtherBefore() {
        String text = "<plate now=\"41.5\" set=\"60\"/><tip now=\"190\" set=\"215\" mode=\"RUN\"/>";
        assertEquals(
                List.of(
                        "plate now  1 = 41.5",
                        "plate set  1 = 60",
                        "tip now  1 = 190",
                        "tip set  1 = 215",
                        "mode = RUN"),
                named(text));
    }

    @Test
    void aShortWordBetweenTwoNumbersIsNoName() {
        assertEquals(List.of("ply  1 = 12", "ply od 2 = 84"), named("ply 12 od 84"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"41.5 °C of 60 °C | 41.5 | 60 | CELSIUS", "12 % / 84 % | 12 | 84 | PERCENT", "3/84 | 3 | 84 | OWN"
            })
    void twoNumbersMayEachHaveTheirUnit(String payload, double one, double other, Unit unit) {
        List<Leaf> couple = leaves(payload).stream().filter(Leaf::numeric).toList();
        assertEquals(List.of(one, other), couple.stream().map(Leaf::number).toList());
        assertEquals(List.of(unit, unit), couple.stream().map(Leaf::unit).toList());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "share=345‰ t=1 | PERMILLE | 345",
                "bed=333.2K t=1 | KELVIN | 333.2",
                "about 12 min 05 s to go | PARTS | 725"
            })
    void aNumberInATextHasTheUnitBehindIt(String payload, Unit unit, double number) {
        assertEquals(
                List.of(number),
                leaves(payload).stream()
                        .filter(leaf -> leaf.unit() == unit)
                        .map(Leaf::number)
                        .toList());
    }

    @Test
    void aTableHasWordsToo() {
        assertTrue(leaves("bed;41.5;60\nstate;RUN").stream()
                .anyMatch(leaf -> leaf.text().equals("RUN") && leaf.names().equals(List.of("state"))));
    }

    @Test
    void wordsAloneHaveNoNumbersToBind() {
        assertEquals(1, leaves("PREHEAT").size());
        assertEquals(1, leaves("").size());
    }

    @Test
    void listsNameTheirElements() {
        assertEquals(
                List.of("parts", "bed", "0", "t"),
                leaves("{\"parts\":[{\"name\":\"bed\",\"t\":41}]}").get(1).names());
        assertEquals(
                List.of("tip", "0", "1"), leaves("[[\"tip\",180,215]]").get(1).names());
    }

    @Test
    void takesNoMoreThanItsBounds() {
        assertEquals(Leaves.MOST, leaves("[" + "1,".repeat(10_000) + "1]").size());
        assertFalse(Leaves.of(Alder.bytes("[" + "1,".repeat(10_000) + "1]")).complete());
        assertFalse(Leaves.of(new byte[Leaves.MOST_BYTES + 1]).complete());
        assertEquals(0, leaves("{\"" + "k".repeat(5000) + "\": 1}").size());
        assertTrue(leaves("x".repeat(5000)).get(0).text().length() <= 120);
    }

    @Test
    void noBytesMakeItThrow() {
        Random random = new Random(4);
        String alphabet = "{}[]\":,;0123456789.-+eE abcT=/%°\\\u0000\n|\t";
        for (int i = 0; i < 30_000; i++) {
            StringBuilder text = new StringBuilder();
            for (int length = random.nextInt(60); length > 0; length--) {
                text.append(alphabet.charAt(random.nextInt(alphabet.length())));
            }
            assertAtMost(Leaves.MOST, leaves(text.toString()).size());
        }
    }
}
