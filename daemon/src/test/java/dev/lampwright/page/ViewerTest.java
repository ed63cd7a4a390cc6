package dev.lampwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Await;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.Pipe;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class ViewerTest {
    private final AtomicReference<Viewer> viewer = new AtomicReference<>();

    /** A stream that accepts nothing until it is opened. */
    private static final class Gate extends OutputStream {
        private final CountDownLatch open = new CountDownLatch(1);
        private final CountDownLatch reached = new CountDownLatch(1);
        private final ByteArrayOutputStream taken = new ByteArrayOutputStream();

        @Override
        public void write(int value) throws IOException {
            write(new byte[] {(byte) value}, 0, 1);
        }

        @Override
        public void write(byte[] bytes, int from, int count) throws IOException {
            reached.countDown();
            try {
                open.await();
            } catch (InterruptedException e) {
                throw new IOException(e);
            }
            synchronized (taken) {
                taken.write(bytes, from, count);
            }
        }

        String text() {
            synchronized (taken) {
                return taken.toString(StandardCharsets.UTF_8);
            }
        }
    }

    private Thread serve(OutputStream out) {
        Thread thread = new Thread(() -> {
            viewer.set(new Viewer(out));
            try {
                viewer.get().serve();
            } catch (IOException e) {
                // The end of the thread shows it.
            }
        });
        thread.setDaemon(true);
        thread.start();
        Await.until("a viewer", () -> viewer.get() != null);
        return thread;
    }

    private void tell(Topic topic, String text) {
        viewer.get().tell(topic, text.getBytes(StandardCharsets.UTF_8));
    }

    /** What arrives while the first is being sent: of a thousand frames only the newest is sent, in the order of the topics. */
    @Test
    void aSlowViewerMissesFramesAndGetsTheNewest() throws InterruptedException {
        Gate gate = new Gate();
        Thread thread = serve(gate);
        tell(Topic.FRAME, "first;");
        gate.reached.await();
        for (int i = 0; i < 1000; i++) {
            tell(Topic.FRAME, "frame " + i + ";");
            tell(Topic.LAYOUT, "layout " + i + ";");
        }
        gate.open.countDown();
        Await.until("the newest", () -> gate.text().endsWith("frame 999;"));
        assertEquals("first;layout 999;frame 999;", gate.text());
        viewer.get().dismiss();
        thread.join(60_000);
    }

    /** A pipe is a channel, like a socket: an interrupt frees a thread that is stuck in writing to it. */
    @Test
    void whoTakesNothingIsSentAway() throws IOException, InterruptedException {
        Pipe pipe = Pipe.open();
        Thread thread = serve(Channels.newOutputStream(pipe.sink()));
        viewer.get().tell(Topic.FRAME, new byte[1 << 22]);
        Await.until("stuck in writing", () -> {
            viewer.get().dismissIfStuck(0, System.nanoTime());
            return !thread.isAlive();
        });
        assertTrue(!pipe.sink().isOpen());
    }

    @Test
    void whoIsNotStuckStays() throws InterruptedException {
        Gate gate = new Gate();
        gate.open.countDown();
        Thread thread = serve(gate);
        tell(Topic.FRAME, "first;");
        Await.until("the first", () -> gate.text().equals("first;"));
        viewer.get().dismissIfStuck(0, System.nanoTime());
        tell(Topic.FRAME, "second;");
        Await.until("the second", () -> gate.text().equals("first;second;"));
        viewer.get().dismiss();
        thread.join(60_000);
    }
}
