package dev.lampwright.soak;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.EnumSet;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A short soak, with every kind of trouble at least once. Figures of time are printed; they decide only if the daemon alone can be to
 * blame, after subtracting the machine's own stalls.
 */
@Tag("alone")
@Timeout(600)
class SoakIT {
    private static final Duration LENGTH = Duration.ofSeconds(45);

    /** Most of the soak's light is still, and still light is sent four times a second; every trouble adds frames. */
    private static final int LEAST_FRAMES_A_SECOND = 6;

    @TempDir
    private Path folder;

    /** Two troubles at once may be these, in either order. */
    @Test
    void aControllerMayHangWhileItIsUnplugged() {
        try (MemoryEnd end = new MemoryEnd(folder)) {
            end.unplug();
            end.hang();
            end.plug();
            end.goOn();
            end.hang();
            end.unplug();
            end.goOn();
            end.plug();
            assertTrue(Files.exists(end.port()));
        }
    }

    @Test
    void nothingIsWrongWhateverGoesWrong() throws IOException {
        Summary summary = new SoakRun(new SoakRun.Settings(LENGTH, 20261125, false, folder)).run();
        System.out.print(summary.text());
        assertEquals(0, summary.violations(), summary.text());
        assertTrue(summary.troubles() >= Kind.values().length - 2, summary.text());
        assertTrue(summary.frames() > LEAST_FRAMES_A_SECOND * LENGTH.toSeconds(), summary.text());
    }

    /** Those kinds in which process, port and broker meet; the long soak makes all of them. */
    @Test
    void sevenRigsCarryOnWhateverGoesWrongWithTheEighth() throws IOException {
        Set<Kind> kinds = EnumSet.of(
                Kind.UNPLUGGED,
                Kind.CORRUPTED,
                Kind.CONTROLLER_HANGS,
                Kind.BROKER_KILLED,
                Kind.FLOODED,
                Kind.BAD_CONFIGURATION,
                Kind.CONFIGURATION_GONE);
        SoakRun.Settings settings = new SoakRun.Settings(Duration.ofSeconds(15), 20261127, false, folder);
        Summary summary = new RigsRun(settings, 8, kinds).run();
        System.out.print(summary.text());
        assertEquals(0, summary.violations(), summary.text());
        assertTrue(summary.troubles() >= kinds.size(), summary.text());
    }
}
