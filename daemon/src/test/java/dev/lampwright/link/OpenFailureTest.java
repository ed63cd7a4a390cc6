package dev.lampwright.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Error numbers of Linux: {@code asm-generic/errno-base.h} (from memory), and one of the serial library's own. */
class OpenFailureTest {
    private static final Path NOWHERE = Path.of("/nowhere/ttyACM0");

    @ParameterizedTest
    @CsvSource({
        "1, no permission to open ttyACM0: run",
        "13, no permission to open ttyACM0: run",
        "16, ttyACM0 is in use by another program",
        "11, ttyACM0 is in use by another program",
        "2, ttyACM0 is still being closed",
        "6, ttyACM0 has no device behind it",
        "19, ttyACM0 has no device behind it",
        "25, ttyACM0 is not a serial port: ",
        "5, ttyACM0 does not open at 500000 baud (error 5)"
    })
    void eachErrorHasItsWords(int errno, String beginning) {
        String words = OpenFailure.of("ttyACM0", NOWHERE, errno, 500_000).english();
        assertTrue(words.startsWith(beginning), words);
    }

    /** A user who may not open a port joins the group that may; if the group may not either, the usual one. */
    @Test
    void namesTheGroupOfThePortIfItMayUseIt(@TempDir Path folder) throws IOException {
        Path node = Files.createFile(folder.resolve("node"));
        String own =
                Files.readAttributes(node, PosixFileAttributes.class).group().getName();
        Files.setPosixFilePermissions(node, PosixFilePermissions.fromString("rw-rw----"));
        assertEquals(own, OpenFailure.group(node));
        for (String none : new String[] {"rw-r-----", "rw--w----", "rw-------"}) {
            Files.setPosixFilePermissions(node, PosixFilePermissions.fromString(none));
            assertEquals("dialout", OpenFailure.group(node), none);
        }
        assertEquals("dialout", OpenFailure.group(NOWHERE));
    }
}
