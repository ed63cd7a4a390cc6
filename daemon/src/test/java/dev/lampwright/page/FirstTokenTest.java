package dev.lampwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The token of the first fitting, in its file. */
class FirstTokenTest {
    private static final int PORT = 61_117;

    @TempDir
    private Path folder;

    private Path file() {
        return FirstToken.in(folder);
    }

    private static String text(FirstToken token) {
        return token.after("");
    }

    @Test
    void itIsRandomAndOnlyItsUserMayReadIt() throws IOException {
        FirstToken token = FirstToken.make(folder, PORT);
        assertTrue(text(token).matches("#[0-9a-f]{32}"), "128 bits");
        assertEquals(text(token).substring(1) + "\n61117\n", Files.readString(file()));
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file())));
        assertEquals(1, folder.toFile().list().length, "nothing is left beside it");
        FirstToken.forget(folder);
        assertEquals(Optional.empty(), FirstToken.find(folder));
        assertNotEquals(text(token), text(FirstToken.make(folder, PORT)));
    }

    /** So a code that was printed before a restart still opens the page. */
    @Test
    void itIsMadeOnce() throws IOException {
        FirstToken token = FirstToken.make(folder, PORT);
        assertEquals(text(token), text(FirstToken.make(folder, PORT)));
        FirstToken moved = FirstToken.make(folder, 4000);
        assertEquals(text(token), text(moved));
        FirstToken found = FirstToken.find(folder).orElseThrow();
        assertEquals(4000, found.port());
        assertEquals(text(token), text(found));
        assertEquals("http://192.0.2.7:4000/" + text(token), found.after("http://192.0.2.7:4000/"));
    }

    @Test
    void aLinkInItsPlaceIsRefused() throws IOException {
        Path target = Files.writeString(folder.resolve("other"), "0123456789abcdef0123456789abcdef\n61117\n");
        Files.setPosixFilePermissions(target, PosixFilePermissions.fromString("rw-------"));
        Files.createSymbolicLink(file(), target);
        for (IOException refused : new IOException[] {
            assertThrows(IOException.class, () -> FirstToken.make(folder, PORT)),
            assertThrows(IOException.class, () -> FirstToken.find(folder))
        }) {
            assertEquals(file() + ": is not a file; delete it and restart the service", refused.getMessage());
        }
        assertTrue(Files.isSymbolicLink(file()));
        assertTrue(Files.exists(target, LinkOption.NOFOLLOW_LINKS));
        Files.delete(file());
        Files.createDirectory(file());
        assertThrows(IOException.class, () -> FirstToken.make(folder, PORT));
    }

    @Test
    void whatOthersCouldReadIsReplaced() throws IOException {
        FirstToken known = FirstToken.make(folder, PORT);
        Files.setPosixFilePermissions(file(), PosixFilePermissions.fromString("rw-r-----"));
        assertNotEquals(text(known), text(FirstToken.make(folder, PORT)));
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file())));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "\n",
                "guess\n61117\n",
                "0123456789abcdef0123456789abcdef\n",
                "0123456789abcdef0123456789abcdef\nport\n",
                "0123456789ABCDEF0123456789ABCDEF\n61117\n"
            })
    void whatHasAnotherFormIsReplaced(String content) throws IOException {
        Files.writeString(file(), content);
        Files.setPosixFilePermissions(file(), PosixFilePermissions.fromString("rw-------"));
        assertEquals(Optional.empty(), FirstToken.find(folder));
        FirstToken.make(folder, PORT);
        assertTrue(FirstToken.find(folder).isPresent());
    }

    @Test
    void withoutAFolderThereIsNone() throws IOException {
        Path nowhere = folder.resolve("nowhere");
        assertEquals(Optional.empty(), FirstToken.find(nowhere));
        IOException refused = assertThrows(IOException.class, () -> FirstToken.make(nowhere, PORT));
        assertTrue(refused.getMessage().startsWith(FirstToken.in(nowhere) + ": "), refused.getMessage());
        FirstToken.forget(nowhere);
    }
}
