package dev.lampwright.broker;

import static dev.lampwright.testing.Bounds.assertAtMost;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.util.Random;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.internal.wire.MqttWireMessage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * MQTT 3.1.1, section 1.5.3 (from memory): U+0000 and surrogates must not be in text; control characters and noncharacters should not be,
 * and a receiver may accept them.
 */
final class PahoTextTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "shop/🔥/room",
                "shop/\uD83D\uDD25",
                "\u0001\u001f\u007f\u0085",
                "\uFDD0\uFFFE\uFFFF",
                "shop/\u2764\uFE0F/room",
                "\uFF53\uFF48\uFF4F\uFF50/room",
                "\uFEFFshop",
                "\uE0F1",
                "\uE0F1\uE800\uE801",
                "\uDBFF\uDFFF"
            })
    void isLetThroughByPahoAndReadBack(String text) throws IOException, MqttException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        new DataOutputStream(bytes).writeUTF(PahoText.of(text));
        String taken = MqttWireMessage.decodeUTF8(new DataInputStream(new ByteArrayInputStream(bytes.toByteArray())));
        assertEquals(text, PahoText.plain(taken));
    }

    /** Every character that MQTT allows, one after the other: none breaks the connection. */
    @Test
    void everyCharacterIsLetThroughByPaho() throws IOException, MqttException {
        for (int point = 1; point <= Character.MAX_CODE_POINT; point++) {
            if (point < Character.MIN_SURROGATE || point > Character.MAX_SURROGATE) {
                isLetThroughByPahoAndReadBack(Character.toString(point));
            }
        }
    }

    @Test
    void readsBackWhatItWroteAndReadsAnything() {
        Random random = new Random(5);
        for (int i = 0; i < 20_000; i++) {
            String text = text(random);
            assertEquals(text, PahoText.plain(PahoText.of(text)));
            assertDoesNotThrow(() -> PahoText.plain(text + "\uE0F1" + text));
        }
    }

    /** Code points of every plane, with those that matter here more often. */
    private static String text(Random random) {
        int[] often = {0xE0F1, 0xE800, 0xEFFF, 1, 0x7F, 0x85, 0xFDD0, 0xFFFE, 0xFFFF, 0x1F525, 0x10FFFF, 'a', '/'};
        int[] points = random.ints(random.nextInt(12), 0, Character.MAX_CODE_POINT + 1)
                .map(point -> random.nextBoolean() ? often[point % often.length] : point)
                .filter(point -> point < Character.MIN_SURROGATE || point > Character.MAX_SURROGATE)
                .toArray();
        return new String(points, 0, points.length);
    }

    @Test
    void keepsATopicWithinWhatMqttAllows() {
        assertArrayEquals(PahoText.TOO_LONG.getBytes(UTF_8), PahoText.topic("🔥".repeat(16_000)));
        assertAtMost(65_535, PahoText.topic("🔥".repeat(7_000)).length);
        assertEquals("🔥".repeat(7_000), PahoText.plain(new String(PahoText.topic("🔥".repeat(7_000)), UTF_8)));
    }

    @Test
    void leavesAPasswordAloneThatPahoTakes() {
        char[] password = "drowsy otter".toCharArray();
        assertSame(password, PahoText.of(password));
        assertEquals("🔑 otter", PahoText.plain(String.valueOf(PahoText.of("🔑 otter".toCharArray()))));
    }
}
