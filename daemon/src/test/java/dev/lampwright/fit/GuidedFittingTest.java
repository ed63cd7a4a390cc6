package dev.lampwright.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.protocol.Here;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole fitting, with a strip in memory that keeps its secrets, and somebody who answers from what is seen. */
class GuidedFittingTest {
    private static final int STRIPS = 120;
    private static final Here BOARD = new Here(1, "1.0.0", 0x6c616d7000000001L, 300, 1024, 6, 1, 10_000, false);

    @TempDir
    private Path folder;

    private Path file;

    private static StripModel strip(String order, int pixels) {
        return new StripModel(order, pixels, Collections.nCopies(order.length(), 12.0), 0.8);
    }

    private static StripModel secret(Random random) {
        List<Character> letters =
                new ArrayList<>(random.nextInt(3) == 0 ? List.of('R', 'G', 'B', 'W') : List.of('R', 'G', 'B'));
        Collections.shuffle(letters, random);
        StringBuilder order = new StringBuilder();
        letters.forEach(order::append);
        int pixels = random.nextInt(10) == 0 ? 1 + random.nextInt(4) : 1 + random.nextInt(225);
        List<Double> currents =
                letters.stream().map(letter -> 4 + random.nextDouble() * 14).toList();
        return new StripModel(order.toString(), pixels, currents, 0.4 + random.nextDouble() * 0.5);
    }

    private GuidedFitting.End fit(Terminal terminal, Boards boards) throws IOException {
        file = folder.resolve("alder.toml");
        return new GuidedFitting(file, terminal, boards, PrinterFinder.BY_HAND, written -> List.of()).run();
    }

    private Config config() throws ConfigException {
        return ConfigFile.read(file);
    }

    @Test
    void findsWhatRandomStripsKeepSecret() throws IOException, ConfigException {
        for (int seed = 0; seed < STRIPS; seed++) {
            Random random = new Random(seed);
            StripModel strip = secret(random);
            ModelBoards boards = new ModelBoards(BOARD, strip);
            int first = random.nextInt(strip.pixels());
            int last = random.nextInt(strip.pixels());
            Talk talk = new Talk(new Person(boards).wants("bed", first, last).wants("job", last, first));
            assertEquals(GuidedFitting.End.DONE, fit(talk, boards), talk::text);
            Config config = config();
            String story = "seed " + seed + ", " + strip + "\n" + talk.text();
            assertEquals(strip.order(), config.setup().order(), story);
            assertEquals(strip.pixels(), config.setup().pixels(), story);
            assertEquals(
                    new Findings.Run(first, last).toString(),
                    config.fitting().zones().get("bed").toString(),
                    story);
            assertEquals(
                    new Findings.Run(last, first).toString(),
                    config.fitting().zones().get("job").toString(),
                    story);
            for (int i = 0; i < strip.order().length(); i++) {
                double found = config.setup().channelMicroamps().get(i) / 1000.0;
                assertEquals(strip.channelMilliamps().get(i), found, 0.6, story);
            }
            assertEquals(strip.idleMilliamps(), config.setup().darkMicroamps() / 1000.0, 0.4, story);
            assertTrue(boards.mostBeforeSupply() <= Setups.SAFE_CEILING, story);
            assertTrue(boards.mostReckonedBeforeSupply() <= Setups.SAFE_CEILING, story);
            assertEquals(0, boards.dimmed(), story);
            assertTrue(boards.dark(), story);
            assertFalse(Files.exists(folder.resolve("alder.toml.fit")), story);
            Files.delete(file);
        }
    }
}
