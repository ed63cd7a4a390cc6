package dev.lampwright.endtoend;

import dev.lampwright.testing.Mosquitto;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A folder and a broker for each test, plus everything that it starts, which is ended in reverse order. */
abstract class OwnBench {
    @TempDir
    Path folder;

    Birch birch;

    private final Deque<AutoCloseable> running = new ArrayDeque<>();

    @BeforeEach
    void startTheBroker() {
        birch = new Birch(running(Mosquitto.start()));
    }

    /** Closes something when the test ends. */
    final <T extends AutoCloseable> T running(T started) {
        running.push(started);
        return started;
    }

    @AfterEach
    void stop() throws Exception {
        while (!running.isEmpty()) {
            running.pop().close();
        }
    }
}
