package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
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
        return StateFile.of(CONFIG, environment, HOME, StateFile.ASKS).getParent();
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
        Path alder = StateFile.of(CONFIG, Map.of(), HOME, StateFile.ASKS);
        assertTrue(alder.getFileName().toString().matches("alder-[0-9a-f]{8}\\.asks\\.json"), alder.toString());
        assertEquals(alder, StateFile.of(Path.of("/etc/./lampwright/x/../alder.toml"), Map.of(), HOME, StateFile.ASKS));
        assertNotEquals(alder, StateFile.of(Path.of("/srv/alder.toml"), Map.of(), HOME, StateFile.ASKS));
        assertNotEquals(alder, StateFile.of(Path.of("/etc/lampwright/birch.toml"), Map.of(), HOME, StateFile.ASKS));
    }

    /** NAME_MAX of Linux is 255 bytes: limits.h. */
    @Test
    void aLongNameStillMakesAFile() {
        Path file = StateFile.of(Path.of("/etc/" + "x".repeat(250) + ".toml"), Map.of(), HOME, StateFile.ASKS);
        assertTrue(file.getFileName().toString().length() < 200, file.toString());
    }

    /** Whoever asks for a service's history has a different environment than the service. */
    @Test
    void theHistoryOfTheServiceIsLookedForToo() {
        List<Path> places = StateFile.histories(CONFIG, Map.of(), HOME);
        Map<String, String> ofTheService = Map.of("STATE_DIRECTORY", "/var/lib/lampwright");
        assertEquals(
                List.of(
                        StateFile.of(CONFIG, Map.of(), HOME, StateFile.HISTORY),
                        StateFile.of(CONFIG, ofTheService, HOME, StateFile.HISTORY)),
                places);
        assertEquals(1, StateFile.histories(CONFIG, ofTheService, HOME).size());
        assertTrue(StateFile.isGiven(ofTheService));
        assertFalse(StateFile.isGiven(Map.of("STATE_DIRECTORY", "")));
    }
}
