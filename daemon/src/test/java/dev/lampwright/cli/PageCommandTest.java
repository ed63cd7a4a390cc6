package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.page.FirstToken;
import dev.lampwright.page.PageAddress;
import dev.lampwright.page.QrReading;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
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

    private Run guarded(String lines, String... options) throws IOException {
        Files.writeString(folder.resolve("page-token"), "correct-horse-battery-staple\n");
        Files.writeString(folder.resolve("view-token"), "only-to-have-a-look-at-it\n");
        Files.writeString(folder.resolve("edit-token"), "for-those-who-change-looks\n");
        return page("[page]\naddress = \"192.168.1.7\"\ntoken_file = \"page-token\"\n" + lines, options);
    }

    /** What the code says, between the only address and the only line after it. */
    private static String code(Run run) {
        List<String> lines = run.out().lines().toList();
        return QrReading.ofLines(lines.subList(1, lines.size() - 1));
    }

    @Test
    void addressAndTokenArePrintedAsACode() throws IOException {
        Run run = guarded("");
        assertEquals(0, run.status(), run.err());
        List<String> lines = run.out().lines().toList();
        assertEquals("http://192.168.1.7:61117/", lines.get(0));
        assertEquals(
                "The code carries the token. Whoever reads it can open the page and change the light.",
                lines.get(lines.size() - 1));
        assertEquals("http://192.168.1.7:61117/#correct-horse-battery-staple", code(run));
        assertFalse(run.out().contains("correct-horse"), "it is not to be read over a shoulder");
    }

    @Test
    void theCodeMayCarryTheWeakerToken() throws IOException {
        Run run = guarded("view_token_file = \"view-token\"\n", "--watch");
        assertEquals("http://192.168.1.7:61117/#only-to-have-a-look-at-it", code(run), run.err());
        Run none = guarded("", "--watch");
        assertEquals(1, none.status());
        assertTrue(none.err().contains("page.view_token_file is missing"), none.err());
    }

    @Test
    void theCodeMayCarryTheStrongerToken() throws IOException {
        Run run = guarded("edit_token_file = \"edit-token\"\n", "--edit");
        assertEquals("http://192.168.1.7:61117/#for-those-who-change-looks", code(run), run.err());
        assertTrue(
                run.out()
                        .lines()
                        .toList()
                        .contains(
                                "The code carries the token. Whoever reads it can open the page, change the light and the looks, and fit."));
        assertTrue(guarded("", "--edit").err().contains("page.edit_token_file is missing"));
        assertEquals(2, guarded("", "--edit", "--watch").status());
    }

    private Run first() {
        StringWriter out = new StringWriter();
        try {
            new FirstCode(Map.of("STATE_DIRECTORY", folder.toString())).print(folder, false, new PrintWriter(out));
            return new Run(0, out.toString(), "");
        } catch (IOException e) {
            return new Run(1, out.toString(), e.getMessage());
        }
    }

    /** This computer needs an address that others can reach, as it does for a page. */
    @Test
    void withoutAConfigurationTheCodeIsThatOfTheFirstFitting() throws IOException {
        assertEquals(
                folder + ": there is no configuration, and no token for the first fitting in "
                        + folder.resolve("first-token")
                        + "; run sudo systemctl restart lampwright, and see journalctl -u lampwright",
                first().err());
        FirstToken token = FirstToken.make(folder, 4000);
        List<String> addresses = PageAddress.ofFirst(4000);
        Run run = first();
        if (addresses.isEmpty()) {
            assertTrue(run.err().startsWith("this computer has no address that others can reach"), run.err());
            return;
        }
        List<String> lines = run.out().lines().toList();
        assertEquals(addresses, lines.subList(0, addresses.size()), run.err());
        assertEquals(
                token.after(addresses.get(0)), QrReading.ofLines(lines.subList(addresses.size(), lines.size() - 2)));
        assertTrue(lines.get(lines.size() - 2).startsWith("To fit the lights, point the camera of a phone"));
        assertTrue(lines.get(lines.size() - 1).endsWith("sudo head -n 1 " + folder.resolve("first-token")));
        assertFalse(run.out().contains(token.after("").substring(1)), "it is not to be read over a shoulder");
    }

    @Test
    void aFolderWithoutAConfigurationIsLookedForInTheService() throws IOException {
        Path none = Files.createDirectory(folder.resolve("none"));
        Run run = Run.of("page", none.toString());
        assertTrue(run.status() == 0 || run.err().startsWith(none + ": there is no configuration"), run.err());
        Run file = Run.of("page", none.resolve("alder.toml").toString());
        assertEquals(1, file.status());
        assertFalse(file.err().contains("first fitting"), file.err());
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
