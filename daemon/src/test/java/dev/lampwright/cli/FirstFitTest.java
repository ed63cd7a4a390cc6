package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.page.FirstToken;
import dev.lampwright.testing.CapturedLog;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which file runs, and which one the page writes. */
class FirstFitTest {
    @TempDir
    private Path folder;

    @Test
    void aFileThatExistsComesFirst() throws IOException {
        Path given = Files.writeString(folder.resolve("alder.toml"), "");
        assertEquals(given, FirstFit.file(given, Map.of("STATE_DIRECTORY", "/var/lib/lampwright")));
    }

    @Test
    void onlyAServiceOffersItToOtherComputers() throws IOException {
        assertEquals(Optional.empty(), FirstFit.token(Map.of(), 61117));
        Map<String, String> service = Map.of("STATE_DIRECTORY", folder.toString());
        FirstToken token = FirstFit.token(service, 61117).orElseThrow();
        assertEquals(
                token.after(""), FirstFit.token(service, 61117).orElseThrow().after(""), "it is made once");
        FirstFit.forgetToken(service);
        assertEquals(Optional.empty(), FirstToken.find(folder));
        FirstFit.forgetToken(service);
        FirstFit.forgetToken(Map.of());
    }

    @Test
    void whereNothingCanBeKeptItStaysOnThisComputer() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "");
        try (CapturedLog log = new CapturedLog("dev.lampwright.cli")) {
            assertEquals(Optional.empty(), FirstFit.token(Map.of("STATE_DIRECTORY", file.toString()), 61117));
            assertTrue(
                    log.lines().get(0).startsWith("WARN the fitting is for browsers on this computer alone: " + file),
                    () -> log.lines().toString());
        }
    }

    @Test
    void aServiceWritesWhereItMay() {
        Path given = folder.resolve("alder.toml");
        assertEquals(
                Path.of("/var/lib/lampwright/alder.toml"),
                FirstFit.file(given, Map.of("STATE_DIRECTORY", "/var/lib/lampwright:/var/lib/other")));
        assertEquals(given, FirstFit.file(given, Map.of()));
    }
}
