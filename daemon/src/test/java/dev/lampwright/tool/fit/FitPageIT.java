package dev.lampwright.tool.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.page.FirstToken;
import dev.lampwright.page.PageAddress;
import dev.lampwright.page.QrReading;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Axe;
import dev.lampwright.testing.Browser;
import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.RunningDaemon;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The fitting in a real browser, with the real jar, a controller behind a serial device node, and a real broker. */
@Timeout(400)
class FitPageIT extends FitPageBench {
    private static final String MAY_EDIT = """
            const done = arguments[arguments.length - 1];
            fetch('rights').then((response) => response.json()).then((rights) => done(rights.may_edit), done);
            """;

    private static final String ENTER = """
            const done = arguments[arguments.length - 1];
            fetch('enter', { method: 'POST', headers: { 'Content-Type': 'application/json' },
              body: JSON.stringify({ token: arguments[0] }) }).then((response) => done(response.status), done);
            """;

    private static void requireUsable(String where, List<String> found) {
        assertEquals(
                360L, browser.run("return document.documentElement.scrollWidth"), "no scrolling sideways: " + where);
        found.addAll(Axe.violations(browser, where, 11));
    }

    /** With every step that asks something, and everything that the page can draw. */
    @Test
    @Tag("long")
    void everybodyCanUseEachKindOfQuestionOnAPhone() throws IOException {
        StripModel strip = new StripModel("GRB", 12, List.of(11.0, 12.0, 16.0), 0.7);
        RecordedEyes eyes = new RecordedEyes(pty.recording(), strip);
        browser.resize(360, 740, 1);
        try (Mosquitto mosquitto = Mosquitto.startWith(ACCOUNT)) {
            start();
            open();
            List<String> found = new ArrayList<>();
            requireUsable("beginning", found);
            Person person = person(eyes, mosquitto.url().toString())
                    .wants("bed", 2, 6)
                    .corners(6)
                    .hung(1, new Findings.DimmerUse(Findings.Hanging.WHITE, "work", 800))
                    .say("What does the strip look like", "2")
                    .say("Pixel 0 is lit", "1")
                    .say("A band runs along the whole strip", "y")
                    .say("How many sides", "2")
                    .say("Is a meter connected", "y");
            Set<String> kinds = new TreeSet<>();
            PageHands hands = new PageHands(browser, person)
                    .withPassword(ACCOUNT.password())
                    .looking(question -> {
                        if (kinds.add(question.path("kind").asText())) {
                            requireUsable(question.path("code").asText(), found);
                        }
                    });
            hands.press("#begin");
            hands.answer(200);
            Await.until(
                    () -> "the end: " + hands.view(), () -> browser.byId("end").isDisplayed(), LONG);
            requireUsable("end", found);
            assertEquals(List.of(), found);
            assertEquals(Set.of("choice", "corner", "enter", "number", "secret", "slider", "text", "whole"), kinds);
        }
    }

