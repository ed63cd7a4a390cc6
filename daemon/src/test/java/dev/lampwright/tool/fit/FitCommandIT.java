package dev.lampwright.tool.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Child;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.PtyController;
import dev.lampwright.testing.RunningDaemon;
import dev.lampwright.tool.plan.Plan;
import dev.lampwright.tool.plan.PlannedLights;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The jar as a process at a terminal, and a controller behind a serial device node, with a strip of unknown properties. */
class FitCommandIT {
    private static final String CTRL_C = "\u0003";
    private static final Mosquitto.Account ACCOUNT = new Mosquitto.Account("alder-lights", "workshop");

    @TempDir
    private Path folder;

    private PtyController pty;
    private Path file;
    private List<String> command;

    @BeforeEach
    void plugIn() {
        pty = PtyController.pluggedIn(folder);
        file = folder.resolve("alder.toml");
        command = RunningDaemon.command(
                List.of("-XX:TieredStopAtLevel=1"),
                "fit",
                file.toString(),
                "--port",
                pty.port().toString());
    }

    @AfterEach
    void unplug() {
        pty.close();
    }

    private int fit(Person person, int stopAt, List<String> said) throws IOException, InterruptedException {
        try (FitTerminal terminal = new FitTerminal(command)) {
            int status = terminal.talk((count, lines) -> {
                String answer = person.answer(lines);
                return count == stopAt ? CTRL_C : answer + "\n";
            });
            said.add(terminal.text());
            return status;
        }
    }

    @Test
    void findsOrderLengthAndWhiteAndGoesOnAfterBeingStopped()
            throws IOException, InterruptedException, ConfigException {
        Files.writeString(folder.resolve("password"), ACCOUNT.password());
        try (Mosquitto mosquitto = Mosquitto.startWith(ACCOUNT)) {
            mosquitto.publish("shop/alder/heat", "{\"plate\": {\"now\": 59.8, \"set\": 60}}", true);
            findsAll(mosquitto.url().toString());
        }
    }

    private Person person(Eyes eyes, String broker) {
        return new Person(eyes)
                .wants("bed", 40, 12)
                .say("Which MQTT broker", broker)
                .say("What is lampwright's user name there", ACCOUNT.username())
                .say("Which file holds the password", folder.resolve("password").toString())
                .say("Should lampwright listen", "y")
                .say("For how many seconds", "2");
    }

    private void findsAll(String broker) throws IOException, InterruptedException, ConfigException {
        StripModel strip = new StripModel("GRWB", 71, List.of(11.0, 12.0, 16.0, 9.0), 0.7);
        RecordedEyes eyes = new RecordedEyes(pty.recording(), strip);
        List<String> said = new ArrayList<>();
        int stopAt = 15;
        assertEquals(0, fit(person(eyes, broker), stopAt, said), () -> said.toString());
        Await.until("darkness", eyes::dark);
        assertTrue(Files.exists(folder.resolve("alder.toml.fit")), said.get(0));
        assertFalse(Files.exists(file));
        assertEquals(0, fit(person(eyes, broker), -1, said), () -> said.toString());
        Config config = ConfigFile.read(file);
        assertEquals(List.of("shop/alder/heat"), List.copyOf(config.bindings().topicFilters()), said.get(1));
        assertEquals("GRWB", config.setup().order(), said.get(1));
        assertEquals(71, config.setup().pixels(), said.get(1));
        assertEquals("40-12", config.fitting().zones().get("bed").toString(), said.get(1));
        assertEquals(16_000, config.setup().channelMicroamps().get(2), 200, said.get(1));
        assertFalse(said.get(1).contains("What feeds the strip"), "what was answered is not asked again");
        assertTrue(said.get(1).contains("lampwright check " + file + " says:"), said.get(1));
        assertTrue(said.get(1).contains("lampwright plan " + file + " says, in short:"), said.get(1));
        PlannedLights lights = new PlannedLights(
                "alder.toml",
                config.setup(),
                config.framesPerSecond(),
                config.controller().baud(),
                config.wiring());
        for (String line : Plan.of(lights, List.of()).lines()) {
            assertTrue(said.get(1).contains(line), line + " is not in " + said.get(1));
        }
        assertEquals(0, eyes.dimmed(), "the controller had nothing to clamp");
        Await.until("darkness", eyes::dark);
    }

    @Test
    void aCableThatIsPulledMeanwhileIsToldAndWaitedFor() throws IOException, InterruptedException, ConfigException {
        StripModel strip = new StripModel("RBG", 23, List.of(11.0, 12.0, 9.0), 0.7);
        RecordedEyes eyes = new RecordedEyes(pty.recording(), strip);
        Person person = new Person(eyes).say("Is a meter connected", "n");
        try (FitTerminal terminal = new FitTerminal(command)) {
            int status = terminal.talk((count, lines) -> {
                String answer = person.answer(lines);
                if (count == 10) {
                    pty.unplug();
                    plugOnceMissed(terminal);
                }
                return answer + "\n";
            });
            assertEquals(0, status, terminal::text);
            assertTrue(terminal.text().contains("The light waits: "), terminal::text);
            assertTrue(terminal.text().contains("It is back."), terminal::text);
        }
        Config config = ConfigFile.read(file);
        assertEquals("RBG", config.setup().order());
        assertEquals(23, config.setup().pixels());
    }

    @Test
    void aFileThatIsThereIsChangedInOneLine() throws IOException, InterruptedException {
        String text = """
                # my own file
                [broker]
                url = "mqtt://127.0.0.1:1"
                [printer.state]
                topic = "shop/alder/job"
                fault = ["ALARM*"]
                [controller]
                port = "%s"
                [strip]
                pixels = 23
                order = "RBG"
                [zones]
                bed = "0-9"   # under the glass
                """.formatted(pty.port());
        Files.writeString(file, text);
        StripModel strip = new StripModel("RBG", 23, List.of(11.0, 12.0, 9.0), 0.7);
        Person person = new Person(new RecordedEyes(pty.recording(), strip))
                .say("What do you want to fit?", "1", "")
                .say("Write this", "y")
                .moves("bed", 12, 4);
        List<String> said = new ArrayList<>();
        assertEquals(0, fit(person, -1, said), said::toString);
        assertEquals(text.replace("\"0-9\"   #", "\"12-4\"  #"), Files.readString(file), said.get(0));
        assertEquals(text, Files.readString(folder.resolve("alder.toml.old-1")));
        assertTrue(said.get(0).contains("-bed = \"0-9\"   # under the glass"), said.get(0));
        assertTrue(said.get(0).contains("lampwright check " + file + " says:"), said.get(0));
    }

    /** Plugs the controller in again as soon as the missing light is noticed. */
    private void plugOnceMissed(FitTerminal terminal) {
        Thread thread = new Thread(() -> {
            Await.until("words", () -> terminal.text().contains("The light waits: "));
            pty.plug();
        });
        thread.setDaemon(true);
        thread.start();
    }

    @Test
    void answersThatEndEarlyAreAFailure() throws IOException, InterruptedException {
        List<String> deaf = RunningDaemon.command(
                List.of(),
                "fit",
                file.toString(),
                "--port",
                folder.resolve("none").toString());
        Child child = Child.run(List.of("sh", "-c", String.join(" ", deaf) + " </dev/null"));
        assertEquals(1, child.status(), child.output());
        assertTrue(child.output().contains("No controller answers."), child.output());
        assertTrue(
                child.output().endsWith("Stopped; nothing was lit, and nothing is kept." + System.lineSeparator()),
                child.output());
    }
}
