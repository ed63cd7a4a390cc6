package dev.lampwright.tool.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.protocol.Here;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The fitting of an existing file: only what was asked for changes, to the byte. */
class RefittingTest {
    private static final Here BOARD = new Here(1, "1.0.0", 0x6c616d7000000001L, 300, 1024, 6, 1, 10_000, false);
    private static final String CHOICE = "What do you want to fit?";
    private static final String FILE = """
        # Alder. Do not sort this file.
        [broker]
        url = "mqtt://127.0.0.1:1883"   # on this machine

        [printer.readings]
        # measured at the edge
        bed.actual_C = { topic = "shop/alder/heat", at = "/bed" }

        [controller]
        port = "memory"

        [supply]
        ceiling_mA = 7500

        [strip]
        pixels = 47
        order = "BGR"
        channel_mA = 12

        [zones]
        bed = "30-12"   # backwards
        weird = "0-8 every 2"

        [dimmers]
        work = { channel = 1, volts = 24, full_mA = 800 }   # over the bench

        [looks.mine]
        layers = [ { paint = "solid", colour = "teal" } ]
        """;

    @TempDir
    private Path folder;

    private Path file;
    private ModelBoards boards;

    @BeforeEach
    void writeFile() throws IOException {
        file = Files.writeString(folder.resolve("alder.toml"), FILE);
        boards = new ModelBoards(BOARD, new StripModel("BGR", 47, List.of(12.0, 12.0, 12.0), 0.8));
    }

    private Person person(String... choices) {
        return new Person(boards).say(CHOICE, choices).say("Write this", "y");
    }

    private Talk fit(Person person, PrinterFinder finder) throws IOException {
        Talk talk = new Talk(person);
        GuidedFitting.End end = new Refitting(file, talk, boards, finder, new TestKnowledge(file)).run();
        assertEquals(GuidedFitting.End.DONE, end, talk::text);
        return talk;
    }

    private Talk fit(Person person) throws IOException {
        return fit(person, PrinterFinder.BY_HAND);
    }

    private void assertFile(String expected, Talk talk) throws IOException {
        assertEquals(expected, Files.readString(file), talk::text);
    }

    @Test
    void showsWhatTheFileHasAndChangesNothingByThat() throws IOException {
        Talk talk = fit(person(""));
        assertFile(FILE, talk);
        for (String line : List.of(
                "    controller  memory",
                "    supply      5 V, ceiling 7500 mA",
                "    strip       47 pixels, BGR",
                "    zones       bed 30-12, weird 0-8 every 2",
                "    dimmers     work on [1]",
                "    printer     bed.actual_C",
                "    faults      none is bound, so no fault will ever be shown: listen to the printer again")) {
            assertTrue(talk.text().contains(line + "\n"), talk::text);
        }
        assertTrue(talk.text().endsWith("Nothing has changed."), talk::text);
        assertTrue(boards.setups().isEmpty(), "nothing was lit");
    }

    @Test
    void aZoneIsMovedAndAnotherNamed() throws IOException {
        Talk talk = fit(person("1", "").moves("bed", 5, 20).wants("shelf", 40, 31));
        assertFile(
                FILE.replace("\"30-12\"   #", "\"5-20\"    #").replace("every 2\"\n", "every 2\"\nshelf = \"40-31\"\n"),
                talk);
        assertEquals(FILE, Files.readString(folder.resolve("alder.toml.old-1")));
        assertTrue(
                talk.text().contains("    -bed = \"30-12\"   # backwards\n    +bed = \"5-20\"    # backwards\n"),
                talk::text);
        assertTrue(talk.text().contains("reviewed\nA daemon that runs with this file"), talk::text);
        assertTrue(talk.text().contains("Pixel 30 is marked. Move the mark to one end of bed"), talk::text);
        assertTrue(boards.dark());
    }

