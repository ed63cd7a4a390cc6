package dev.lampwright.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PrivateFileTest {
    @TempDir
    private Path folder;

    @Test
    void itIsForThisUserOnly() throws IOException {
        Path file = folder.resolve("recording.jsonl");
        try (Writer writer = PrivateFile.create(file)) {
            assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
            writer.write("Grün\n");
        }
        assertEquals("Grün\n", Files.readString(file));
    }

    @Test
    void whatIsThereStaysAsItIs() throws IOException {
        Path file = Files.writeString(folder.resolve("alder.toml"), "mine");
        assertThrows(FileAlreadyExistsException.class, () -> PrivateFile.create(file));
        Path empty = Files.createFile(folder.resolve("empty"));
        assertThrows(FileAlreadyExistsException.class, () -> PrivateFile.create(empty));
        Path link = Files.createSymbolicLink(folder.resolve("link"), file);
        assertThrows(FileAlreadyExistsException.class, () -> PrivateFile.create(link));
        assertThrows(IOException.class, () -> PrivateFile.create(folder));
        assertEquals("mine", Files.readString(file));
    }

    @Test
    void whatIsThereIsReplacedAndItsTargetStays() throws IOException {
        Path other = Files.writeString(folder.resolve("other"), "mine");
        Path file = Files.createSymbolicLink(folder.resolve("token"), other);
        Files.writeString(folder.resolve(".token.new"), "left by an earlier attempt");
        PrivateFile.replace(file, "grün\n");
        assertEquals("grün\n", Files.readString(file));
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
        assertEquals("mine", Files.readString(other));
        assertEquals(2, folder.toFile().list().length, "nothing is left beside it");
        IOException refused = assertThrows(IOException.class, () -> PrivateFile.replace(folder, "grün\n"));
        assertEquals(folder + ": is a folder; give the path of a file to write", refused.getMessage());
    }

    @Test
    void aDeviceIsWrittenTo() throws IOException {
        try (Writer writer = PrivateFile.create(Path.of("/dev/null"))) {
            writer.write("x");
        }
    }
}
