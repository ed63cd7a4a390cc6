package dev.lampwright.protocol;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Properties over seeded random input: the same cases on every run. */
class MessageReaderTest {
    private static final int TRIALS = 200_000;

    private final SplittableRandom chance = new SplittableRandom(20_261_125);
    private final MessageWriter writer = new MessageWriter(1000);

    @Test
    void anyBodyComesBackWhateverThePiecesItComesIn() {
        for (int trial = 0; trial < 3000; trial++) {
            Recorder.Copy sent = someMessage(1000);
            byte[] wire = wire(sent);
            MessageReader reader = new MessageReader(2048);
            Recorder heard = new Recorder();
            int at = 0;
            while (at < wire.length) {
                int piece = Math.min(wire.length - at, 1 + chance.nextInt(40));
                reader.accept(wire, at, piece, heard);
                at += piece;
            }
            assertEquals(List.of(sent), heard.messages);
            assertTrue(heard.broken.isEmpty());
        }
    }

    @Test
    void anyCutIsInStepAtTheNextZero() {
        for (int trial = 0; trial < 3000; trial++) {
            byte[] torn = wire(someMessage(300));
            Recorder.Copy whole = someMessage(300);
            byte[] rest = Arrays.copyOfRange(torn, 1 + chance.nextInt(torn.length - 1), torn.length);
            Recorder heard = Recorder.of(joined(rest, wire(whole)));
            assertEquals(whole, heard.messages.get(heard.messages.size() - 1));
        }
    }

    /**
     * One trouble in a packet: never an exception, in step at the next zero, and a wrong message no more often than a 16-bit
     * checksum lets through at worst, which is once in 65 536. The bound is three times that.
     */
    @Test
    void anyTroubleCostsNoMoreThanItsOwnPacket() {
        int wrong = 0;
        for (int trial = 0; trial < TRIALS; trial++) {
            Recorder.Copy hit = someMessage(60);
            Recorder.Copy next = someMessage(20);
            Recorder heard = Recorder.of(joined(troubled(wire(hit)), new byte[1], wire(next)));
            List<Recorder.Copy> before = new ArrayList<>(heard.messages);
            assertEquals(next, before.remove(before.size() - 1));
            before.remove(hit);
            wrong += before.size();
        }
        assertTrue(wrong <= 3 * TRIALS / 65_536, wrong + " wrong messages in " + TRIALS);
    }

    @Test
    void garbageIsNeverAnExceptionNorAMessageBeyondChance() {
        int accepted = 0;
        int packets = 0;
        for (int trial = 0; trial < 2000; trial++) {
            byte[] garbage = new byte[1000];
            for (int i = 0; i < garbage.length; i++) {
                garbage[i] = (byte) (chance.nextInt(20) == 0 ? 0 : chance.nextInt(256));
            }
            Recorder heard = Recorder.of(garbage);
            accepted += heard.messages.size();
            packets += heard.messages.size() + heard.broken.size();
        }
        assertTrue(packets > 50_000);
        assertTrue(accepted <= 3 * packets / 65_536 + 1, accepted + " accepted of " + packets);
    }

    @Test
    void aPacketTooLongIsBrokenAndTheNextIsRead() {
        byte[] tooLong = wire(new Recorder.Copy(1, 1, "11".repeat(100)));
        byte[] next = wire(new Recorder.Copy(2, 2, "22"));
        Recorder heard = new Recorder();
        byte[] stream = joined(tooLong, next);
        new MessageReader(103).accept(stream, 0, stream.length, heard);
        assertEquals(List.of(tooLong.length - 1), heard.broken);
        assertEquals(List.of(new Recorder.Copy(2, 2, "22")), heard.messages);
    }

    /** wire.md, section 3: an overrun spoils the packet that it hit, whatever the checksum says. */
    @Test
    void aPacketThatLostBytesIsBrokenAndTheNextIsRead() {
        Recorder.Copy whole = new Recorder.Copy(2, 2, "22");
        byte[] wire = wire(whole);
        for (int lostAt = 0; lostAt < wire.length; lostAt++) {
            MessageReader reader = new MessageReader(100);
            Recorder heard = new Recorder();
            reader.accept(wire, 0, lostAt, heard);
            reader.spoil();
            reader.accept(wire, lostAt, wire.length - lostAt, heard);
            reader.accept(wire, 0, wire.length, heard);
            assertEquals(List.of(wire.length - 1), heard.broken, "lost before byte " + lostAt);
            assertEquals(List.of(whole), heard.messages, "lost before byte " + lostAt);
        }
    }

    @Test
    void allOfAPacketButItsZeroMayBeLost() {
        MessageReader reader = new MessageReader(100);
        Recorder heard = new Recorder();
        reader.spoil();
        reader.accept(new byte[2], 0, 2, heard);
        assertEquals(List.of(0), heard.broken);
    }

    @Test
    void aPacketTooLongIsToldApartFromABrokenOne() {
        byte[] whole = wire(new Recorder.Copy(1, 1, "11".repeat(46)));
        byte[] tooLong = wire(new Recorder.Copy(1, 1, "11".repeat(47)));
        byte[] torn = {5, 1, 1, 0};
        List<String> heard = new ArrayList<>();
        MessageReader.Handler handler = new MessageReader.Handler() {
            @Override
            public void message(Message message) {
                heard.add("message of " + message.bodyLength());
            }

            @Override
            public void broken(int bytes) {
                heard.add("broken " + bytes);
            }

            @Override
            public void tooLong(int bytes) {
                heard.add("too long " + bytes);
            }
        };
        byte[] stream = joined(joined(whole, tooLong), torn);
        new MessageReader(50).accept(stream, 0, stream.length, handler);
        assertEquals(List.of("message of 46", "too long " + (tooLong.length - 1), "broken 3"), heard);
    }

    @Test
    void emptyPacketsAreSkipped() {
        Recorder heard = Recorder.of(new byte[50]);
        assertTrue(heard.messages.isEmpty());
        assertTrue(heard.broken.isEmpty());
    }

    private byte[] troubled(byte[] wire) {
        int at = chance.nextInt(wire.length);
        return switch (chance.nextInt(4)) {
            case 0 -> {
                byte[] flipped = wire.clone();
                flipped[at] ^= (byte) (1 << chance.nextInt(8));
                yield flipped;
            }
            case 1 -> joined(Arrays.copyOf(wire, at + 1), Arrays.copyOfRange(wire, at, wire.length));
            case 2 -> joined(Arrays.copyOf(wire, at), Arrays.copyOfRange(wire, at + 1, wire.length));
            default -> {
                byte[] other = wire.clone();
                other[at] = (byte) chance.nextInt(256);
                yield other;
            }
        };
    }

    private Recorder.Copy someMessage(int mostBody) {
        byte[] body = new byte[chance.nextInt(mostBody + 1)];
        boolean zeros = chance.nextBoolean();
        for (int i = 0; i < body.length; i++) {
            body[i] = (byte) (zeros && chance.nextBoolean() ? 0 : chance.nextInt(256));
        }
        return Recorder.Copy.of(1 + chance.nextInt(4), chance.nextInt(256), body);
    }

    private byte[] wire(Recorder.Copy message) {
        byte[] body = Vectors.HEX.parseHex(message.body());
        writer.begin(MessageType.of(message.type()), message.sequence()).bytes(body, 0, body.length);
        return Recorder.wire(writer, writer.finish());
    }

    private static byte[] joined(byte[]... pieces) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        for (byte[] piece : pieces) {
            all.writeBytes(piece);
        }
        return all.toByteArray();
    }
}