    @Test
    void fromNothingToFirstLightWithTheKeyboardAlone() throws IOException, ConfigException {
        StripModel strip = new StripModel("GRWB", 37, List.of(11.0, 12.0, 16.0, 9.0), 0.7);
        RecordedEyes eyes = new RecordedEyes(pty.recording(), strip);
        try (Mosquitto mosquitto = Mosquitto.startWith(ACCOUNT)) {
            mosquitto.publish("shop/alder/heat", "{\"plate\": {\"now\": 59.8, \"set\": 60}}", true);
            start();
            open();
            Person person = person(eyes, mosquitto.url().toString()).wants("bed", 20, 6);
            PageHands hands = new PageHands(browser, person).withPassword(ACCOUNT.password());
            hands.press("#begin");
            hands.answer(200);
            Await.until(
                    () -> "the end: " + hands.view(), () -> browser.byId("end").isDisplayed(), LONG);
            assertEquals("Your lights are fitted", browser.text("end-title"));
            Config config = ConfigFile.read(file);
            assertEquals("GRWB", config.setup().order());
            assertEquals(37, config.setup().pixels());
            assertEquals("20-6", config.fitting().zones().get("bed").toString());
            Path password = folder.resolve("alder.broker-password");
            assertEquals(ACCOUNT.password() + "\n", Files.readString(password));
            assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(password)));
            Await.until(
                    () -> "the live page: " + daemon.log(),
                    () -> browser.byId("to-light").isDisplayed(),
                    LONG);
            int before = pty.recording().size();
            Await.until("first light", LONG, () -> pty.recording().size() > before && !eyes.dark());
            hands.press("#to-light");
            Await.until("the live page", LONG, () -> browser.text("contact").equals("live"));
            assertFalse(
                    daemon.log().toString().contains(ACCOUNT.password()),
                    () -> daemon.log().toString());
            assertTrue(
                    daemon.linesWith(0, "started with").size() == 1,
                    () -> daemon.log().toString());
        }
    }

    /** As the package's service runs, and whoever installs it. Nobody types anything on the phone but answers. */
    @Test
    void aPhoneFitsByTheCodeAndStaysOnThePage() throws IOException, ConfigException {
        StripModel strip = new StripModel("GRB", 12, List.of(11.0, 12.0, 16.0), 0.7);
        RecordedEyes eyes = new RecordedEyes(pty.recording(), strip);
        Path state = Files.createDirectory(folder.resolve("state"));
        file = state.resolve("lampwright.toml");
        daemon = RunningDaemon.start(service(state, "run", "--config", folder.toString(), "--fit=" + port));
        Await.until("the page", () -> FreePort.isListening(port));
        String token = FirstToken.find(state).orElseThrow().after("").substring(1);
        String url = PageAddress.ofFirst(port).isEmpty() ? "http://0.0.0.0:" + port + "/#" + token : printed(state);
        assertTrue(url.endsWith(":" + port + "/#" + token), "the code leads to this page");
        browser.resize(360, 740, 1);
        browser.open(url);
        Await.until("the beginning", () -> browser.byId("begin").isDisplayed());
        assertEquals("", browser.run("return location.hash"), "the token is not left in the address");
        List<String> found = new ArrayList<>();
        requireUsable("beginning", found);
        Person person = person(eyes, "127.0.0.1:1")
                .say("Lampwright could not listen", "0")
                .wants("bed", 2, 6);
        PageHands hands = new PageHands(browser, person)
                .withPassword(ACCOUNT.password())
                .looking(question -> {
                    if (question.path("code").asText().equals("page_kept")) {
                        requireUsable("page_kept", found);
                    }
                });
        hands.press("#begin");
        hands.answer(200);
        Await.until(() -> "the end: " + hands.view(), () -> browser.byId("end").isDisplayed(), LONG);
        Await.until(
                () -> "the live page: " + daemon.log(),
                () -> browser.byId("to-light").isDisplayed(),
                LONG);
        requireUsable("end", found);
        assertEquals(List.of(), found);
        int before = pty.recording().size();
        Await.until("first light", LONG, () -> pty.recording().size() > before && !eyes.dark());
        hands.press("#to-light");
        Await.until("the live page", LONG, () -> browser.text("contact").equals("live"));
        assertEquals(360L, browser.run("return document.documentElement.scrollWidth"), "no scrolling sideways");
        assertEquals(true, browser.await(MAY_EDIT), "the phone may save looks and fit again");
        assertTrue(ConfigFile.read(file).page().orElseThrow().address().isAnyLocalAddress());
        assertFalse(Files.exists(state.resolve("first-token")));
        assertEquals(401L, browser.await(ENTER, token), "the first token opens nothing any more");
        assertFalse(daemon.log().toString().contains(token), () -> daemon.log().toString());
    }

    private ProcessBuilder service(Path state, String... arguments) {
        ProcessBuilder builder =
                new ProcessBuilder(RunningDaemon.command(List.of(), arguments)).redirectErrorStream(true);
        builder.environment().put("STATE_DIRECTORY", state.toString());
        return builder;
    }

    /** The address in the code that {@code lampwright page} prints. */
    private String printed(Path state) throws IOException {
        try (BufferedReader reader =
                service(state, "page", folder.toString()).start().inputReader(StandardCharsets.UTF_8)) {
            return QrReading.ofLines(reader.lines()
                    .filter(line -> line.matches("[^a-zA-Z]*[█▀▄].*"))
                    .toList());
        }
    }

    /** Answers are kept whether somebody stops or just goes away; only one at a time holds the fitting. */
    @Test
    @Tag("long")
    void itIsStoppedAndResumedAndGoesDarkWhenItsHolderIsAway() throws IOException {
        StripModel strip = new StripModel("RBG", 23, List.of(11.0, 12.0, 9.0), 0.7);
        RecordedEyes eyes = new RecordedEyes(pty.recording(), strip);
        start();
        open();
        PageHands hands = new PageHands(browser, person(eyes, "127.0.0.1:1"));
        hands.press("#begin");
        hands.answer(8);
        hands.next(8);
        Await.until("light", () -> !eyes.dark());
        browser.driver().navigate().refresh();
        Await.until("the question that was asked", () -> browser.byId("talk").isDisplayed());
        hands.press("#stop");
        Await.until("the end", () -> browser.text("end-title").equals("Stopped; the lights are dark"));
        Await.until("darkness", eyes::dark);
        assertTrue(Files.exists(folder.resolve("alder.toml.fit")));
        hands.press("#again");
        Await.until("the offer", () -> browser.text("begin").equals("Resume"));
        hands.press("#begin");
        assertEquals(
                "resume",
                hands.next(0).path("talk").path("question").path("code").asText());
        hands.press("#answers [data-key='']");
        Await.until(
                "the question after those that were answered",
                () -> browser.text("step").startsWith("Step 3 of 13"));
        Await.until("light", () -> !eyes.dark());
        try (Browser second = Browser.start()) {
            second.open("http://127.0.0.1:" + port + "/fit.html");
            Await.until(
                    "it is in use",
                    () -> second.text("start-why")
                            .equals("Someone else is fitting the lights. Wait until they have stopped."));
            assertFalse(second.byId("begin").isDisplayed());
            browser.open("about:blank");
            Await.until("darkness, once the lease has lapsed", HeldFitting.LEASE.multipliedBy(3), eyes::dark);
            Await.until("the fitting is free", LONG, () -> second.byId("begin").isDisplayed());
            new PageHands(second, person(eyes, "127.0.0.1:1")).press("#begin");
            Await.until("the answers are there", () -> second.text("question").equals("There are earlier answers."));
        }
    }

    @Test
    void aRunningDaemonLendsItsControllerAndTakesUpTheChange() throws IOException {
        StripModel strip = new StripModel("RBG", 23, List.of(11.0, 12.0, 9.0), 0.7);
        RecordedEyes eyes = new RecordedEyes(pty.recording(), strip);
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
                [page]
                port = %d
                """.formatted(pty.port(), port);
        Files.writeString(file, text);
        start();
        Await.until("the daemon's light", LONG, () -> pty.recording().size() > 0 && !eyes.dark());
        open();
        assertEquals("Change what is fitted", browser.text("start-title"));
        Person person = new Person(eyes)
                .say("What do you want to fit?", "1", "")
                .say("Write this", "y")
                .moves("bed", 12, 4);
        PageHands hands = new PageHands(browser, person);
        hands.press("#begin");
        hands.next(0);
        Await.until("darkness", eyes::dark);
        hands.answer(200);
        Await.until(() -> "the end: " + hands.view(), () -> browser.byId("end").isDisplayed(), LONG);
        assertEquals(text.replace("\"0-9\"   #", "\"12-4\"  #"), Files.readString(file));
        assertEquals(text, Files.readString(folder.resolve("alder.toml.old-1")));
        Await.until("the daemon's light", LONG, () -> !eyes.dark());
        Await.until(
                "the change",
                LONG,
                () -> !daemon.linesWith(0, "has been read again and is active").isEmpty());
    }
}
