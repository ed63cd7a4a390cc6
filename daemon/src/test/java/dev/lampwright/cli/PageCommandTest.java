package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.page.QrReading;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PageCommandTest {
    private static final String FILE = """
            broker.url = "mqtt://alder"
            printer.state = { topic = "shop/alder/job", printing = ["RUN"] }
            controller.port = "/dev/ttyACM0"
            strip.pixels = 60
            """;

    @TempDir
    private Path folder;

    private Run page(String lines, String... options) throws IOException {
        Path file = Files.writeString(folder.resolve("alder.toml"), FILE + lines);
        return Run.of(Stream.concat(Stream.of("page", file.toString()), Stream.of(options))
                .toArray(String[]::new));
    }

    @Test
    void addressAndTokenArePrintedAsACode() throws IOException {
        Files.writeString(folder.resolve("page-token"), "correct-horse-battery-staple\n");
        Run run = page("[page]\naddress = \"192.168.1.7\"\ntoken_file = \"page-token\"\n");
        assertEquals(0, run.status(), run.err());
        List<String> lines = run.out().lines().toList();
        assertEquals("http://192.168.1.7:61117/", lines.get(0));
        assertEquals(
                "The code carries the token. Whoever reads it can open the page and change the light.",
                lines.get(lines.size() - 1));
        assertEquals(
                "http://192.168.1.7:61117/#correct-horse-battery-staple",
                QrReading.ofLines(lines.subList(1, lines.size() - 1)));
        assertFalse(run.out().contains("correct-horse"), "it is not to be read over a shoulder");
    }

    @Test
    void theCodeMayCarryTheWeakerToken() throws IOException {
        Files.writeString(folder.resolve("page-token"), "correct-horse-battery-staple\n");
        Files.writeString(folder.resolve("view-token"), "only-to-have-a-look-at-it\n");
        String lines = "[page]\naddress = \"192.168.1.7\"\ntoken_file = \"page-token\"\n";
        Run run = page(lines + "view_token_file = \"view-token\"\n", "--watch");
        List<String> out = run.out().lines().toList();
        assertEquals(
                "http://192.168.1.7:61117/#only-to-have-a-look-at-it",
                QrReading.ofLines(out.subList(1, out.size() - 1)),
                run.err());
        Run none = page(lines, "--watch");
        assertEquals(1, none.status());
        assertTrue(none.err().contains("page.view_token_file is missing"), none.err());
    }

    @Test
    void aPageOfThisMachineAloneHasNoCode() throws IOException {
        assertEquals("""
                http://127.0.0.1:61117/
                Only this machine can reach it. For a phone, set page.address and page.token_file.
                """, page("[page]\n").out());
    }

    @Test
    void whatHasNoAddressIsToldSo() throws IOException {
        Run none = page("");
        assertEquals(1, none.status());
        assertTrue(none.err().endsWith("alder.toml has no section [page]; add one, even an empty one\n"), none.err());
        Run anyPort = page("[page]\nport = 0\n");
        assertEquals(1, anyPort.status());
        assertTrue(
                anyPort.err().endsWith("page.port is 0, so the port changes with every start; the log has it\n"),
                anyPort.err());
        Run noToken = page("[page]\naddress = \"192.168.1.7\"\ntoken_file = \"nowhere\"\n");
        assertEquals(1, noToken.status());
        assertTrue(
                noToken.err().contains("page.token_file " + folder.resolve("nowhere") + " does not exist"),
                noToken.err());
    }
}
