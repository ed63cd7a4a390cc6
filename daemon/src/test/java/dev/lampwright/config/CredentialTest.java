package dev.lampwright.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.toml.Toml;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** {@code password_file = "credential:NAME"}, by systemd.exec(5): a file of that name in {@code $CREDENTIALS_DIRECTORY}. */
class CredentialTest {
    private static final Path FOLDER = Path.of("/etc/lampwright");
    private static final Map<String, String> SERVICE = Map.of("CREDENTIALS_DIRECTORY", "/run/credentials/x.service");

    private final Mistakes findings = new Mistakes(Origins.of(new Origin("alder.toml", Toml.read(""), FOLDER)));

    private Optional<Path> read(String text, Map<String, String> environment) {
        return BrokerSection.passwordFile(Table.root(Map.of("password_file", text), findings), environment);
    }

    @Test
    void aCredentialIsInTheFolderThatTheServiceManagerNames() {
        assertEquals(
                Optional.of(Path.of("/run/credentials/x.service/broker-password")),
                read("credential:broker-password", SERVICE));
    }

    @Test
    void withoutAServiceManagerItIsWhereThePackagesServiceHasIt() {
        assertEquals(
                Optional.of(Path.of("/run/credentials/lampwright.service/broker-password")),
                read("credential:broker-password", Map.of()));
    }

    @Test
    void anythingElseIsAPath() {
        assertEquals(Optional.of(Path.of("/etc/lampwright/password")), read("password", SERVICE));
        assertEquals(Optional.of(Path.of("/srv/password")), read("/srv/password", SERVICE));
    }

    @Test
    void aCredentialIsKnownByItsFolder() {
        assertTrue(Credentials.isOne(read("credential:x", Map.of()).orElseThrow(), Map.of()));
        Map<String, String> elsewhere = Map.of("CREDENTIALS_DIRECTORY", "/srv/handed");
        assertTrue(Credentials.isOne(read("credential:x", elsewhere).orElseThrow(), elsewhere));
        assertFalse(Credentials.isOne(Path.of("/srv/handed/x"), Map.of()));
        assertFalse(Credentials.isOne(Path.of("/srv/handed-not/x"), elsewhere));
    }

    @Test
    void aNameThatLeadsElsewhereIsAMistake() {
        for (String name : new String[] {"", "../shadow", "a/b"}) {
            read("credential:" + name, SERVICE);
            ConfigException e = assertThrows(ConfigException.class, findings::throwIfMistaken);
            assertTrue(e.mistakes().get(0).toString().contains("has no name that a credential can have"));
        }
    }
}
