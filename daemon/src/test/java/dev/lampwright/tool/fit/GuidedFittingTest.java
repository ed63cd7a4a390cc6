package dev.lampwright.tool.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.Mounting;
import dev.lampwright.protocol.Here;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The whole fitting, with a strip of unknown properties in memory, and somebody who answers from what they see. */
class GuidedFittingTest {
    private static final int STRIPS = 40;
    private static final Here BOARD = new Here(1, "1.0.0", 0x6c616d7000000001L, 300, 1024, 6, 1, 10_000, false);

    @TempDir
    private Path folder;

    private Path file;
    private int lines;

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
        return fit(terminal, boards, PrinterFinder.BY_HAND);
    }

    private GuidedFitting.End fit(Terminal terminal, Boards boards, PrinterFinder finder) throws IOException {
        file = folder.resolve("alder.toml");
        return new GuidedFitting(file, terminal, boards, finder, new TestKnowledge(file)).run();
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
            assertTrue(boards.mostBeforeSupply() <= FittingSetups.SAFE_CEILING, story);
            assertTrue(boards.mostReckonedBeforeSupply() <= FittingSetups.SAFE_CEILING, story);
            assertEquals(0, boards.dimmed(), story);
            assertTrue(boards.dark(), story);
            assertFalse(Files.exists(folder.resolve("alder.toml.fit")), story);
            Files.delete(file);
        }
    }

    private static final StripModel PLAIN = strip("BGR", 47);

    private static Person person(ModelBoards boards) {
        return new Person(boards).wants("bed", 30, 12).wants("shelf", 3, 8).hung(1, WORK);
    }

    private static final Findings.DimmerUse WORK = new Findings.DimmerUse(Findings.Hanging.WHITE, "work", 800);

    /** The file of an undisturbed fitting; records how many lines were typed. */
    private String untroubled() throws IOException {
        ModelBoards boards = new ModelBoards(BOARD, PLAIN);
        Talk talk = new Talk(person(boards));
        assertEquals(GuidedFitting.End.DONE, fit(talk, boards), talk::text);
        lines = talk.count();
        String text = Files.readString(file);
        Files.delete(file);
        return text;
    }

    /** Fits with something typed before each right answer. */
    private Talk withTypedBefore(String before) throws IOException {
        ModelBoards boards = new ModelBoards(BOARD, PLAIN);
        boolean[] typed = {false};
        Talk talk = new Talk(person(boards)).typing((count, answer) -> {
            typed[0] = !typed[0];
            return Optional.of(typed[0] ? before : answer);
        });
        assertEquals(GuidedFitting.End.DONE, fit(talk, boards), talk::text);
        return talk;
    }

    @Test
    void writesWhatItFound() throws IOException, ConfigException {
        String text = untroubled();
        assertTrue(text.contains("pixels = 47\norder = \"BGR\"\n"), text);
        assertTrue(text.contains("bed = \"30-12\"\nshelf = \"3-8\"\n"), text);
        assertTrue(text.contains("work = { channel = 1, volts = 24, full_mA = 800"), text);
        assertFalse(text.contains("channel = 0"), "nothing is invented for a dimmer without a light");
        assertTrue(text.contains("ceiling_mA = 7500 "), text);
        assertTrue(text.contains("[desk]\nprefix = \"lampwright/alder\" "), text);
        assertTrue(text.contains("brightness = 0.1"), text);
        assertTrue(text.contains("strip = { volts = 5, amps = 10 }\nlights = { volts = 24, amps = 10 }"), text);
    }

    @Test
    void canBeStoppedAtEveryQuestionAndGoesOnFromThere() throws IOException {
        String whole = untroubled();
        GuidedFitting.End end = GuidedFitting.End.STOPPED;
        for (int at = 0; end == GuidedFitting.End.STOPPED; at++) {
            int stop = at;
            ModelBoards first = new ModelBoards(BOARD, PLAIN);
            Talk talk = new Talk(person(first)).typing((count, answer) -> Optional.of(count == stop ? "q" : answer));
            end = fit(talk, first);
            if (end == GuidedFitting.End.STOPPED) {
                assertTrue(first.dark(), talk::text);
                assertFalse(Files.exists(file));
                ModelBoards second = new ModelBoards(BOARD, PLAIN);
                Talk rest = new Talk(person(second));
                assertEquals(GuidedFitting.End.DONE, fit(rest, second), rest::text);
                assertTrue(stop + rest.count() <= lines + 1, "nothing is asked twice");
            }
            assertEquals(whole, Files.readString(file), talk::text);
            Files.delete(file);
        }
    }

    @Test
    void whatWasAnsweredIsNotAskedAgain() throws IOException {
        ModelBoards first = new ModelBoards(BOARD, PLAIN);
        Talk talk = new Talk(person(first))
                .typing((count, answer) ->
                        first.pixels().isEmpty() || count < 30 ? Optional.of(answer) : Optional.of("q"));
        assertEquals(GuidedFitting.End.STOPPED, fit(talk, first));
        ModelBoards second = new ModelBoards(BOARD, PLAIN);
        Person person = person(second);
        assertEquals(GuidedFitting.End.DONE, fit(new Talk(person), second));
        assertEquals(0, person.asked("What feeds the strip"));
        assertEquals(0, person.asked("What colour"));
        assertEquals(1, person.asked("There are earlier answers in"));
    }

    @Test
    void canBeginAnew() throws IOException {
        ModelBoards first = new ModelBoards(BOARD, strip("RGB", 20));
        fit(new Talk(person(first)).typing((count, answer) -> Optional.of(count == 15 ? "q" : answer)), first);
        ModelBoards second = new ModelBoards(BOARD, PLAIN);
        Talk talk = new Talk(person(second).say("There are earlier answers in", "n"));
        assertEquals(GuidedFitting.End.DONE, fit(talk, second), talk::text);
        assertTrue(Files.readString(file).contains("order = \"BGR\""));
    }

    @Test
    void goesBackFromEveryQuestion() throws IOException {
        String whole = untroubled();
        int questions = 1;
        for (int at = 0; at < questions; at++) {
            int back = at;
            ModelBoards boards = new ModelBoards(BOARD, PLAIN);
            Talk talk = new Talk(person(boards)).typing((count, answer) -> Optional.of(count == back ? "b" : answer));
            assertEquals(GuidedFitting.End.DONE, fit(talk, boards), talk::text);
            assertEquals(whole, Files.readString(file), talk::text);
            Files.delete(file);
            questions = talk.count() - 1;
        }
        assertTrue(questions > 40, "a whole fitting");
    }

    @Test
    void allTheWayBackIsTheBeginning() throws IOException {
        ModelBoards boards = new ModelBoards(BOARD, PLAIN);
        Talk talk = new Talk(person(boards))
                .typing((count, answer) -> Optional.of(count >= 20 && count < 60 ? "b" : answer));
        assertEquals(GuidedFitting.End.DONE, fit(talk, boards), talk::text);
        assertTrue(talk.text().contains("This is the beginning."), talk::text);
    }

    @Test
    void answersThatMakeNoSenseAreSaidSo() throws IOException {
        String whole = untroubled();
        Talk talk = withTypedBefore("%$&\u0007");
        assertEquals(whole, Files.readString(file));
        assertTrue(talk.text().contains("Sorry: "), talk::text);
    }

    @Test
    void everyQuestionHasHelp() throws IOException {
        String whole = untroubled();
        withTypedBefore("?");
        assertEquals(whole, Files.readString(file));
    }

    @Test
    void somebodyWhoErrsNowAndThenComesToTheSame() throws IOException, ConfigException {
        for (int seed = 0; seed < 20; seed++) {
            Random random = new Random(seed);
            ModelBoards boards = new ModelBoards(BOARD, PLAIN);
            Talk talk = new Talk(person(boards).slips((question, answer) -> erring(question, answer, random)));
            assertEquals(GuidedFitting.End.DONE, fit(talk, boards), talk::text);
            String story = "seed " + seed + "\n" + talk.text();
            assertEquals("BGR", config().setup().order(), story);
            assertEquals(47, config().setup().pixels(), story);
            Files.delete(file);
        }
    }

    private static String erring(String question, String answer, Random random) {
        if (random.nextInt(12) > 0) {
            return answer;
        }
        if (question.contains("hat colour")) {
            return Integer.toString(random.nextInt(6));
        }
        return question.contains("Is a pixel lit") ? (answer.equals("y") ? "n" : "y") : answer;
    }

    @Test
    void aControllerThatIsAwayIsWaitedFor() throws IOException {
        String whole = untroubled();
        ModelBoards boards = new ModelBoards(BOARD, PLAIN);
        Talk talk = new Talk(person(boards));
        talk.typing((count, answer) -> {
            if (count == 12 || count == 25) {
                boards.goAway(3);
            }
            return Optional.of(answer);
        });
        assertEquals(GuidedFitting.End.DONE, fit(talk, boards), talk::text);
        assertEquals(whole, Files.readString(file));
        assertTrue(talk.text().contains("That answer was not used: "), talk::text);
        assertTrue(talk.text().contains("The light waits: the controller has gone silent."), talk::text);
        assertTrue(talk.text().contains("It is back."), talk::text);
    }

    @Test
    void theEndOfTheInputKeepsTheAnswers() throws IOException {
        ModelBoards boards = new ModelBoards(BOARD, PLAIN);
        Talk talk =
                new Talk(person(boards)).typing((count, answer) -> count < 20 ? Optional.of(answer) : Optional.empty());
        assertEquals(GuidedFitting.End.INPUT_ENDED, fit(talk, boards));
        assertTrue(boards.dark());
        assertTrue(Files.exists(folder.resolve("alder.toml.fit")));
        assertTrue(talk.text().endsWith("run the same command to resume."), talk::text);
    }

    @Test
    void goesOnWithTheSameControllerOnly() throws IOException {
        ModelBoards first = new ModelBoards(BOARD, PLAIN);
        fit(new Talk(person(first)).typing((count, answer) -> Optional.of(count == 15 ? "q" : answer)), first);
        Here other = new Here(1, "1.0.0", 99, 300, 1024, 6, 1, 10_000, false);
        ModelBoards second = new ModelBoards(other, PLAIN);
        Talk talk = new Talk(person(second).say("Controller 6c616d7000000001", "q"));
        assertEquals(GuidedFitting.End.STOPPED, fit(talk, second), talk::text);
        assertTrue(talk.text().contains("which this fitting began with, is not connected"), talk::text);
        assertTrue(second.setups().isEmpty(), "nothing is lit");
    }

    @Test
    void noFileIsReplacedWithoutAsking() throws IOException {
        String whole = untroubled();
        Files.writeString(file, "mine\n");
        ModelBoards boards = new ModelBoards(BOARD, PLAIN);
        fit(new Talk(person(boards).say(file + " already exists", "birch.toml")), boards);
        assertEquals("mine\n", Files.readString(file));
        assertEquals(whole, Files.readString(folder.resolve("birch.toml")));
        ModelBoards again = new ModelBoards(BOARD, PLAIN);
        fit(new Talk(person(again).say(file + " already exists", "overwrite")), again);
        assertEquals(whole, Files.readString(file));
        assertEquals("mine\n", Files.readString(folder.resolve("alder.toml.old-1")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "2"})
    void withoutASupplyThatIsKnownAllStaysSafe(String source) throws IOException, ConfigException {
        ModelBoards boards = new ModelBoards(BOARD, strip("GRBW", 300));
        Talk talk = new Talk(person(boards).say("What feeds the strip", source));
        assertEquals(GuidedFitting.End.DONE, fit(talk, boards), talk::text);
        assertTrue(boards.setups().stream()
                .allMatch(setup -> setup.ceilingsMilliamps().get(0) == FittingSetups.SAFE_CEILING));
        assertTrue(boards.mostReckonedBeforeSupply() <= FittingSetups.SAFE_CEILING, talk::text);
        assertTrue(boards.mostReckonedBeforeSupply() > FittingSetups.SAFE_CEILING / 2.0, "something was lit");
        assertEquals(225, config().setup().pixels(), "as many as the room allows: 300 × 3 ÷ 4");
        assertEquals(
                FittingSetups.SAFE_CEILING, config().setup().ceilingsMilliamps().get(0));
    }

    @Test
    void aBrokerThatLetsInWhomItKnowsIsListenedToByName() throws IOException, ConfigException {
        String password =
                Files.writeString(folder.resolve("password"), "invented").toString();
        String trusted = Files.writeString(folder.resolve("ca.pem"), "invented").toString();
        ModelBoards boards = new ModelBoards(BOARD, PLAIN);
        Person person = person(boards)
                .say("Which MQTT broker", "mqtts://broker.lan")
                .say("What is lampwright's user name there", "alder-lights")
                .say("Which file holds the password", password)
                .say("Which PEM file holds", trusted)
                .say("Should lampwright listen", "y")
                .say("For how many seconds", "1");
        List<Map<String, String>> heard = new ArrayList<>();
        Talk talk = new Talk(person);
        assertEquals(
                GuidedFitting.End.DONE,
                fit(talk, boards, (broker, duration, told) -> {
                    heard.add(broker);
                    return HeardPrinter.NOTHING;
                }),
                talk::text);
        assertEquals(
                List.of(Map.of(
                        "url",
                        "mqtts://broker.lan",
                        "username",
                        "alder-lights",
                        "password_file",
                        password,
                        "ca_file",
                        trusted)),
                heard);
        assertEquals("alder-lights", config().broker().username().orElseThrow());
        assertEquals(password, config().broker().passwordFile().orElseThrow().toString());
        assertEquals(trusted, config().broker().caFile().orElseThrow().toString());
        assertTrue(
                talk.text()
                        .contains(
                                "lampwright survey --broker mqtts://broker.lan --username alder-lights --password-file "
                                        + password + " --ca-file " + trusted),
                talk::text);
        assertFalse(Files.readString(file).contains("invented"), "the password is nowhere else");
    }

    @Test
    void withoutAFuseAllStaysSafe() throws IOException, ConfigException {
        ModelBoards boards = new ModelBoards(BOARD, PLAIN);
        Talk talk = new Talk(person(boards).say("What fuse", "0"));
        assertEquals(GuidedFitting.End.DONE, fit(talk, boards), talk::text);
        assertEquals(
                FittingSetups.SAFE_CEILING, config().setup().ceilingsMilliamps().get(0));
        assertTrue(talk.text().contains("Without a fuse the ceiling is no more than 450 mA."), talk::text);
    }

    @Test
    void aStripLongerThanTheControllerDrives() throws IOException, ConfigException {
        ModelBoards boards = new ModelBoards(BOARD, strip("GRB", 480));
        Talk talk = new Talk(new Person(boards));
        assertEquals(GuidedFitting.End.DONE, fit(talk, boards), talk::text);
        assertEquals(300, config().setup().pixels());
        assertTrue(talk.text().contains("The controller drives no more"), talk::text);
        assertTrue(Files.readString(file).contains("the strip is longer"));
    }

    @Test
    void readingsThatDoNotFitAreRefused() throws IOException, ConfigException {
        ModelBoards boards = new ModelBoards(BOARD, PLAIN);
        int[] readings = {0};
        Talk talk = new Talk(person(boards)
                .slips((question, answer) -> question.startsWith("Reading 3") && readings[0]++ == 0 ? "5000" : answer));
        assertEquals(GuidedFitting.End.DONE, fit(talk, boards), talk::text);
        assertTrue(talk.text().contains("That does not add up: "), talk::text);
        assertEquals(12_100, config().setup().channelMicroamps().get(0), 100);
    }

    @Test
    void pixelsThatTakeMoreThanWasReckonedAreMeasuredDarker() throws IOException, ConfigException {
        StripModel strong = new StripModel("BGR", 47, List.of(52.0, 48.0, 55.0), 0.8);
        ModelBoards boards = new ModelBoards(BOARD, strong);
        Talk talk = new Talk(person(boards).say("How many amperes", "1"));
        assertEquals(GuidedFitting.End.DONE, fit(talk, boards), talk::text);
        assertTrue(talk.text().contains("That is more than the ceiling: "), talk::text);
        assertEquals(52_100, config().setup().channelMicroamps().get(0), 500);
        assertEquals(800, config().setup().ceilingsMilliamps().get(0));
    }

    @Test
    void aNumberFromTheReelIsProvedByItsLastPixel() throws IOException, ConfigException {
        ModelBoards right = new ModelBoards(BOARD, PLAIN);
        Person person = person(right).say("How many pixels", "47");
        Talk talk = new Talk(person);
        assertEquals(GuidedFitting.End.DONE, fit(talk, right), talk::text);
        assertEquals(47, config().setup().pixels());
        assertEquals(1, person.asked("A single pixel should be lit"));
        assertFalse(talk.text().contains("Is a pixel lit anywhere"), talk::text);
        for (String wrong : List.of("46", "48", "60", "1")) {
            Files.delete(file);
            ModelBoards boards = new ModelBoards(BOARD, PLAIN);
            Talk corrected = new Talk(person(boards).say("How many pixels", wrong));
            assertEquals(GuidedFitting.End.DONE, fit(corrected, boards), corrected::text);
            assertEquals(47, config().setup().pixels(), corrected::text);
        }
    }

    @Test
    void theSearchSaysHowFarItHasGot() throws IOException {
        ModelBoards boards = new ModelBoards(BOARD, PLAIN);
        Person person = person(boards);
        Talk talk = new Talk(person);
        assertEquals(GuidedFitting.End.DONE, fit(talk, boards), talk::text);
        assertEquals(1, person.asked("A mark is lit. Is a pixel lit anywhere on the strip? (up to 300 can be driven)"));
        assertEquals(1, person.asked("The mark has moved. Is a pixel lit anywhere on the strip? (so far: 8 or more)"));
        assertTrue(
                talk.text().contains("(so far: 47 to 48 pixels)") || talk.text().contains("(so far: 46 to "),
                talk::text);
        assertTrue(talk.text().contains("(Question 2, mostly of 3 to 5.)"), talk::text);
    }

    @Test
    void whatPeopleTypeIsUnderstood() throws IOException, ConfigException {
        ModelBoards boards = new ModelBoards(BOARD, PLAIN);
        Person person = person(boards)
                .say("Which MQTT broker", "localhost:1884")
                .say("What fuse", "T3.15A")
                .say("How many mA does the strongest", "")
                .slips((question, answer) -> question.startsWith("Dimmer 2") ? "done" : answer);
        Talk talk = new Talk(person);
        assertEquals(GuidedFitting.End.DONE, fit(talk, boards), talk::text);
        assertEquals("mqtt://localhost:1884", config().broker().url().toString());
        assertTrue(Files.readString(file).contains("fuse_A = 3.15"), talk::text);
        assertEquals(0, person.asked("Dimmer 3"));
        assertEquals(List.of("work"), config().fitting().dimmerNames());
    }

    @Test
    void theCornersOfAFrameAreFoundWithAMark() throws IOException, ConfigException {
        ModelBoards boards = new ModelBoards(BOARD, PLAIN);
        Person person = person(boards)
                .say("What does the strip look like", "2")
                .say("Pixel 0 is lit", "3")
                .say("A band runs along the whole strip", "n")
                .say("How many sides", "3")
                .say("Do you want the live page", "y")
                .corners(10, 30);
        Talk talk = new Talk(person);
        assertEquals(GuidedFitting.End.DONE, fit(talk, boards), talk::text);
        assertEquals(
                new Mounting(
                        Mounting.Shape.FRAME,
                        List.of(10, 20, 17),
                        Mounting.Corner.TOP_RIGHT,
                        false,
                        Mounting.SeenAs.DOTS,
                        Map.of("work", Mounting.Side.ABOVE)),
                config().mounting());
        assertTrue(config().page().isPresent());
    }

    @Test
    void withoutAMeterItReckonsWithMore() throws IOException, ConfigException {
        ModelBoards boards = new ModelBoards(BOARD, PLAIN);
        Talk talk = new Talk(person(boards).say("Is a meter connected", "n"));
        assertEquals(GuidedFitting.End.DONE, fit(talk, boards), talk::text);
        assertEquals(List.of(20_000, 20_000, 20_000), config().setup().channelMicroamps());
    }

    @Test
    void aPlainColourStripAndAWhiteLight() throws IOException, ConfigException {
        ModelBoards boards = new ModelBoards(BOARD, PLAIN);
        Person person = new Person(boards)
                .wants("glow", 3, 9)
                .hung(4, WORK)
                .hung(1, new Findings.DimmerUse(Findings.Hanging.BLUE, "", 300))
                .hung(2, new Findings.DimmerUse(Findings.Hanging.RED, "", 310))
                .hung(3, new Findings.DimmerUse(Findings.Hanging.GREEN, "", 290));
        Talk talk = new Talk(person);
        assertEquals(GuidedFitting.End.DONE, fit(talk, boards), talk::text);
        String text = Files.readString(file);
        assertTrue(text.contains("glow2 = { channels = [2, 3, 1], volts = 24, full_mA = 310"), text);
        assertTrue(text.contains("work = { channel = 4, volts = 24, full_mA = 800"), text);
        assertEquals(List.of("glow2", "work"), config().fitting().dimmerNames());
    }
}
