package dev.lampwright.testing;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.ProcessBuilder.Redirect;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** A service manager's end of sd_notify(3): a datagram socket of {@code socat}, of the Debian package of that name. */
public final class NotifyReceiver implements AutoCloseable {
    private final String name;
    private final Process socat;
    private final List<String> lines = new CopyOnWriteArrayList<>();
    private final Thread thread = new Thread(this::listen, "service manager");

    /**
     * Opens one and waits until it exists.
     *
     * @param name for {@code NOTIFY_SOCKET}: a path, or {@code @} and a name
     */
    public NotifyReceiver(String name) {
        this.name = name;
        String address = name.startsWith("@") ? "ABSTRACT-RECV:" + name.substring(1) : "UNIX-RECV:" + name;
        try {
            socat = new ProcessBuilder("socat", "-u", address, "STDOUT")
                    .redirectError(Redirect.INHERIT)
                    .start();
        } catch (IOException e) {
            throw new UncheckedIOException("socat does not start: install the Debian package socat", e);
        }
        thread.setDaemon(true);
        thread.start();
        Await.until("the socket " + name, this::isThere);
    }

    private boolean isThere() {
        try {
            return Files.readAllLines(Path.of("/proc/net/unix")).stream().anyMatch(line -> line.endsWith(" " + name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void listen() {
        try (BufferedReader reader = socat.inputReader(StandardCharsets.UTF_8)) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                lines.add(line);
            }
        } catch (IOException e) {
            lines.add("broke off: " + e);
        }
    }

    /** Its name, for {@code NOTIFY_SOCKET}. */
    public String name() {
        return name;
    }

    /** All lines so far. */
    public List<String> lines() {
        return List.copyOf(lines);
    }

    /**
     * Waits for a line, 20 s at most.
     *
     * @param from index of the first line to check
     * @param start its beginning
     * @return the index after it
     */
    public int await(int from, String start) {
        Await.until(() -> start + " in " + lines, () -> index(from, start) >= 0, Await.LONG);
        return index(from, start) + 1;
    }

    private int index(int from, String start) {
        List<String> now = lines();
        for (int i = from; i < now.size(); i++) {
            if (now.get(i).startsWith(start)) {
                return i;
            }
        }
        return -1;
    }

    @Override
    public void close() {
        socat.destroy();
        try {
            socat.waitFor();
            thread.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
