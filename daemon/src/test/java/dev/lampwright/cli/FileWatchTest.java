package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FileWatchTest {
    @TempDir
    private Path folder;

    private Path file;

    @BeforeEach
    void write() throws IOException {
        file = folder.resolve("alder.toml");
        Files.writeString(file, "a");
    }

    @Test
    void saysNothingOfAFileThatStaysAsItIs() {
        FileWatch watch = new FileWatch(file);
        assertFalse(watch.changed());
        assertFalse(watch.changed());
    }

    @Test
    void tellsAChangeOnceWhenItHasComeToRest() throws IOException {
        FileWatch watch = new FileWatch(file);
        Files.writeString(file, "ab");
        assertFalse(watch.changed(), "it may still be written to");
        assertTrue(watch.changed());
        assertFalse(watch.changed());
    }

    @Test
    void tellsAChangeOfTheSameLength() throws IOException {
        FileWatch watch = new FileWatch(file);
        Files.writeString(file, "b");
        Files.setLastModifiedTime(file, FileTime.fromMillis(1));
        watch.changed();
        assertTrue(watch.changed());
    }

    @Test
    void bearsAFileThatIsAwayForAWhile() throws IOException {
        FileWatch watch = new FileWatch(file);
        Files.delete(file);
        assertFalse(watch.changed());
        assertFalse(watch.changed());
        Files.writeString(file, "abc");
        watch.changed();
        assertTrue(watch.changed());
    }

    @Test
    void tellsThatAFileHasComeOrGoneThatNeedNotBeThere() throws IOException {
        Path looks = folder.resolve("alder.looks.toml");
        FileWatch watch = FileWatch.ofOptional(looks);
        assertFalse(watch.changed());
        Files.writeString(looks, "a");
        assertFalse(watch.changed(), "it may still be written to");
        assertTrue(watch.changed());
        assertFalse(watch.changed());
        Files.delete(looks);
        assertFalse(watch.changed(), "another may be put in its place");
        assertTrue(watch.changed());
        assertFalse(watch.changed());
    }
}
