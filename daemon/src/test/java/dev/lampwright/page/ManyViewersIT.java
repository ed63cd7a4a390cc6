package dev.lampwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.engine.FrameLoop;
import dev.lampwright.testing.Await;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Two dozen watch at once, and a few more who read nothing. Frames continue; how late they are is printed, and decides nothing. */
@Timeout(180)
class ManyViewersIT {
    private static final int VIEWERS = 24;
    private static final int STUCK = 4;
    private static final int FRAMES = 600;
    private static final int STRIP = 300;

    @Test
    void framesGoOnWhileTwoDozenWatch() throws IOException {
        try (PageRig rig = new PageRig("pixels = " + STRIP, "port = 0")) {
            String alone = lateness(rig, "nobody watches");
            List<Watcher> watchers = new ArrayList<>();
            List<Socket> stuck = new ArrayList<>();
            for (int i = 0; i < STUCK; i++) {
                stuck.add(takesNothing(rig));
            }
            for (int i = 0; i < VIEWERS; i++) {
                watchers.add(rig.watch());
            }
            watchers.forEach(watcher -> watcher.await("frame"));
            String watched = lateness(rig, VIEWERS + " watch, and " + STUCK + " take nothing");
            Await.until(
                    "everybody has seen many frames",
                    () -> watchers.stream().allMatch(watcher -> watcher.count("frame") >= 60));
            watchers.forEach(watcher -> assertEquals(
                    STRIP * 4, watcher.await("frame").get("strip").asText().length()));
            System.out.println(alone);
            System.out.println(watched);
            watchers.forEach(Watcher::close);
            for (Socket socket : stuck) {
                socket.close();
            }
        }
    }

    /** Requests the stream and never reads more than its beginning. */
    private static Socket takesNothing(PageRig rig) throws IOException {
        Socket socket = new Socket();
        socket.setReceiveBufferSize(1024);
        socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), rig.port()));
        socket.getOutputStream()
                .write("GET /events HTTP/1.1\r\nHost: localhost\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
        InputStream in = socket.getInputStream();
        assertTrue(new String(in.readNBytes(12), StandardCharsets.US_ASCII).endsWith("200"));
        return socket;
    }

    private static String lateness(PageRig rig, String when) {
        FrameLoop frames = rig.daemon().frames();
        long before = frames.snapshot().frames();
        long skipped = frames.snapshot().skipped();
        long start = System.nanoTime();
        Await.until(
                "frames go on", Duration.ofMinutes(1), () -> frames.snapshot().frames() >= before + FRAMES);
        double seconds = (System.nanoTime() - start) / (double) TimeUnit.SECONDS.toNanos(1);
        return String.format(
                Locale.ROOT,
                "%s: %.1f frames a second, %d left out; since the start late by %.0f µs (half), %.0f µs (99 %%), %.0f µs (99.9 %%)",
                when,
                FRAMES / seconds,
                frames.snapshot().skipped() - skipped,
                frames.lateness().microsAt(0.5),
                frames.lateness().microsAt(0.99),
                frames.lateness().microsAt(0.999));
    }
}
