package dev.lampwright.tool.fit;

import static dev.lampwright.testing.Bounds.assertAbove;
import static dev.lampwright.testing.Bounds.assertAtMost;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.demo.MemoryController;
import dev.lampwright.demo.MemoryLine;
import dev.lampwright.link.Inquiry;
import dev.lampwright.link.LineException;
import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Recording;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The light behind the real link, over a line in memory to the controller of the wire's document. */
class FittingLightTest {
    private static final int BAUD = 500_000;
    /** Long enough for the set-up, but too short to slow a test down. */
    private static final Duration SHORT = Duration.ofSeconds(1);

    private static final Setup SETUP = new Setup(
            10, "GRB", List.of(20_000, 20_000, 20_000), 1000, 0, 3000, WhenSilent.DARK, List.of(200), List.of());

    @TempDir
    private Path folder;

    private final Recording recording = new Recording();
    private final MemoryController controller = new MemoryController(MemoryController.BOARD, recording);
    private final MemoryLine line = new MemoryLine(controller, BAUD, System::nanoTime);

    private boolean shows(int pixel, int green) {
        return recording.lastIs(entry -> entry.fromHost() && entry.strip().get(3 * pixel) == green);
    }

    @Test
    void whatIsShownIsThereWhenItReturns() {
        try (FittingLight light = new FittingLight(line, MemoryController.BOARD.id(), System::nanoTime)) {
            for (int pixel = 0; pixel < 10; pixel++) {
                assertEquals(Optional.empty(), light.show(SETUP, Scenes.stretch("GRB", 50, pixel, pixel, "G")));
                assertTrue(shows(pixel, 50));
                assertTrue(light.steady());
            }
        }
        Await.until(
                "darkness",
                () -> recording.lastIs(entry -> entry.strip().stream().allMatch(value -> value == 0)));
    }

    @Test
    void aSceneOverTheCeilingIsDimmedBeforeItLeavesAndCountsAsNotShown() {
        try (FittingLight light = new FittingLight(line, 0, System::nanoTime, SHORT)) {
            Optional<Phrase> trouble = light.show(SETUP, Scenes.stretch("GRB", 255, 0, 9, "RGB"));
            assertTrue(trouble.isPresent());
            assertFalse(light.steady());
            assertTrue(recording.entries().stream().allMatch(entry -> entry.light() != MemoryController.Light.DIMMED));
            assertTrue(recording.lastIs(
                    entry -> entry.strip().get(0) > 0 && entry.strip().get(0) < 100));
        }
    }

    @Test
    void aControllerThatStartsAnewIsLitAgain() {
        try (FittingLight light = new FittingLight(line, MemoryController.BOARD.id(), System::nanoTime)) {
            Scene scene = Scenes.stretch("GRB", 50, 4, 4, "G");
            assertEquals(Optional.empty(), light.show(SETUP, scene));
            line.reset();
            Await.until("the light again", () -> shows(4, 50));
            assertEquals(Optional.empty(), light.show(SETUP, scene));
        }
    }

    @Test
    void anotherControllerIsNotTakenForTheOneBefore() {
        try (FittingLight light = new FittingLight(line, 77, System::nanoTime, SHORT)) {
            Optional<Phrase> trouble = light.show(SETUP, Scene.DARK);
            assertEquals(
                    Optional.of("another controller is at memory now: plug the previous one in again"),
                    trouble.map(Phrase::english));
            assertFalse(light.steady());
        }
    }

    /** Controllers at one line. */
    private final class OneLine implements Boards {
        @Override
        public List<Boards.Candidate> look() {
            return List.of(ask("memory"));
        }

        @Override
        public Boards.Candidate ask(String port) {
            try {
                return new Boards.Answering(port, "", Inquiry.of(line, System::nanoTime));
            } catch (LineException e) {
                return new Boards.Silent(port, e.trouble());
            }
        }

        @Override
        public ShownLight light(String port, Here here) {
            return new FittingLight(line, here.id(), System::nanoTime);
        }

        @Override
        public int baud() {
            return BAUD;
        }
    }

    @Test
    void aWholeFitting() throws IOException, ConfigException {
        StripModel strip = new StripModel("BRG", 61, List.of(11.0, 12.0, 9.0), 0.7);
        RecordedEyes eyes = new RecordedEyes(recording, strip);
        int[] beforeSupply = {0};
        Talk talk = new Talk(new Person(eyes).wants("bed", 20, 3)).typing((count, answer) -> {
            beforeSupply[0] = count <= 1 ? recording.size() : beforeSupply[0];
            return Optional.of(answer);
        });
        Path file = folder.resolve("rowan.toml");
        GuidedFitting fitting =
                new GuidedFitting(file, talk, new OneLine(), PrinterFinder.BY_HAND, new TestKnowledge(file));
        assertEquals(GuidedFitting.End.DONE, fitting.run(), talk::text);
        Config config = ConfigFile.read(file);
        assertEquals("BRG", config.setup().order(), talk::text);
        assertEquals(61, config.setup().pixels(), talk::text);
        assertEquals("20-3", config.fitting().zones().get("bed").toString(), talk::text);
        assertEquals(
                strip.channelMilliamps().get(0),
                config.setup().channelMicroamps().get(0) / 1000.0,
                0.2);
        assertEquals(0, eyes.dimmed(), "the controller had nothing to clamp");
        assertAbove(0, beforeSupply[0]);
        assertAtMost(FittingSetups.SAFE_CEILING, eyes.most(beforeSupply[0]));
        assertTrue(eyes.most(beforeSupply[0]) > strip.pixels() * strip.idleMilliamps(), "something was lit");
        Await.until("darkness", eyes::dark);
    }
}
