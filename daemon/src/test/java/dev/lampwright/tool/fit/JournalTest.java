package dev.lampwright.tool.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JournalTest {
    @TempDir
    private Path folder;

    private Path file;

    @BeforeEach
    void keepSome() throws IOException {
        file = folder.resolve("alder.toml.fit");
        AnswerJournal journal = AnswerJournal.empty(file);
        journal.enter("one");
        journal.answered("y");
        journal.found("a\nb \"c\"");
        journal.enter("two");
        journal.answered("");
    }

    @Test
    void isReadAsItWasKept() throws IOException {
        AnswerJournal journal = AnswerJournal.read(file);
        journal.enter("one");
        assertEquals(Optional.of("y"), journal.nextAnswer());
        assertEquals(Optional.of("a\nb \"c\""), journal.nextFound());
        assertFalse(journal.replays());
        journal.enter("two");
        assertEquals(Optional.of(""), journal.nextAnswer());
        assertEquals(Optional.empty(), journal.nextAnswer());
    }

    @Test
    void goingBackForgetsTheLastAnswerAndWhatWasFoundAfterIt() throws IOException {
        AnswerJournal journal = AnswerJournal.read(file);
        assertTrue(journal.forgetLast("one"));
        journal.enter("one");
        assertFalse(journal.replays());
        assertFalse(journal.forgetLast("one"));
        AnswerJournal again = AnswerJournal.read(file);
        again.enter("one");
        assertFalse(again.replays(), "the file has forgotten it too");
    }

    @Test
    void whatIsOfAnotherKindIsForgottenWithAllAfterIt() throws IOException {
        AnswerJournal journal = AnswerJournal.read(file);
        journal.enter("one");
        assertEquals(Optional.empty(), journal.nextFound());
        assertFalse(journal.replays());
    }

    @Test
    void somethingElseIsRefusedInWords() throws IOException {
        Files.writeString(file, "{}");
        assertWords("was not written by this version of fit; move it away to start again");
        Files.writeString(file, "{ \"lampwright_fit\": 2 }");
        assertWords("was not written by this version of fit; move it away to start again");
        Files.writeString(file, "");
        assertWords("was not written by this version of fit; move it away to start again");
        Files.writeString(file, "pixels = 30");
        assertWords("is not JSON; move it away to start again");
        Files.write(file, new byte[] {(byte) 0xFF});
        assertWords("is not UTF-8 text; move it away to start again");
        Files.delete(file);
        Files.createDirectory(file);
        assertWords("is a folder; move it away to start again");
    }

    private void assertWords(String words) {
        IOException e = assertThrows(IOException.class, () -> AnswerJournal.read(file));
        assertEquals(file + ": " + words, e.getMessage());
    }

    @Test
    void aFolderThatIsNotThereIsSaidSo() {
        AnswerJournal journal = AnswerJournal.empty(folder.resolve("none").resolve("alder.toml.fit"));
        journal.enter("one");
        IOException e = assertThrows(IOException.class, () -> journal.answered("y"));
        assertTrue(
                e.getMessage().endsWith(": its folder does not exist; give the path of a file to write"),
                e.getMessage());
    }
}
