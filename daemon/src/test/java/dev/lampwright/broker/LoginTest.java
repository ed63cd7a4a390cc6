package dev.lampwright.broker;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.NamedPipe;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class LoginTest {
    @TempDir
    Path folder;

    private static Broker broker(Optional<String> username, Optional<Path> passwordFile) {
        return new Broker(URI.create("mqtt://127.0.0.1"), Optional.empty(), username, passwordFile);
    }

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("password"), text);
    }

    @Test
    void readsTheFirstLineAnewEachTime() throws Exception {
        Broker broker = broker(Optional.of("lamp"), Optional.of(file("sésame \r\nsecond line")));
        assertEquals(Optional.of("lamp"), Login.of(broker).username());
        assertArrayEquals("sésame ".toCharArray(), Login.of(broker).password().orElseThrow());
        file("other");
        assertArrayEquals("other".toCharArray(), Login.of(broker).password().orElseThrow());
    }

    @Test
    void needsNeitherNameNorPassword() throws Exception {
        Login login = Login.of(broker(Optional.empty(), Optional.empty()));
        assertTrue(login.username().isEmpty());
        assertTrue(login.password().isEmpty());
    }

    @Test
    void aPasswordWithoutANameIsRefused() throws Exception {
        Broker broker = broker(Optional.empty(), Optional.of(file("sesame")));
        assertTrue(complaint(broker).contains("without username"));
    }

    @Test
    void saysWhatIsWrongWithTheFileAndNotWhatIsInIt() throws Exception {
        Path missing = folder.resolve("missing");
        assertEquals(
                "password_file " + missing + " does not exist; write the password there",
                complaint(broker(Optional.of("lamp"), Optional.of(missing))));
        Path empty = file("\nsesame");
        assertEquals(
                "password_file " + empty + " has no first line; write the password there",
                complaint(broker(Optional.of("lamp"), Optional.of(empty))));
        Path folderItself = folder;
        assertTrue(complaint(broker(Optional.of("lamp"), Optional.of(folderItself)))
                .contains("cannot be read"));
    }

    private static String complaint(Broker broker) {
        return assertThrows(BrokerException.class, () -> Login.of(broker)).getMessage();
    }

    @Test
    void aPipeIsNotWaitedFor() {
        Path pipe = NamedPipe.at(folder.resolve("pipe"));
        Broker broker = broker(Optional.of("lamp"), Optional.of(pipe));
        assertTimeoutPreemptively(Duration.ofSeconds(20), () -> {
            String password =
                    assertThrows(BrokerException.class, () -> Login.of(broker)).getMessage();
            assertTrue(password.contains("is a pipe or a device, not a file"), password);
            assertThrows(BrokerException.class, () -> new PemFile("ca_file", pipe).certificates());
        });
    }
}
