package dev.lampwright.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Child;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EditedFileTest {
    @TempDir
    private Path folder;

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("alder.toml"), text);
    }

    private List<String> names() throws IOException {
        try (var files = Files.list(folder)) {
            return files.map(each -> each.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void whatItWasStaysBesideItUnderANumberOfItsOwn() throws IOException {
        Path file = file("first\r\n\uFEFF");
        EditedFile edited = EditedFile.read(file);
        assertEquals("first\r\n\uFEFF", edited.text());
        assertEquals(folder.resolve("alder.toml.old-1"), edited.replace("second"));
        assertEquals(folder.resolve("alder.toml.old-2"), edited.replace("third"));
        edited.replaceAgain("fourth");
        assertEquals("fourth", edited.text());
        assertEquals("fourth", Files.readString(file));
        assertEquals("first\r\n\uFEFF", Files.readString(folder.resolve("alder.toml.old-1")));
        assertEquals("second", Files.readString(folder.resolve("alder.toml.old-2")));
        assertEquals(List.of("alder.toml", "alder.toml.old-1", "alder.toml.old-2"), names());
    }

    @Test
    void modeAndLinkStay() throws IOException {
        Path file = file("first");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r-----"));
        Path link = Files.createSymbolicLink(folder.resolve("link.toml"), Path.of("alder.toml"));
        Path old = EditedFile.read(link).replace("second");
        assertTrue(Files.isSymbolicLink(link));
        assertEquals("second", Files.readString(file));
        assertEquals("first", Files.readString(old));
        assertEquals("rw-r-----", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
        assertEquals("rw-r-----", PosixFilePermissions.toString(Files.getPosixFilePermissions(old)));
    }

    @Test
    void whatSomebodyElseWroteMeanwhileIsNotLost() throws IOException {
        Path file = file("first");
        EditedFile edited = EditedFile.read(file);
        Files.writeString(file, "theirs");
        IOException e = assertThrows(IOException.class, () -> edited.replace("mine"));
        assertTrue(e.getMessage().startsWith(file + ": was changed by somebody else in the meantime"), e.getMessage());
        assertEquals("theirs", Files.readString(file));
        assertEquals(List.of("alder.toml"), names());
    }

    private void assertUnreadable(String why, Path file) {
        IOException e = assertThrows(IOException.class, () -> EditedFile.read(file));
        assertTrue(e.getMessage().startsWith(file + ": " + why), e.getMessage());
    }

    @Test
    void whatIsNoFileIsNotWaitedFor() throws IOException, InterruptedException {
        Path pipe = folder.resolve("pipe.toml");
        assertEquals(0, Child.run(List.of("mkfifo", pipe.toString())).status());
        assertUnreadable("is a pipe or a device, not a file", pipe);
        assertUnreadable("is a folder", folder);
        assertUnreadable("there is no such file", folder.resolve("none.toml"));
        assertUnreadable("there is no such file", Files.createSymbolicLink(folder.resolve("to"), Path.of("nowhere")));
        Files.write(folder.resolve("latin.toml"), "m\u00E9lange".getBytes(StandardCharsets.ISO_8859_1));
        assertUnreadable("is not UTF-8 text", folder.resolve("latin.toml"));
        Files.writeString(folder.resolve("long.toml"), "#".repeat((1 << 20) + 1));
        assertUnreadable("cannot be read: it is longer than 1 MiB", folder.resolve("long.toml"));
    }

    @Test
    void whatAnAttemptBeforeLeftIsNoObstacle() throws IOException {
        Path file = file("first");
        Path theirs = Files.writeString(folder.resolve("theirs"), "theirs");
        Files.createSymbolicLink(folder.resolve(".alder.toml.new"), theirs);
        AtomicFile.replace(file, "second");
        assertEquals("second", Files.readString(file));
        assertEquals("theirs", Files.readString(theirs));
        assertFalse(Files.exists(folder.resolve(".alder.toml.new")));
    }
}
