package dev.lampwright.endtoend;

import dev.lampwright.testing.Mosquitto;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.io.TempDir;

/** Tests that share one bench, set up before the first of them. Before each, the printer is idle, and the strip shows it. */
@TestInstance(Lifecycle.PER_CLASS)
abstract class SharedBench {
    private final List<String> lines;

    /** What the tests work on. */
    Bench bench;

    /** Its printer. */
    Birch birch;

    /**
     * Sets up nothing yet.
     *
     * @param lines additional lines of the configuration, as in {@link Bench}
     */
    SharedBench(List<String> lines) {
        this.lines = List.copyOf(lines);
    }

    @BeforeAll
    void start(@TempDir Path folder) {
        bench = new Bench(folder, Mosquitto.start(), lines);
        birch = bench.birch();
        bench.awaitPicture(Birch.silent());
    }

    @AfterAll
    void stop() {
        bench.close();
    }

    @BeforeEach
    void beIdle() {
        birch.tellJob(Birch.IDLE, 0);
        bench.awaitPicture(Birch.still(Birch.IDLE));
        bench.controller().recording().clear();
    }
}