    @Test
    void aLightIsAddedOnADimmerThatIsFree() throws IOException {
        Person person = person("2", "")
                .hung(3, new Findings.DimmerUse(Findings.Hanging.WHITE, "shelf", 400))
                .hung(1, new Findings.DimmerUse(Findings.Hanging.WHITE, "work", 800))
                .say("What is its name", "shelf");
        Talk talk = fit(person);
        String shelf = "shelf = { channel = 3, volts = 24, full_mA = 400, ceiling_mA = 7500 }\n";
        String supply = "\n[wiring.supplies.lights]\nvolts = 24\namps = 10\n";
        assertFile(FILE.replace("# over the bench\n", "# over the bench\n" + shelf) + supply, talk);
        assertEquals(0, person.asked("Dimmer 1"), "what has a light already is not tried");
    }

    @Test
    void severalStepsKeepOneOldFile() throws IOException {
        Talk talk = fit(person("4", "8", "").say("What feeds the strip", "2"));
        String text = Files.readString(file);
        assertTrue(text.contains("[desk]\nbrightness = 0.1"), talk::text);
        assertTrue(text.contains("[supply]\nceiling_mA = 450\nvolts = 5\n"), talk::text);
        assertEquals(FILE, Files.readString(folder.resolve("alder.toml.old-1")));
        assertFalse(Files.exists(folder.resolve("alder.toml.old-2")));
    }

    @Test
    void theOrderAndTheCurrentsAreWritten() throws IOException {
        Files.writeString(file, FILE.replace("BGR", "GRB"));
        Talk talk = fit(person("6", "7", ""));
        String text = Files.readString(file);
        assertTrue(text.contains("order = \"BGR\"\nchannel_mA = [12"), talk::text);
    }

    @Test
    void whatThePrinterSaysIsPutIn() throws IOException {
        String sections = """
            [printer.readings]
            # bed.actual_C: it rises
            bed.actual_C = { topic = "shop/alder/heat", at = "/bed" }
            # bed.setpoint_C: it waits
            bed.setpoint_C = { topic = "shop/alder/heat", at = "/want" }

            """;
        Talk talk = fit(person("3", "").say("For how many seconds", "1"), (broker, duration, told) -> {
            assertEquals(Map.of("url", "mqtt://127.0.0.1:1883"), broker);
            return new HeardPrinter(sections, "", List.of());
        });
        List<String> lines = sections.lines().toList();
        String added = lines.get(3) + "\n" + lines.get(4) + "\n";
        assertFile(FILE.replace("at = \"/bed\" }\n", "at = \"/bed\" }\n" + added), talk);
        assertTrue(boards.setups().isEmpty(), "nothing was lit");
    }

    /** A printer in another language, and whose job is cancelled when its user is asked to. */
    private static final class Finnish implements PrinterFinder {
        private static final String PLACE = "topic = \"shop/alder/vaihe\"\n";

        @Override
        public HeardPrinter find(Map<String, String> broker, Duration duration, Told told) {
            String sections = "[printer.state]\n" + PLACE + """
                    printing = ["tulostaa"]
                    fault = ["*ERROR*"]    # not heard: a guess
                    """;
            return new HeardPrinter(
                    sections,
                    PLACE,
                    List.of(
                            new HeardPrinter.Word("tulostaa", "the job went on 850 s", "printing"),
                            new HeardPrinter.Word("tauko", "the job stood still 40 s", ""),
                            new HeardPrinter.Word("9", "", "")));
        }

        @Override
        public Optional<String> nextWord(Map<String, String> broker, String place, Duration patience, Told told) {
            assertEquals(PLACE, place);
            return Optional.of("peruttu");
        }
    }

    @Test
    void wordsInDoubtAreSortedTogether() throws IOException {
        Person person = person("3", "")
                .say("For how many seconds", "1")
                .say(
                        "The printer also reported \"tauko\" (meanwhile: the job stood still 40 s). What does it mean? (1 of 2)",
                        "4")
                .say("The printer also reported \"9\". What does it mean? (2 of 2)", "")
                .say("No word for cancelled was heard.", "y")
                .say("Press Enter, and then: cancel the job at the printer", "")
                .say("It reports \"peruttu\" now. Does that mean: cancelled?", "y")
                .say("NO FAULT WILL BE SHOWN YET", "vika*, 7");
        Talk talk = fit(person, new Finnish());
        String state = """
                [printer.state]
                topic = "shop/alder/vaihe"
                printing = ["tulostaa"]
                held = ["tauko"]
                stopped = ["peruttu"]
                fault = ["vika*", "7"]

                """;
        assertFile(FILE.replace("[controller]", state + "[controller]"), talk);
        assertTrue(
                talk.text()
                        .contains(
                                "The printer reports \"tulostaa\" when it is printing (meanwhile: the job went on 850 s)."),
                talk::text);
    }

