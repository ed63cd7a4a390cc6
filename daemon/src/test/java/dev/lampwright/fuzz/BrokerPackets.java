package dev.lampwright.fuzz;

import static dev.lampwright.broker.FakeBroker.framed;

import dev.lampwright.broker.FakeBroker.Peer;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.List;
import java.util.SplittableRandom;

/** A broker that cooperates for a while and then sends packets that MQTT does not define. */
final class BrokerPackets implements Target {
    private static final int MOST_PACKETS = 6;
    private static final int FLOOD = 300;
    private static final int MOST_SHOWN = 40;

    @Override
    public String name() {
        return "broker";
    }

    @Override
    public int mostSteps() {
        return 4;
    }

    @Override
    public Step step(SplittableRandom chance) {
        int honest = chance.nextInt(4);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        StringBuilder line = new StringBuilder(
                "after " + List.of("nothing", "CONNACK", "SUBACK", "SUBACK").get(honest));
        for (int i = chance.nextInt(MOST_PACKETS); i >= 0; i--) {
            byte[] packet = packet(chance);
            int times = chance.nextInt(20) == 0 ? FLOOD : 1;
            line.append(times > 1 ? ", " + times + " times " : ", ").append(hex(packet));
            for (int n = 0; n < times; n++) {
                bytes.writeBytes(packet);
            }
        }
        boolean hangsUp = chance.nextBoolean();
        boolean inPieces = chance.nextInt(4) == 0 && bytes.size() < 2000;
        line.append(inPieces ? ", byte by byte" : "").append(hangsUp ? ", and hangs up" : ", and is silent");
        byte[] all = bytes.toByteArray();
        return Step.of(line.toString(), rig -> {
            rig.hub().lie(peer -> lie(peer, honest, all, inPieces, hangsUp));
            rig.pass(200);
        });
    }

    private static void lie(Peer peer, int honest, byte[] bytes, boolean inPieces, boolean hangsUp) throws IOException {
        if (honest > 0) {
            peer.connack(0);
        }
        if (honest > 1) {
            subscribe(peer);
        }
        if (inPieces) {
            for (byte one : bytes) {
                peer.send(one);
            }
        } else {
            peer.send(bytes);
        }
        if (!hangsUp) {
            peer.silence();
        }
    }

    /** Answers the SUBSCRIBE, whatever was published before it. */
    private static void subscribe(Peer peer) throws IOException {
        byte[] body = peer.packet();
        while (peer.type() != 8) {
            body = peer.packet();
        }
        peer.suback(body);
    }

    private static byte[] packet(SplittableRandom chance) {
        return switch (chance.nextInt(10)) {
            case 0 -> Oddities.bytes(chance, 60);
            case 1 -> framed(chance.nextInt(256), Oddities.bytes(chance, 30));
            case 2 -> publish(chance.nextInt(16), Oddities.bytes(chance, 12), chance);
            case 3 -> publish(chance.nextInt(16), Oddities.text(chance).getBytes(StandardCharsets.UTF_8), chance);
            case 4 ->
                publish(
                        chance.nextInt(16),
                        Oddities.pick(House.TOPICS, chance).getBytes(StandardCharsets.UTF_8),
                        chance);
            case 5 -> new byte[] {(byte) chance.nextInt(256), (byte) 0xFF, (byte) 0xFF, (byte) 0xFF, 0x7F};
            case 6 -> new byte[] {0x30, (byte) 0x80, (byte) 0x80, (byte) 0x80, (byte) 0x80, 1, 0};
            case 7 ->
                framed(
                        Oddities.pick(List.of(0x20, 0x40, 0x50, 0x62, 0x70, 0x90, 0xB0, 0xD0), chance),
                        Oddities.bytes(chance, 4));
            case 8 -> framed(Oddities.pick(List.of(0xE0, 0xC0, 0x10, 0x82, 0xF0, 0x00), chance), new byte[0]);
            default -> publish(0, House.JOB.getBytes(StandardCharsets.UTF_8), chance);
        };
    }

    private static byte[] publish(int flags, byte[] topic, SplittableRandom chance) {
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        int said = chance.nextInt(8) == 0 ? chance.nextInt(65_536) : topic.length;
        body.write(said >> 8);
        body.write(said);
        body.writeBytes(topic);
        if ((flags & 0x6) != 0) {
            body.write(0);
            body.write(chance.nextInt(3));
        }
        body.writeBytes(Oddities.bytes(chance, 20));
        return framed(0x30 | flags, body.toByteArray());
    }

    private static String hex(byte[] bytes) {
        String hex = HexFormat.of().formatHex(bytes, 0, Math.min(MOST_SHOWN, bytes.length));
        return bytes.length > MOST_SHOWN ? hex + "... (" + bytes.length + " bytes)" : hex;
    }
}
