package dev.lampwright.tool.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.demo.MemoryController;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.Mosquitto;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What goes wrong while somebody fits in a browser: the page says what and what to do, nothing is lost, and the fitting carries on. */
@Timeout(200)
class FitTroubleIT extends FitPageBench {
    private static final StripModel STRIP = new StripModel("RBG", 23, List.of(11.0, 12.0, 9.0), 0.7);
    private static final String WRONG = "a ladder in the yard";

    private RecordedEyes eyes() {
        return new RecordedEyes(pty.recording(), STRIP);
    }

    private Path answers() {
        return folder.resolve("alder.toml.fit");
    }

    /** Leaves the answers of somebody who has come as far as a question, at the same controller. */
    private void answeredUntil(String question) throws IOException {
        ModelBoards boards = new ModelBoards(MemoryController.BOARD, STRIP);
        Person seeing = new Person(boards).say("Is a meter connected", "n");
        Talk talk = new Talk(seeing)
                .typing((count, answer) -> seeing.asked(question) > 0 ? Optional.empty() : Optional.of(answer));
        new GuidedFitting(file, talk, boards, PrinterFinder.BY_HAND, new TestKnowledge(file)).run();
        Files.writeString(answers(), Files.readString(answers()).replace(" memory\"", " " + pty.port() + "\""));
    }

    private static boolean says(String element, String... texts) {
        String words = browser.text(element);
        return List.of(texts).stream().allMatch(words::contains);
    }

    @Test
    void aBoardThatIsUnpluggedInTheMiddleOfAStepIsWaitedFor() throws IOException {
        RecordedEyes eyes = eyes();
        start();
        open();
        PageHands hands = new PageHands(browser, person(eyes, ""));
        hands.press("#begin");
        hands.answer(9);
        hands.next(9);
        String question = browser.text("question");
        String kept = Files.readString(answers());
        Await.until("light", () -> !eyes.dark());
        pty.unplug();
        Await.until(
                () -> "the missing port: " + hands.view(),
                () -> says("missing", "The light waits.", pty.port().toString(), "Plug the controller in"),
                LONG);
        assertEquals(question, browser.text("question"));
        pty.plug();
        Await.until(
                () -> "the light: " + hands.view(),
                () -> browser.text("missing").isEmpty(),
                LONG);
        assertEquals(question, browser.text("question"));
        assertEquals(kept, Files.readString(answers()));
        hands.answer(4);
        String more = Files.readString(answers());
        assertTrue(more.length() > kept.length(), more);
        assertTrue(
                more.startsWith(kept.substring(0, kept.lastIndexOf('"') + 1)), () -> more + " has not all of " + kept);
    }

    /** Somebody who answers before the page has noticed is asked again: what they saw may have been darkness. */
    @Test
    void anAnswerGivenInTheDarkIsNotUsed() throws IOException {
        RecordedEyes eyes = eyes();
        start();
        open();
        PageHands hands = new PageHands(browser, person(eyes, ""));
        hands.press("#begin");
        hands.answer(9);
        long number = hands.next(9).path("talk").path("number").asLong();
        String kept = Files.readString(answers());
        pty.unplug();
        hands.answer(1);
        Await.until(
                () -> "the missing port: " + hands.view(),
                () -> says("talk", "The light waits.", pty.port().toString(), "Plug the controller in"),
                LONG);
        pty.plug();
        hands.next(number);
        assertTrue(says("said", "That answer was not used.", "It is back."), browser.text("said"));
        assertEquals(kept, Files.readString(answers()));
    }

    @Test
    void aPortThatAnotherProgramUsesIsNamedAndTriedAgain() throws IOException {
        Process other = new ProcessBuilder("flock", pty.port().toRealPath().toString(), "sleep", "120").start();
        try {
            start();
            open();
            PageHands hands = new PageHands(browser, person(eyes(), ""));
            hands.press("#begin");
            hands.answer(1);
            hands.next(1);
            assertEquals(pty.port() + " is in use by another program. End that program.", browser.text("said"));
        } finally {
            other.descendants().forEach(ProcessHandle::destroy);
            other.destroy();
        }
        Await.until("the other program's end", () -> !other.isAlive());
        PageHands hands = new PageHands(browser, person(eyes(), ""));
        hands.answer(1);
        Await.until(
                () -> "the next step: " + hands.view(),
                () -> browser.text("question").startsWith("Is something lit"),
                LONG);
    }