    @Test
    void wordsThatHaveAStateAreNotAskedAgain() throws IOException {
        String state =
                "[printer.state]\ntopic = \"shop/alder/vaihe\"\nheld = [\"tauko\"]   # mine\nstopped = [\"peruttu\"]\n\n";
        Files.writeString(file, FILE.replace("[controller]", state + "[controller]"));
        Person person = person("3", "")
                .say("For how many seconds", "1")
                .say("The printer also reported \"9\". What does it mean? (1 of 1)", "7");
        Talk talk = fit(person, new Finnish());
        assertTrue(
                Files.readString(file).contains(state.strip() + "\nprinting = [\"tulostaa\"]\nfault = [\"9\"]\n"),
                talk::text);
    }

    @Test
    void nothingIsWrittenThatIsNotWanted() throws IOException {
        Talk talk = fit(person("4", "").say("Write this", "n"));
        assertFile(FILE, talk);
        assertTrue(talk.text().contains("Nothing was written."), talk::text);
        assertEquals(1, folder.toFile().list().length);
        Talk back = fit(person("4", "").say("Write this", "b"));
        assertFile(FILE, back);
    }

    @Test
    void nothingIsWrittenThatDoesNotGoWithTheRest() throws IOException {
        boards = new ModelBoards(BOARD, new StripModel("BGR", 20, List.of(12.0, 12.0, 12.0), 0.8));
        Talk talk = fit(person("5", ""));
        assertFile(FILE, talk);
        assertTrue(talk.text().contains("This does not fit the rest of the file, which stays unchanged:"), talk::text);
        assertTrue(talk.text().contains("zones.bed: is \"30-12\", past the end of the strip"), talk::text);
    }

    @Test
    void canBeLeftAtAnyQuestion() throws IOException {
        for (String leave : List.of("q", "b")) {
            for (int at = 0; at < 25; at++) {
                int left = at;
                Files.writeString(file, FILE);
                Talk talk = new Talk(person("1", "2", "").moves("bed", 5, 20).say("What is its name", "shelf"))
                        .typing((count, answer) -> Optional.of(count == left ? leave : answer));
                new Refitting(file, talk, boards, PrinterFinder.BY_HAND, new TestKnowledge(file)).run();
                String text = Files.readString(file);
                assertTrue(text.startsWith("# Alder. Do not sort this file.\n"), talk::text);
                assertTrue(boards.dark() || boards.setups().isEmpty(), talk::text);
            }
        }
    }

    @Test
    void aFileThatIsNotRightIsRefused() throws IOException {
        Files.writeString(file, FILE.replace("pixels = 47", "pixels = many"));
        IOException e = assertThrows(
                IOException.class,
                () -> new Refitting(
                        file, new Talk(person("")), boards, PrinterFinder.BY_HAND, new TestKnowledge(file)));
        assertTrue(e.getMessage().startsWith(file + ":16: column 10: \"many\" is not a value"), e.getMessage());
    }

    @Test
    void whatIsWrittenMeanwhileIsNotLost() throws IOException {
        Talk talk = new Talk(person("4", "").slips((question, answer) -> {
            try {
                Files.writeString(file, FILE + "# mine\n");
            } catch (IOException e) {
                throw new IllegalStateException(e);
            }
            return answer;
        }));
        Refitting fitting = new Refitting(file, talk, boards, PrinterFinder.BY_HAND, new TestKnowledge(file));
        IOException e = assertThrows(IOException.class, fitting::run);
        assertTrue(e.getMessage().contains("was changed by somebody else in the meantime"), e.getMessage());
        assertEquals(FILE + "# mine\n", Files.readString(file));
        assertTrue(boards.dark());
    }
}
