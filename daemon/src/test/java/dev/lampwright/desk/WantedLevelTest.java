package dev.lampwright.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.DoubleNode;
import com.fasterxml.jackson.databind.node.TextNode;
import dev.lampwright.json.Json;
import java.math.BigDecimal;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers are compared with {@link BigDecimal}, which does not depend on how they are read. */
class WantedLevelTest {
    private static double share(JsonNode node) {
        WantedLevel level = WantedLevel.of(node).orElseThrow();
        assertEquals(WantedLevel.Kind.SHARE, level.kind());
        return level.share();
    }

    private static double share(String text) {
        return share(TextNode.valueOf(text));
    }

    @Property
    void aShareIsTheSameHoweverItIsWritten(@ForAll @IntRange(max = 1_000_000_000) int billionths) {
        BigDecimal exact = BigDecimal.valueOf(billionths, 9);
        String percent = exact.movePointRight(2).stripTrailingZeros().toPlainString();
        assertEquals(exact.doubleValue(), share(DoubleNode.valueOf(exact.doubleValue())));
        assertEquals(exact.doubleValue(), share(exact.toPlainString()));
        for (String sign : new String[] {"%", " %", "\u00a0%", "\u202f%"}) {
            assertEquals(exact.doubleValue(), share(percent + sign), percent + sign);
        }
    }

    @Property
    void aNumberOutsideIsNoLevel(@ForAll double number) {
        Optional<WantedLevel> level = WantedLevel.of(DoubleNode.valueOf(number));
        assertEquals(number >= 0 && number <= 1, level.isPresent());
        level.ifPresent(one -> assertEquals(0.0 + number, one.share()));
    }

    @Property
    void aPercentageOutsideIsNoLevel(@ForAll @IntRange(min = 101, max = 9999) int percent) {
        assertFalse(WantedLevel.of(TextNode.valueOf(percent + "%")).isPresent());
        assertFalse(WantedLevel.of(TextNode.valueOf("-" + percent + " %")).isPresent());
    }

    @Provide
    Arbitrary<String> nearly() {
        return Arbitraries.strings()
                .withChars("0123456789.,%+-eE onfauxt\u00a0\u0000")
                .ofMaxLength(12);
    }

    @Property
    void whateverIsWrittenIsALevelOrNone(@ForAll @From("nearly") String text) {
        WantedLevel.of(TextNode.valueOf(text))
                .filter(level -> level.kind() == WantedLevel.Kind.SHARE)
                .ifPresent(level -> assertTrue(level.share() >= 0 && level.share() <= 1, text));
    }

    @ParameterizedTest
    @CsvSource({"on, ON", "On, ON", "AUTO, AUTO", "off, SHARE", "' OFF ', SHARE", "'100 %', SHARE", "0, SHARE"})
    void words(String text, WantedLevel.Kind kind) {
        assertEquals(kind, WantedLevel.of(TextNode.valueOf(text)).orElseThrow().kind());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "true",
                "null",
                "[0.5]",
                "{}",
                "\"\"",
                "\"0,4\"",
                "\"1e-1\"",
                "\"+1\"",
                "\".5\"",
                "\"40  %\"",
                "\"%\"",
                "\"٤%\""
            })
    void noLevels(String json) {
        assertFalse(WantedLevel.of(Json.read(json).orElseThrow()).isPresent());
    }
}
