package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Sources: systemd.exec(5), "StateDirectory=": the variable has full paths, separated by colons; XDG Base Directory Specification 0.8:
 * {@code $XDG_STATE_HOME}, "if not set or empty, $HOME/.local/state", and paths that are not absolute are to be ignored.
 */
class StateFileTest {
    private static final Path CONFIG = Path.of("/etc/lampwright/alder.toml");
    private static final Path HOME = Path.of("/home/lamp");

    private static Path folder(Map<String, String> environment) {
        return StateFile.of(CONFIG, environment, HOME).getParent();
    }

    @Test
    void theServiceManagersFolderComesFirst() {
        assertEquals(
                Path.of("/var/lib/lampwright"),
                folder(Map.of("STATE_DIRECTORY", "/var/lib/lampwright:/var/lib/other", "XDG_STATE_HOME", "/state")));
        assertEquals(Path.of("/state/lampwright"), folder(Map.of("STATE_DIRECTORY", "", "XDG_STATE_HOME", "/state")));
        assertEquals(Path.of("/home/lamp/.local/state/lampwright"), folder(Map.of("XDG_STATE_HOME", "state")));
        assertEquals(Path.of("/home/lamp/.local/state/lampwright"), folder(Map.of()));
    }

    @Test
    void eachConfigurationHasItsOwn() {
        Path alder = StateFile.of(CONFIG, Map.of(), HOME);
        assertTrue(alder.getFileName().toString().matches("alder-[0-9a-f]{8}\\.asks\\.json"), alder.toString());
        assertEquals(alder, StateFile.of(Path.of("/etc/./lampwright/x/../alder.toml"), Map.of(), HOME));
        assertNotEquals(alder, StateFile.of(Path.of("/srv/alder.toml"), Map.of(), HOME));
        assertNotEquals(alder, StateFile.of(Path.of("/etc/lampwright/birch.toml"), Map.of(), HOME));
    }

    /** NAME_MAX of Linux is 255 bytes: limits.h. */
    @Test
    void aLongNameStillMakesAFile() {
        Path file = StateFile.of(Path.of("/etc/" + "x".repeat(250) + ".toml"), Map.of(), HOME);
        assertTrue(file.getFileName().toString().length() < 200, file.toString());
    }
}
