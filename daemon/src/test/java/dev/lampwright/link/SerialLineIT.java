package dev.lampwright.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fazecast.jSerialComm.SerialPort;
import dev.lampwright.protocol.Message;
import dev.lampwright.protocol.MessageReader;
import dev.lampwright.protocol.MessageType;
import dev.lampwright.protocol.MessageWriter;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Child;
import dev.lampwright.testing.Faults;
import dev.lampwright.testing.PtyController;
import java.lang.reflect.Field;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The serial port against a real device node: a pseudo-terminal of the kernel. */
@Timeout(60)
class SerialLineIT {
    private static final int BAUD = 500_000;

    @TempDir
    Path directory;

    private PtyController pty;
    private SerialLine line;

    @BeforeEach
    void plugIn() {
        pty = PtyController.pluggedIn(directory);
        line = new SerialLine(pty.port().toString(), BAUD);
    }

    @AfterEach
    void unplug() {
        line.close();
        pty.close();
    }

    /** Sends HELLO and returns the sequence numbers of the answers within the next second, until there are {@code wanted}. */
    private List<Integer> hello(int sequence) throws LineException {
        MessageWriter writer = new MessageWriter(8);
        int count = writer.begin(MessageType.HELLO, sequence)
                .u8(Message.WIRE_VERSION)
                .finish();
        line.write(writer.wire(), count);
        List<Integer> answers = new ArrayList<>();
        MessageReader reader = new MessageReader(2048);
        byte[] heard = new byte[512];
        long started = System.nanoTime();
        while (answers.isEmpty()
                && System.nanoTime() - started < Duration.ofSeconds(5).toNanos()) {
            reader.accept(heard, 0, line.read(heard, 100), new MessageReader.Handler() {
                @Override
                public void message(Message message) {
                    answers.add(message.sequence());
                }

                @Override
                public void broken(int bytes) {
                    answers.add(-bytes);
                }
            });
        }
        return answers;
    }

    @Test
    void twoHundredExchanges() throws LineException {
        line.open();
        for (int i = 0; i < 200; i++) {
            assertEquals(List.of(i), hello(i));
        }
    }

    /** What the kernel says about the port, through {@code stty} of the GNU core utilities. */
    @Test
    void setsEightDataBitsNoParityOneStopBitNoFlowControlAndTheBaud() throws Exception {
        for (int baud : new int[] {9600, 115_200, 500_000, 1_000_000}) {
            SerialLine other = new SerialLine(pty.port().toString(), baud);
            other.open();
            String settings = Child.run(List.of("stty", "-a", "-F", pty.port().toString()))
                    .output();
            other.close();
            assertTrue(settings.startsWith("speed " + baud + " baud"), settings);
            for (String setting : List.of(
                    "cs8",
                    "-parenb",
                    "-cstopb",
                    "-crtscts",
                    "-ixon",
                    "-ixoff",
                    "-icanon",
                    "-echo",
                    "-opost",
                    "-icrnl")) {
                assertTrue(settings.contains(" " + setting) || settings.contains("\n" + setting), settings);
            }
        }
    }

    @Test
    void opensAtABaudThatHasNoNameOfItsOwn() throws LineException {
        SerialLine other = new SerialLine(pty.port().toString(), 250_000);
        other.open();
        other.close();
    }

    @Test
    void readWithoutTimeoutDoesNotWait() throws LineException {
        line.open();
        assertEquals(0, line.read(new byte[8], 0));
    }

    @Test
    void writesMoreThanTheKernelTakesAtOnce() throws LineException {
        line.open();
        byte[] zeros = new byte[300_000];
        line.write(zeros, zeros.length);
        assertEquals(List.of(9), hello(9));
    }

    @Test
    void aPortThatTakesNothingEndsTheWriteInAboutASecond() throws LineException {
        line.open();
        pty.freeze();
        byte[] zeros = new byte[1 << 20];
        LineException e = assertThrows(LineException.class, () -> line.write(zeros, zeros.length));
        assertTrue(e.getMessage().contains("accepted no bytes for a second"), e.getMessage());
        pty.thaw();
        line.close();
        line.open();
        Await.until("an answer", () -> {
            try {
                return hello(3).contains(3);
            } catch (LineException gone) {
                throw new AssertionError(gone);
            }
        });
    }

    @Test
    void anUnpluggedPortIsNoticedInReadAndWrite() throws LineException {
        line.open();
        pty.unplug();
        assertTrue(assertThrows(LineException.class, () -> line.read(new byte[8], 100))
                .getMessage()
                .contains("has disappeared"));
        assertTrue(assertThrows(LineException.class, () -> line.write(new byte[8], 8))
                .getMessage()
                .contains("has disappeared"));
        line.close();
        assertTrue(assertThrows(LineException.class, line::open).getMessage().startsWith("no port " + pty.port()));
    }

    @Test
    void threadsDoNotPileUpOverTwentyReplugs() throws LineException {
        line.open();
        assertEquals(List.of(0), hello(0));
        int threads = liveThreads();
        for (int i = 1; i <= 20; i++) {
            pty.unplug();
            line.close();
            pty.plug();
            line.open();
            assertEquals(List.of(i), hello(i));
        }
        Await.until("as many threads as before", () -> liveThreads() <= threads);
    }

    /** The library never forgets a hook; it keeps them where only it can see them. */
    @Test
    void theLibraryKeepsOneHookForAllLines() throws Exception {
        for (int i = 0; i < 20; i++) {
            SerialLine other = new SerialLine(pty.port().toString(), BAUD);
            other.open();
            other.close();
        }
        Field hooks = SerialPort.class.getDeclaredField("shutdownHooks");
        hooks.setAccessible(true);
        assertEquals(1, ((List<?>) hooks.get(null)).size());
    }

    @Test
    void anotherProgramsPortIsLeftToIt() throws Exception {
        Process other = new ProcessBuilder("flock", pty.port().toRealPath().toString(), "sleep", "60").start();
        try {
            Await.until("the other program's lock", () -> {
                try {
                    line.open();
                    line.close();
                    return false;
                } catch (LineException e) {
                    return e.getMessage().contains("in use by another program");
                }
            });
        } finally {
            other.descendants().forEach(ProcessHandle::destroy);
            other.destroy();
        }
    }

    @Test
    void aFileIsNoSerialPort() throws Exception {
        Path file = Files.writeString(directory.resolve("file"), "text");
        LineException e = assertThrows(LineException.class, new SerialLine(file.toString(), BAUD)::open);
        assertTrue(e.getMessage().contains("is not a serial port"), e.getMessage());
        assertEquals("text", Files.readString(file));
    }

    @Test
    void silenceIsNoTrouble() throws LineException {
        pty.toHost(Faults.silence());
        line.open();
        assertEquals(0, line.read(new byte[8], 250));
        pty.toHost(Faults.none());
        assertEquals(List.of(2), hello(2));
    }

    private static int liveThreads() {
        return Thread.activeCount();
    }
}
