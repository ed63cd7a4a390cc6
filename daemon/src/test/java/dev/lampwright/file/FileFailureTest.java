package dev.lampwright.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;

class FileFailureTest {
    @TempDir
    private Path folder;

    private static String written(Path file, Executable writing) {
        return FileFailure.ofWriting(file, assertThrows(IOException.class, writing))
                .getMessage();
    }

    @Test
    void aFolderThatIsNotThere() {
        Path file = folder.resolve("none").resolve("a.png");
        assertEquals(
                file + ": its folder does not exist; give the path of a file to write",
                written(file, () -> Files.writeString(file, "x")));
    }

    @Test
    void aLinkToNowhere() throws IOException {
        Path link = Files.createSymbolicLink(
                folder.resolve("a.png"), folder.resolve("none").resolve("a.png"));
        assertEquals(
                link + ": no file can be created there; give the path of a file to write",
                written(link, () -> Files.writeString(link, "x")));
    }

    @Test
    void aFolder() {
        assertEquals(
                folder + ": is a folder; give the path of a file to write",
                written(folder, () -> Files.writeString(folder, "x")));
    }

    /** Linux, full(4): every write to it fails as on a disk without room. */
    @Test
    void aDiskThatIsFull() {
        Path full = Path.of("/dev/full");
        assertEquals(
                full + ": cannot be written: No space left on device; give another path",
                written(full, () -> Files.writeString(full, "x")));
    }

    @Test
    void whatThisUserMayNot() {
        Path file = Path.of("a.png");
        IOException denied = new AccessDeniedException("a.png");
        assertEquals(
                "a.png: cannot be written by this user; give a file in a folder that you may write to",
                FileFailure.ofWriting(file, denied).getMessage());
        assertEquals("cannot be read by this user", FileFailure.whyNotRead(file, denied));
    }

    @Test
    void whatTheSystemSays() {
        Path file = Path.of("a.png");
        IOException readOnly = new FileSystemException("a.png", null, "Read-only file system");
        assertEquals(
                "a.png: cannot be written: Read-only file system; give another path",
                FileFailure.ofWriting(file, readOnly).getMessage());
        assertEquals("cannot be read: Read-only file system", FileFailure.whyNotRead(file, readOnly));
        assertEquals("cannot be read: the system does not say why", FileFailure.whyNotRead(file, new IOException()));
    }

    @Test
    void whatCannotBeRead() throws IOException {
        Path none = folder.resolve("none");
        assertEquals(
                "there is no such file",
                FileFailure.whyNotRead(none, assertThrows(IOException.class, () -> Files.readString(none))));
        Path odd = folder.resolve("odd");
        Files.write(odd, new byte[] {(byte) 0xFF});
        assertEquals(
                "is not UTF-8 text",
                FileFailure.whyNotRead(odd, assertThrows(IOException.class, () -> Files.readString(odd))));
        assertEquals(
                "is a folder",
                FileFailure.whyNotRead(folder, assertThrows(IOException.class, () -> Files.readString(folder))));
    }
}