    @Test
    void aRefusedLoginIsTypedAgainAndThePasswordIsOnlyInItsFile() throws IOException {
        answeredUntil("Which MQTT broker");
        try (Mosquitto mosquitto = Mosquitto.startWith(ACCOUNT)) {
            mosquitto.publish("shop/alder/heat", "{\"plate\": {\"now\": 59.8, \"set\": 60}}", true);
            start();
            open();
            Person person = person(eyes(), mosquitto.url().toString()).say("Lampwright could not listen", "1");
            PageHands hands = new PageHands(browser, person).withPassword(WRONG, ACCOUNT.password());
            hands.press("#begin");
            answerUntil(hands, "listen_failed");
            assertTrue(
                    says("said", "The broker at " + mosquitto.url() + " refused the login.", "password"),
                    browser.text("said"));
            answerUntil(hands, "page_wanted");
            assertTrue(says("said", "shop/alder/heat"), browser.text("said"));
        }
        Path password = folder.resolve("alder.broker-password");
        assertEquals(ACCOUNT.password() + "\n", Files.readString(password));
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(password)));
        requireSecret(ACCOUNT.password());
        requireSecret(WRONG);
    }

    private void requireSecret(String password) throws IOException {
        String page = String.valueOf(browser.run("return document.documentElement.outerHTML"
                + " + [...document.querySelectorAll('input, textarea')].map((input) => input.value)"
                + " + JSON.stringify({ ...sessionStorage, ...localStorage })"));
        assertFalse(page.contains(password), page);
        assertFalse(
                daemon.log().toString().contains(password), () -> daemon.log().toString());
        assertFalse(Files.readString(answers()).contains(password));
    }

    @Test
    void aWrongAddressOfTheBrokerIsTypedAgain() throws IOException {
        answeredUntil("Which MQTT broker");
        String wrong = "mqtt://127.0.0.1:" + FreePort.find();
        try (Mosquitto mosquitto = Mosquitto.start()) {
            mosquitto.publish("shop/alder/heat", "{\"plate\": {\"now\": 59.8, \"set\": 60}}", true);
            start();
            open();
            Person person = person(eyes(), "")
                    .say("Which MQTT broker", wrong, mosquitto.url().toString())
                    .say("What is lampwright's user name there", "")
                    .say("Lampwright could not listen", "2");
            PageHands hands = new PageHands(browser, person);
            hands.press("#begin");
            answerUntil(hands, "listen_failed");
            assertEquals(
                    "Nothing listens at " + wrong + ". Start the broker, or check the address and the port.",
                    lastLine(browser.text("said")));
            answerUntil(hands, "page_wanted");
            assertTrue(says("said", "shop/alder/heat"), browser.text("said"));
        }
    }

    /** The words of the link within those of the page, and a line of a file that stays as it is. */
    @Test
    void troubleIsSaidInTheLanguageOfThePage() throws IOException {
        browser.speak("de-DE");
        try {
            start();
            open();
            PageHands hands =
                    new PageHands(browser, new Person(eyes()).say("Press Enter to look again", "/dev/attic", ""));
            hands.press("#begin");
            hands.answer(1);
            hands.next(1);
            assertTrue(
                    says("said", "Den Anschluss /dev/attic gibt es nicht. Schließ den Controller an"),
                    browser.text("said"));
            assertEquals(0, browser.all("#said [lang]").size(), "nothing of it is in English");
        } finally {
            browser.speak("en-GB");
        }
    }

    private static String lastLine(String text) {
        return text.substring(text.lastIndexOf('\n') + 1);
    }

    /** Answers until a question is asked, by its code. */
    private static void answerUntil(PageHands hands, String code) {
        int count = 0;
        while (!hands.next(0).at("/talk/question/code").asText().equals(code)) {
            assertTrue(count++ < 20, () -> "never asked: " + code + " in " + hands.view());
            long number = hands.view().at("/talk/number").asLong();
            hands.answer(1);
            hands.next(number);
        }
    }
}
