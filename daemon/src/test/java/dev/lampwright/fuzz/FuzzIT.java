package dev.lampwright.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Some attacks on every input, always the same ones. The long run is {@link Fuzz}. */
@Timeout(600)
class FuzzIT {
    private static final long SEED = 20261127;
    private static final int ATTACKS = 6;
    /** Nobody knows how busy a build machine is: light must recover, and the long run measures how soon. */
    private static final int LENIENCE = 5;

    @TempDir
    private Path folder;

    @Test
    void nothingIsWrongWhateverComesIn() throws IOException {
        FuzzRun.Summary summary = new FuzzRun(new FuzzRun.Settings(
                        Duration.ofSeconds(90), ATTACKS, SEED, Targets.ALL, 0, 12, LENIENCE, folder))
                .run();
        System.out.print(summary.text());
        assertEquals(List.of(), summary.failures(), summary.text());
        assertTrue(summary.attacks() >= Targets.ALL.size(), summary.text());
    }
}
