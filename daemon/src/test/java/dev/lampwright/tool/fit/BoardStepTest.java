package dev.lampwright.tool.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Here;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Collections;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which controller is fitted, if there is more than one, or none. */
class BoardStepTest {
    private static final Here ONE = new Here(1, "1.0.0", 1, 300, 1024, 6, 1, 10_000, false);
    private static final Here TWO = new Here(1, "1.0.0", 2, 100, 1024, 0, 1, 10_000, false);

    @TempDir
    private Path folder;

    /** Ports that change from check to check; the last state stays. */
    private static final class Desk implements Boards {
        final ModelBoards model;
        final Deque<List<Boards.Candidate>> looks = new ArrayDeque<>();

        Desk() {
            this(ONE);
        }

        Desk(Here board) {
            model = new ModelBoards(board, new StripModel("GRB", 9, Collections.nCopies(3, 12.0), 0.8));
        }

        Desk sees(Boards.Candidate... candidates) {
            looks.add(List.of(candidates));
            return this;
        }

        @Override
        public List<Boards.Candidate> look() {
            return looks.size() > 1 ? looks.remove() : looks.element();
        }

        @Override
        public Boards.Candidate ask(String port) {
            return looks.stream()
                    .flatMap(List::stream)
                    .filter(candidate -> candidate.port().equals(port))
                    .findFirst()
                    .orElseGet(() -> closed(port, "no port " + port));
        }

        @Override
        public ShownLight light(String port, Here here) {
            return model.light(port, here);
        }

        @Override
        public int baud() {
            return 500_000;
        }
    }

    private static Boards.Candidate open(String port, Here here) {
        return new Boards.Answering(port, "Acorn Board", here);
    }

    private static Boards.Candidate closed(String port, String obstacle) {
        return new Boards.Silent(port, Phrase.plain(obstacle));
    }

    private Talk fit(Desk desk, Person person) throws IOException {
        Path file = folder.resolve("alder.toml");
        Talk talk = new Talk(person);
        GuidedFitting fitting = new GuidedFitting(file, talk, desk, PrinterFinder.BY_HAND, new TestKnowledge(file));
        assertEquals(GuidedFitting.End.DONE, fitting.run(), talk::text);
        talk.print(Files.readString(file));
        return talk;
    }

    @Test
    void ofSeveralOneIsChosen() throws IOException {
        Desk desk = new Desk().sees(open("/dev/ttyACM0", TWO), open("/dev/ttyACM1", ONE));
        Talk talk = fit(desk, new Person(desk.model).say("Which one do you want to fit", "2"));
        assertTrue(talk.text().contains("  1 = /dev/ttyACM0 Acorn Board controller 0000000000000002"), talk.text());
        assertTrue(talk.text().contains("port = \"/dev/ttyACM1\""), talk.text());
    }

    @Test
    void anRp2040IsKnownByWhatItCanDo() throws IOException {
        Here rp2040 = new Here(1, "1.1.0", 1, 4000, 12_019, 6, 2, 10_000, true, 8);
        Desk desk = new Desk(rp2040).sees(open("/dev/ttyACM0", rp2040));
        Talk talk = fit(desk, new Person(desk.model));
        assertTrue(
                talk.text()
                        .contains(
                                "goes to GP2 of your RP2040 board, which gives 3.3 V: a strip at 5 V needs a 5 V level"),
                talk.text());
        assertTrue(talk.text().contains("board = \"rp2040\""), talk.text());
    }

    @Test
    void olderFirmwareIsReported() throws IOException {
        Here old = new Here(1, "1.0.0", 1, 400, 1219, 6, 1, 10_000, false);
        Desk desk = new Desk(old).sees(open("/dev/ttyACM0", old));
        Talk talk = fit(desk, new Person(desk.model));
        assertTrue(talk.text().contains("Firmware: its firmware 1.0.0 is older than "), talk.text());
        assertTrue(talk.text().contains("goes to D4 of your ATmega328P board."), talk.text());
        assertTrue(talk.text().contains("board = \"atmega328p\""), talk.text());
    }

    @Test
    void aMissingPermissionIsSaidAndThenItLooksAgain() throws IOException {
        Desk desk = new Desk()
                .sees(closed("/dev/ttyACM0", "no permission for /dev/ttyACM0: sudo usermod -aG dialout USER"))
                .sees(open("/dev/ttyACM0", ONE));
        Talk talk = fit(desk, new Person(desk.model).say("Press Enter to look again", ""));
        assertTrue(talk.text().contains("no permission for /dev/ttyACM0: sudo usermod"), talk.text());
        assertTrue(talk.text().contains("No controller answers."), talk.text());
    }

    @Test
    void aPortCanBeNamed() throws IOException {
        Desk desk = new Desk().sees().sees(open("/dev/pts/7", ONE));
        Talk talk = fit(desk, new Person(desk.model).say("Press Enter to look again", "/dev/pts/7"));
        assertTrue(talk.text().contains("port = \"/dev/pts/7\""), talk.text());
    }

    @Test
    void aControllerIsFoundAgainAtAnotherPort() throws IOException {
        Desk first = new Desk().sees(open("/dev/ttyACM0", ONE));
        Talk stopped =
                new Talk(new Person(first.model)).typing((count, answer) -> Optional.of(count == 8 ? "q" : answer));
        Path file = folder.resolve("alder.toml");
        new GuidedFitting(file, stopped, first, PrinterFinder.BY_HAND, new TestKnowledge(file)).run();
        Desk second = new Desk().sees(open("/dev/ttyACM0", TWO), open("/dev/ttyACM1", ONE));
        Talk talk = fit(second, new Person(second.model));
        assertTrue(talk.text().contains("port = \"/dev/ttyACM1\""), talk.text());
    }
}
