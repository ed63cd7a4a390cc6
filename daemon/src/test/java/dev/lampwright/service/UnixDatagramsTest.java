package dev.lampwright.service;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.lampwright.testing.CapturedLog;
import dev.lampwright.testing.NotifyReceiver;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Against a real datagram socket. */
@Timeout(60)
class UnixDatagramsTest {
    @TempDir
    private Path folder;

    @Test
    void reachesASocketThatIsAFile() throws IOException {
        reaches(folder.resolve("notify").toString());
    }

    @Test
    void reachesASocketInTheAbstractNamespace() throws IOException {
        reaches("@lampwright-test-" + ProcessHandle.current().pid());
    }

    private static void reaches(String name) throws IOException {
        try (NotifyReceiver manager = new NotifyReceiver(name);
                UnixDatagrams datagrams = UnixDatagrams.to(name)) {
            datagrams.send("READY=1\nSTATUS=60 °C\n");
            manager.await(0, "STATUS=");
            assertEquals(List.of("READY=1", "STATUS=60 °C"), manager.lines());
        }
    }

    @Test
    void complainsOnceOfAManagerThatIsGone() throws IOException {
        try (CapturedLog log = new CapturedLog(Notifier.class.getName());
                Notifier notifier =
                        new Notifier(UnixDatagrams.to(folder.resolve("gone").toString()))) {
            notifier.alive();
            notifier.alive();
            assertEquals(1, log.lines().size(), log.lines().toString());
        }
    }

    /** By unix(7): the family, then the path; in the abstract namespace the path begins with a zero byte. On a little-endian machine. */
    @Test
    void writesTheAddressOfUnix7() throws IOException {
        assertArrayEquals(new byte[] {1, 0, '/', 'n'}, UnixDatagrams.address("/n"));
        assertArrayEquals(new byte[] {1, 0, 0, 'n'}, UnixDatagrams.address("@n"));
    }

    @Test
    void refusesWhatIsNoName() {
        for (String name : List.of("", "@", "relative", "vsock:2:1", "/" + "n".repeat(107))) {
            assertThrows(IOException.class, () -> UnixDatagrams.address(name), name);
        }
    }
}
