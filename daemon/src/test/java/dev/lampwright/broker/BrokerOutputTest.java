package dev.lampwright.broker;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.eclipse.paho.client.mqttv3.internal.wire.MqttConnect;
import org.eclipse.paho.client.mqttv3.internal.wire.MqttPublish;
import org.eclipse.paho.client.mqttv3.internal.wire.MqttSubscribe;
import org.eclipse.paho.client.mqttv3.internal.wire.MqttWireMessage;
import org.junit.jupiter.api.Test;

/** Packets as Paho writes them, against the same packets laid out by hand after MQTT 3.1.1, sections 3.1, 3.3 and 3.8. */
final class BrokerOutputTest {
    private static final String FIRE = "shop/🔥";

    private static byte[] bytes(Object... parts) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        for (Object part : parts) {
            if (part instanceof Integer one) {
                all.write(one);
            } else {
                byte[] text = part.toString().getBytes(UTF_8);
                all.write(text.length >> 8);
                all.write(text.length);
                all.writeBytes(text);
            }
        }
        return all.toByteArray();
    }

    private static byte[] sent(int atOnce, MqttWireMessage... messages) throws IOException, MqttException {
        ByteArrayOutputStream network = new ByteArrayOutputStream();
        try (BrokerOutput output = new BrokerOutput(network)) {
            for (MqttWireMessage message : messages) {
                ByteArrayOutputStream packet = new ByteArrayOutputStream();
                packet.writeBytes(message.getHeader());
                packet.writeBytes(message.getPayload());
                byte[] whole = packet.toByteArray();
                for (int at = 0; at < whole.length; at += atOnce) {
                    output.write(whole, at, Math.min(atOnce, whole.length - at));
                }
            }
        }
        return network.toByteArray();
    }

    @Test
    void writesTheTopicOfAMessageAndLeavesItsPayload() throws IOException, MqttException {
        byte[] payload = PahoText.of(FIRE).getBytes(UTF_8);
        byte[] expected = bytes(0x30, 2 + FIRE.getBytes(UTF_8).length + payload.length, FIRE);
        byte[] sent = sent(3, new MqttPublish(PahoText.of(FIRE), message(payload)));
        assertArrayEquals(expected, Arrays.copyOf(sent, expected.length));
        assertArrayEquals(payload, Arrays.copyOfRange(sent, expected.length, sent.length));
    }

    private static MqttMessage message(byte[] payload) {
        MqttMessage message = new MqttMessage(payload);
        message.setQos(0);
        return message;
    }

    @Test
    void writesEachFilterOfASubscription() throws IOException, MqttException {
        MqttSubscribe subscribe = new MqttSubscribe(new String[] {"a", PahoText.of(FIRE), "b/+"}, new int[] {1, 1, 1});
        subscribe.setMessageId(258);
        int size = 2 + 4 + 2 + FIRE.getBytes(UTF_8).length + 1 + 6;
        assertArrayEquals(bytes(0x82, size, 1, 2, "a", 1, FIRE, 1, "b/+", 1), sent(1, subscribe));
    }

    @Test
    void writesAllTextOfAConnect() throws IOException, MqttException {
        MqttConnect connect = new MqttConnect(
                "lamp",
                4,
                true,
                60,
                PahoText.of("🔑"),
                PahoText.of("🔒".toCharArray()),
                message(bytes(7, 8)),
                PahoText.of(FIRE));
        byte[] expected =
                bytes(0x10, 10 + 6 + 11 + 4 + 6 + 6, "MQTT", 4, 0xC6, 0, 60, "lamp", FIRE, 0, 2, 7, 8, "🔑", "🔒");
        assertArrayEquals(expected, sent(Integer.MAX_VALUE, connect));
    }

    @Test
    void passesSeveralPacketsOnInTheirOrder() throws IOException, MqttException {
        MqttPublish one = new MqttPublish("a", message(bytes(1)));
        MqttPublish two = new MqttPublish(PahoText.of("🔥"), message(new byte[300]));
        byte[] sent = sent(100, one, two);
        assertArrayEquals(bytes(0x30, 4, "a", 1, 0x30, 0xB2, 2, "🔥"), Arrays.copyOf(sent, 6 + 9));
        assertEquals(6 + 3 + 306, sent.length);
    }
}
