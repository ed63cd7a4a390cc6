package dev.lampwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.shelf.Statuses;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Axe;
import dev.lampwright.testing.Browser;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.upkeep.Machine;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.openqa.selenium.Keys;

/**
 * The shelf in a real browser, with rigs of this process and of another computer. Screenshots go to the folder of the system property
 * {@code pictures}. Source for accessibility: WCAG 2.2, levels A and AA, as far as axe-core (Deque Systems) can check it.
 */
@Timeout(120)
class ShelfPageIT {
    private static Mosquitto broker;
    private static ShelfRig rig;
    private static Browser browser;

    @BeforeAll
    static void start() {
        broker = Mosquitto.start();
        rig = new ShelfRig(broker.url(), 60, "", List.of("alder", "birch", "rowan", "hazel"));
        rig.reject("oak", "rigs/oak.toml line 3: is not valid");
        broker.publish("hall/oak/status", stoppedHere("oak"), true);
        browser = Browser.start();
        browser.resize(1100, 900, 1);
        tell("alder", "RUN", 0.42, 720, "");
        tell("birch", "ALARM", 0.1, 0, "nozzle heater does not get hot");
        tell("rowan", "REST", 0, 0, "");
        tell("hazel", "END", 1, 0, "");
        elsewhere("elm", PrinterState.PRINTING, AlarmState.NORMAL);
    }

    @AfterAll
    static void stop() {
        browser.close();
        rig.close();
        broker.close();
    }

    /** What a rig of this computer reported last, before its file was rejected: it is on the shelf once. */
    private static String stoppedHere(String name) {
        String status = "{\"program\":\"lampwright\",\"online\":false,\"why\":\"stopped\",\"version\":\"1\","
                + "\"host\":\"%s\",\"rig\":\"%s\",\"run\":\"f0\"}";
        return status.formatted(Machine.name(), name);
    }

    private static void tell(String name, String phase, double done, int left, String words) {
        broker.publish(
                "shop/" + name + "/job",
                "{\"phase\":\"%s\",\"done\":%s,\"left\":%d,\"words\":\"%s\"}".formatted(phase, done, left, words),
                true);
    }

    private static void elsewhere(String name, PrinterState state, AlarmState alarm) {
        broker.publish("hall/" + name + "/status", Statuses.of(name, state, alarm, "e1", Instant.now(), 300), true);
    }

    private static String names() {
        return String.valueOf(
                browser.run(
                        "return [...document.querySelectorAll('.rig .words .name')].map(e => e.textContent.trim()).join(', ')"));
    }

    private static void awaitNames(String names) {
        Await.until(() -> names + "; there are " + names(), () -> names().equals(names), Duration.ofSeconds(20));
    }

    private static void open() {
        browser.open(rig.url());
        elsewhere("elm", PrinterState.PRINTING, AlarmState.NORMAL);
        awaitNames("birch, oak, hazel, elm on shed, alder, rowan");
    }

    private static void picture(String name) throws IOException {
        String folder = System.getProperty("pictures");
        if (folder != null) {
            Files.createDirectories(Path.of(folder));
            Files.write(Path.of(folder, name + ".png"), Files.readAllBytes(browser.picture()));
        }
    }

    @Test
    void whoNeedsAPersonComesFirstAndEachLeadsToItsPage() throws IOException {
        open();
        assertEquals("6 rigs · 3 need you · 2 at work", browser.text("sum"));
        assertEquals("3 need you · All rigs", browser.driver().getTitle());
        String first = browser.all(".rig").get(0).getText();
        assertTrue(first.contains("Fault") && first.contains("nozzle heater does not get hot"), first);
        Await.until("the strip of the fault, drawn red", () -> isRed("birch"));
        picture("shelf-dark");
        tell("rowan", "ALARM", 0, 0, "door open");
        awaitNames("birch, rowan, oak, hazel, elm on shed, alder");
        assertEquals("rowan: Fault", browser.text("news"));
        tell("rowan", "REST", 0, 0, "");
        browser.all("a.rig").get(0).sendKeys(Keys.ENTER);
        Await.until("its page", () -> browser.text("fault-words").equals("nozzle heater does not get hot"));
        browser.byId("acknowledge").sendKeys(Keys.ENTER);
        Await.until(
                "the fault to be acknowledged",
                () -> browser.text("fault-title").equals("Fault, acknowledged"));
        browser.byId("up").sendKeys(Keys.ENTER);
        Await.until(
                "the shelf", () -> browser.all("[data-standing=acknowledged]").size() >= 1);
        assertEquals(
                "http://shed:7118/",
                browser.run(
                        "return [...document.querySelectorAll('a.rig')].find(a => a.textContent.includes('elm')).href"));
        broker.publish("hall/elm/status", Statuses.gone("elm", "lost"), true);
        Await.until(
                "a rig that is lost, whose status names no colours",
                () -> browser.all("[data-standing=lost]").size() == 1);
        assertEquals(List.of(), browser.complaints());
    }

