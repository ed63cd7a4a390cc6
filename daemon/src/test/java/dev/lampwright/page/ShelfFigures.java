package dev.lampwright.page;

import com.sun.management.ThreadMXBean;
import dev.lampwright.testing.FreePort;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.IntStream;

/**
 * The cost of the shelf with many rigs while one viewer watches it and all light moves: bytes per second, and the processor share of the
 * threads that serve it, beside a bare thread that writes as much. Prints a line for each number of rigs. In {@code daemon} after {@code mvn package}:
 * {@code java -XX:TieredStopAtLevel=1 -Xmx256m -cp target/test-classes:target/lampwright.jar dev.lampwright.page.ShelfFigures 1 64}.
 */
final class ShelfFigures {
    private static final int PIXELS = 300;
    private static final int SECONDS = 10;
    private static final int PICTURES_PER_SECOND = 20;
    private static final String STREAM = "page [0-9]+";
    private static final String PAGES = "page rig[0-9]+";
    private static final String MOVING =
            "[looks.silent]\nlayers = [{ paint = \"ramp\", colours = [\"red\", \"lime\", \"blue\"],"
                    + " cycle_s = 3 }]\n";

    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

    private ShelfFigures() {}

    public static void main(String[] args) throws IOException, InterruptedException {
        for (int rigs : args.length == 0 ? new int[] {1, 64} : ints(args)) {
            measure(rigs);
        }
        System.exit(0);
    }

    private static int[] ints(String[] args) {
        return Arrays.stream(args).mapToInt(Integer::parseInt).toArray();
    }

    private static void measure(int rigs) throws IOException, InterruptedException {
        List<String> names =
                IntStream.rangeClosed(1, rigs).mapToObj(i -> "rig" + i).toList();
        URI nobody = URI.create("mqtt://127.0.0.1:" + FreePort.find());
        AtomicLong bytes = new AtomicLong();
        try (ShelfRig rig = new ShelfRig(nobody, PIXELS, MOVING, names)) {
            HttpRequest events =
                    HttpRequest.newBuilder(URI.create(rig.url() + "events")).build();
            InputStream stream = HttpClient.newHttpClient()
                    .send(events, BodyHandlers.ofInputStream())
                    .body();
            Thread reader = new Thread(() -> read(stream, bytes), "reader");
            reader.setDaemon(true);
            reader.start();
            Thread.sleep(8000);
            long before = bytes.get();
            long shelf = nanos("shelf");
            long writing = nanos(STREAM);
            long pages = nanos(PAGES);
            Thread.sleep(1000L * SECONDS);
            long sent = bytes.get() - before;
            System.out.printf(
                    "%d rigs of %d pixels, all moving: %.1f kB/s to the viewer; thread shelf %.2f %%, its stream %.2f %% of a core;"
                            + " the rigs' own pages, which nobody watches, %.2f %%;"
                            + " a bare thread that writes as much to a socket %.2f %%%n",
                    rigs,
                    PIXELS,
                    sent / 1e3 / SECONDS,
                    (nanos("shelf") - shelf) / 1e7 / SECONDS,
                    (nanos(STREAM) - writing) / 1e7 / SECONDS,
                    (nanos(PAGES) - pages) / 1e7 / SECONDS,
                    bareWriter((int) (sent / SECONDS / PICTURES_PER_SECOND)));
        }
    }

    /** What it takes only to wake up as often and to write as many bytes, beside the same rigs, in percent of a core. */
    private static double bareWriter(int bytes) throws IOException, InterruptedException {
        try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
                Socket far = new Socket(server.getInetAddress(), server.getLocalPort());
                Socket near = server.accept()) {
            Thread reader = new Thread(() -> read(far), "bare reader");
            reader.setDaemon(true);
            reader.start();
            Thread writer = new Thread(() -> write(near, new byte[bytes]), "bare writer");
            writer.start();
            TimeUnit.SECONDS.sleep(2);
            long before = nanos("bare writer");
            TimeUnit.SECONDS.sleep(SECONDS);
            double share = (nanos("bare writer") - before) / 1e7 / SECONDS;
            writer.interrupt();
            writer.join();
            return share;
        }
    }

    private static void write(Socket socket, byte[] picture) {
        try {
            while (!Thread.currentThread().isInterrupted()) {
                socket.getOutputStream().write(picture);
                LockSupport.parkNanos(TimeUnit.SECONDS.toNanos(1) / PICTURES_PER_SECOND);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void read(Socket socket) {
        try {
            read(socket.getInputStream(), new AtomicLong());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void read(InputStream stream, AtomicLong bytes) {
        byte[] buffer = new byte[1 << 16];
        try {
            for (int count = stream.read(buffer); count >= 0; count = stream.read(buffer)) {
                bytes.addAndGet(count);
            }
        } catch (IOException e) {
            // The server is gone.
        }
    }

    /** Processor time of all threads whose name matches an expression. */
    private static long nanos(String name) {
        return Thread.getAllStackTraces().keySet().stream()
                .filter(thread -> thread.getName().matches(name))
                .mapToLong(thread -> THREADS.getThreadCpuTime(thread.getId()))
                .filter(nanos -> nanos > 0)
                .sum();
    }
}
