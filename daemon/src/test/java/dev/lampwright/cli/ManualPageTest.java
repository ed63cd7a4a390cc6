package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

class ManualPageTest {
    private final CommandLine command = Lampwright.commandLine();
    private final String page = ManualPage.of(command, "lampwright 1.2.3");

    /** man(7): a title line first, then sections, of which NAME must hold "name - what it is" for apropos(1). */
    @Test
    void beginsAsManualPagesDo() {
        assertTrue(
                page.startsWith(".TH \"LAMPWRIGHT\" 1 \"\" \"lampwright 1.2.3\"\n.SH NAME\nlampwright \\- lights "),
                page);
    }

    @Test
    void hasEveryCommandAndEveryOption() {
        for (CommandLine sub : command.getSubcommands().values()) {
            if (sub.getCommandSpec().usageMessage().hidden()) {
                continue;
            }
            assertTrue(page.contains(".SH \"" + sub.getCommandSpec().qualifiedName() + "\"\n"), sub.getCommandName());
            sub.getCommandSpec()
                    .options()
                    .forEach(option ->
                            assertTrue(page.contains(option.longestName().replace("-", "\\-")), option.longestName()));
        }
    }

    /** By man(7) a bare hyphen is a hyphen and not the minus that options have; a dot at the start would be a macro. */
    @Test
    void leavesNothingThatWouldBeTakenForAMacro() {
        for (String line : page.lines().toList()) {
            assertTrue(!line.startsWith(".") || line.matches("\\.(TH|SH|PP|TP)( .*)?"), line);
            assertTrue(line.startsWith(".") || !line.matches(".*(?<!\\\\)-.*"), line);
        }
    }

    /** RFC 1952: byte 8 is 2 for the slowest algorithm, bytes 4 to 7 are 0 where there is no time. */
    @Test
    void isZippedAsPackagesWantIt() throws IOException {
        byte[] zipped = PackageDocs.zipped(page);
        assertEquals(2, zipped[8]);
        assertEquals(0, zipped[4] | zipped[5] | zipped[6] | zipped[7]);
        try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(zipped))) {
            assertEquals(page, new String(in.readAllBytes(), StandardCharsets.UTF_8));
        }
    }
}