    /** Those of another computer, which are drawn as those of this one. */
    @Test
    void eachOfSeveralPrintersOnOneStripIsShownWhoNeedsAPersonFirst() throws IOException {
        open();
        broker.publish("hall/bench/status", Statuses.ofSeveral("bench", Instant.now()), true);
        try {
            awaitNames("bench on shed, birch, oak, hazel, elm on shed, alder, rowan");
            assertEquals("birch on bench: Fault", browser.text("news"));
            assertEquals("7 rigs · 4 need you · 5 at work", browser.text("sum"));
            assertEquals(
                    "birch Fault door open | hazel Heating 60 % | rowan Printing 90 % | alder Printing 42 %",
                    String.valueOf(browser.run("""
                            return [...document.querySelectorAll('.rig .printer')].map((printer) =>
                              ['name', 'state', 'note'].map((part) => printer.querySelector('.' + part).textContent)
                                .slice(0, printer.dataset.stands === 'fault' ? 3 : 2).join(' ')).join(' | ')""")));
            assertTrue(browser.all(".rig").get(0).getText().contains("2 min"), "when rowan is ready");
            picture("shelf-printers");
            browser.resize(360, 740, 1);
            assertEquals(
                    true, browser.run("return document.documentElement.scrollWidth <= 360"), "no scrolling sideways");
            picture("shelf-printers-phone");
        } finally {
            browser.resize(1100, 900, 1);
            broker.publish("hall/bench/status", "", true);
            awaitNames("birch, oak, hazel, elm on shed, alder, rowan");
        }
    }

    /** By the pixels that are drawn. */
    private static boolean isRed(String name) {
        Object rgb = browser.run("""
                const box = [...document.querySelectorAll('.rig')].find(e => e.textContent.includes(arguments[0]));
                const canvas = box.querySelector('canvas.core');
                const copy = new OffscreenCanvas(canvas.width, 1).getContext('2d', { willReadFrequently: true });
                copy.drawImage(canvas, 0, 0);
                const data = copy.getImageData(0, 0, canvas.width, 1).data;
                let red = 0, green = 0, blue = 0;
                for (let i = 0; i < data.length; i += 4) { red += data[i]; green += data[i + 1]; blue += data[i + 2]; }
                return red > 200 && red > 1.5 * green && red > 1.5 * blue;
                """, name);
        return Boolean.TRUE.equals(rgb);
    }

    @Test
    void everybodyCanUseIt() throws IOException {
        List<String> found = new ArrayList<>();
        for (String scheme : List.of("dark", "light")) {
            browser.prefer(scheme, false);
            browser.resize(360, 740, 1);
            browser.open(rig.url());
            broker.publish("hall/bench/status", Statuses.ofSeveral("bench", Instant.now()), true);
            Await.until("the rigs", () -> browser.all(".rig").size() >= 6);
            assertEquals(
                    true, browser.run("return document.documentElement.scrollWidth <= 360"), "no scrolling sideways");
            found.addAll(Axe.violations(browser, scheme, 16));
            picture("shelf-phone-" + scheme);
        }
        broker.publish("hall/bench/status", "", true);
        browser.prefer("dark", false);
        browser.resize(1100, 900, 1);
        assertEquals(List.of(), found);
    }

    @Test
    void itSpeaksTheBrowsersLanguage() {
        browser.speak("de-DE");
        try {
            browser.open(rig.url());
            Await.until("the heading", () -> browser.all("h1").get(0).getText().equals("Alle Rigs"));
            Await.until("words about a rig", () -> browser.byId("sum").getText().contains("bei der Arbeit"));
        } finally {
            browser.speak("en-GB");
        }
    }
}
