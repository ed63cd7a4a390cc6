package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.lampwright.config.ConfigFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CheckCommandTest {
    @TempDir
    private Path folder;

    private Path good;
    private Path bad;

    @BeforeEach
    void writeFiles() throws IOException {
        good = folder.resolve("alder.toml");
        try (InputStream in = ConfigFile.class.getResourceAsStream("example.toml")) {
            Files.copy(in, good);
        }
        bad = Files.writeString(folder.resolve("birch.toml"), """
                broker.url = "mqtt://birch"
                printer.state = { topic = "shop/birch/job", printing = ["RUN"] }
                controller.port = ""
                strip.pixles = 30
                """);
    }

    @Test
    void aGoodFileIsToldInOneLine() {
        assertEquals(
                new Run(
                        0,
                        good
                                + ": good; listens at mqtt://127.0.0.1:1883 to shop/alder/camera, shop/alder/heat, shop/alder/job,"
                                + " shop/alder/link;"
                                + " 30 pixels GRB at /dev/ttyACM0, ceiling 1500 mA;"
                                + " zones strip 0-29, bed 0-9, nozzle 10-19, job 29-20, sides 0-9 + 29-20 mirrored;"
                                + " dimmers work, glow; 11 looks, 11 cues" + System.lineSeparator(),
                        ""),
                Run.of("check", good.toString()));
    }

    @Test
    void defaultsAreTold() throws IOException {
        Files.writeString(good, Files.readString(good).replaceFirst("ceiling_mA = 1500", ""));
        Run run = Run.of("check", good.toString());
        assertTrue(run.out().endsWith("; defaults supply.ceiling_mA 500" + System.lineSeparator()), run.out());
    }

    @Test
    void aLookThatFlashesTooOftenIsRefused() throws IOException {
        Files.writeString(
                good,
                Files.readString(good) + "[looks.alert]\nlayers = [{ colour = \"olive\" },"
                        + " { colour = \"white\", rhythm = \"Iso 0.2s\" }]\n");
        Run run = Run.of("check", good.toString());
        assertEquals(
                new Run(
                        1,
                        "",
                        good + ":" + line("rhythm = \"Iso 0.2s\"")
                                + ": looks.alert.layers.1.rhythm: flashes 5 times in a second; more than three can cause"
                                + " seizures; slow it down, or make it dimmer" + System.lineSeparator()),
                run);
    }

    private long line(String text) throws IOException {
        return Files.readAllLines(good).stream()
                        .takeWhile(line -> !line.contains(text))
                        .count()
                + 1;
    }

    @Test
    void flashingThatIsAllowedIsWarnedOf() throws IOException {
        Files.writeString(
                good,
                Files.readString(good).replace("# allow_flashing", "allow_flashing")
                        + "[looks.alert]\nlayers = [{ colour = \"white\", rhythm = \"Iso 0.2s\" }]\n");
        Run run = Run.of("check", good.toString());
        assertEquals(0, run.status());
        List<String> warnings = run.err().lines().toList();
        assertEquals(2, warnings.size(), run.err());
        assertTrue(warnings.get(0).contains(": warning: guard.allow_flashing_that_can_cause_seizures: "), run.err());
        assertTrue(
                warnings.get(1).contains(": warning: looks.alert: flashes 5 times in a second, and more than three"),
                run.err());
    }

    @Test
    void statesThatLookAlikeToSomeAreWarnedOf() throws IOException {
        Files.writeString(
                good,
                Files.readString(good) + "[looks.done]\nlayers = [{ colour = \"#00ae00\" }]\n"
                        + "[looks.fault]\nlayers = [{ colour = \"red\" }]\n");
        Run run = Run.of("check", good.toString());
        assertEquals(0, run.status());
        assertEquals(
                good
                        + ": warning: looks.done, looks.fault: done and fault look alike to people without green cones (deutan);"
                        + " let them differ in shape or rhythm, not in colour alone" + System.lineSeparator(),
                run.err());
    }

    @Test
    void whatThePrinterIsNotHeardToSayIsWarnedOf() throws IOException {
        Path bare = Files.writeString(folder.resolve("rowan.toml"), """
                broker.url = "mqtt://127.0.0.1"
                printer.state = { topic = "shop/rowan/job", printing = ["RUN"] }
                controller.port = "/dev/ttyACM0"
                strip.pixels = 30
                """);
        Run run = Run.of("check", bare.toString());
        assertEquals(0, run.status(), run.err());
        assertEquals(
                String.join(
                        System.lineSeparator(),
                        bare + ": warning: printer.state.fault: is missing, so no fault will ever be shown;"
                                + " give the printer's words for one, or a printer.condition",
                        bare
                                + ": warning: printer.readings: is missing, so neither heat-up nor progress will ever be"
                                + " shown; say where the printer reports its temperatures and its progress",
                        ""),
                run.err());
        assertTrue(
                run.out()
                        .startsWith(bare + ": can be used, but NO FAULT WILL EVER BE SHOWN: 'lampwright fit " + bare
                                + "' listens for the printer's words for one; listens at "),
                run.out());
    }

    private void name(String inBroker, String more) throws IOException {
        Files.writeString(
                good,
                Files.readString(good)
                                .replaceFirst(
                                        "url = \"[^\"]*\"",
                                        "url = \"mqtts://127.0.0.1\"\nusername = \"alder\"\n" + inBroker)
                        + more);
    }

    private String warning(String key, String file, String right) {
        return good + ": warning: " + key + ": " + folder.resolve(file) + " does not exist; " + right
                + ", or correct the path";
    }

    @Test
    void filesThatAreNotThereAreWarnedOf() throws IOException {
        name(
                "password_file = \"pass\"\nca_file = \"ca.pem\"\ncertificate_file = \"own.pem\"\nkey_file = \"own.key\"\n",
                "\n[page]\ntoken_file = \"token\"\n");
        Run run = Run.of("check", good.toString());
        assertEquals(0, run.status(), run.err());
        assertEquals(
                List.of(
                        warning("broker.password_file", "pass", "write the password there"),
                        warning("broker.ca_file", "ca.pem", "put the certificates there that mqtts is to trust"),
                        warning("broker.certificate_file", "own.pem", "put the certificate there"),
                        warning("broker.key_file", "own.key", "put the certificate's key there"),
                        warning("page.token_file", "token", "write the token there")),
                run.err().lines().toList());
    }

    @Test
    void filesThatAreThereAreNotWarnedOf() throws IOException {
        name("password_file = \"pass\"\nca_file = \"ca.pem\"\n", "");
        Files.createFile(folder.resolve("pass"));
        Files.createFile(folder.resolve("ca.pem"));
        assertEquals("", Run.of("check", good.toString()).err());
    }

    @Test
    void aFolderIsNoFile() throws IOException {
        name("password_file = \"pass\"\n", "");
        Files.createDirectory(folder.resolve("pass"));
        assertEquals(
                good + ": warning: broker.password_file: " + folder.resolve("pass")
                        + " is a folder; give the path of a file" + System.lineSeparator(),
                Run.of("check", good.toString()).err());
    }

    /** They exist only while the service runs: systemd.exec(5). */
    @Test
    void credentialsAreNotWarnedOf() throws IOException {
        name("password_file = \"credential:pass\"\nca_file = \"/run/credentials/lampwright@alder.service/ca\"\n", "");
        assertEquals("", Run.of("check", good.toString()).err());
    }

    @Test
    void everyMistakeIsToldInALine() {
        Run run = Run.of("check", bad.toString());
        assertEquals(1, run.status());
        assertEquals("", run.out());
        assertEquals(
                String.join(
                        System.lineSeparator(),
                        bad + ":3: controller.port: is empty; give the serial port, for instance \"/dev/ttyACM0\"",
                        bad + ":4: strip.pixels: is missing; give a whole number from 1 to 65535",
                        bad + ":4: strip.pixles: is not known; did you mean pixels?",
                        ""),
                run.err());
    }

    @Test
    void whatNestsTooDeepIsRefusedInALine() throws IOException {
        int lines = (int) Files.readString(good).lines().count();
        Files.writeString(good, Files.readString(good) + "x=" + "[".repeat(900) + "1" + "]".repeat(900) + "\n");
        assertEquals(
                new Run(
                        1,
                        "",
                        good + ":" + (lines + 1)
                                + ": arrays, tables and dotted keys are nested more than 64 deep;"
                                + " remove brackets, braces or parts of the key" + System.lineSeparator()),
                Run.of("check", good.toString()));
    }

    @Test
    void aFileThatIsNotThere() {
        Run run = Run.of("check", folder.resolve("rowan.toml").toString());
        assertEquals(1, run.status());
        assertEquals(1, run.err().lines().count());
        assertTrue(run.err().contains("rowan.toml: there is no such file; "), run.err());
    }

    @Test
    void aGoodFileInJson() throws JsonProcessingException {
        Run run = Run.of("check", "--json", good.toString());
        assertEquals(0, run.status());
        assertEquals(1, run.out().lines().count());
        JsonNode answer = new ObjectMapper().readTree(run.out());
        assertTrue(answer.get("good").booleanValue());
        assertEquals(30, answer.get("pixels").intValue());
        assertEquals(1500, answer.get("ceiling_mA").intValue());
        assertEquals("29-20", answer.at("/zones/job").textValue());
        assertEquals("shop/alder/camera", answer.at("/topics/0").textValue());
        assertEquals("work", answer.at("/dimmers/0").textValue());
        assertEquals(0, answer.get("warnings").size());
        assertEquals("preheat", answer.at("/looks/10").textValue());
        assertEquals(11, answer.get("cues").intValue());
    }

    @Test
    void mistakesInJson() throws JsonProcessingException {
        Run run = Run.of("check", "--json", bad.toString());
        assertEquals(1, run.status());
        assertEquals("", run.err());
        JsonNode answer = new ObjectMapper().readTree(run.out());
        assertEquals(false, answer.get("good").booleanValue());
        assertEquals(3, answer.get("mistakes").size());
        assertEquals(3, answer.at("/mistakes/0/line").intValue());
        assertEquals("controller.port", answer.at("/mistakes/0/key").textValue());
        assertEquals("is empty", answer.at("/mistakes/0/what").textValue());
    }
}
