package dev.lampwright.tool.fit;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.Browser;
import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.PtyController;
import dev.lampwright.testing.RunningDaemon;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A browser, a controller behind a serial device node, and the real jar, whose page offers the fitting. */
abstract class FitPageBench {
    static final Mosquitto.Account ACCOUNT = new Mosquitto.Account("alder-lights", "workshop under the stairs");

    static final Duration LONG = Duration.ofSeconds(30);

    static Browser browser;

    @TempDir
    Path folder;

    PtyController pty;
    Path file;
    int port;
    RunningDaemon daemon;

    @BeforeAll
    static void openABrowser() {
        browser = Browser.start();
    }

    @AfterAll
    static void closeIt() {
        browser.close();
    }

    @BeforeEach
    void plugIn() {
        pty = PtyController.pluggedIn(folder);
        file = folder.resolve("alder.toml");
        port = FreePort.find();
        browser.resize(1280, 900, 1);
    }

    @AfterEach
    void unplug() {
        if (daemon != null) {
            daemon.close();
        }
        pty.close();
    }

    void start() throws IOException {
        daemon = RunningDaemon.start(new ProcessBuilder(
                        RunningDaemon.command(List.of(), "run", "--config", file.toString(), "--fit=" + port))
                .redirectErrorStream(true));
        Await.until("the page", () -> FreePort.isListening(port));
    }

    void open() {
        browser.open("http://127.0.0.1:" + port + "/fit.html");
        Await.until("the beginning", () -> browser.byId("begin").isDisplayed());
    }

    Person person(RecordedEyes eyes, String broker) {
        return new Person(eyes)
                .say("Press Enter to look again", pty.port().toString())
                .say("Which MQTT broker", broker)
                .say("What is lampwright's user name there", ACCOUNT.username())
                .say("Should lampwright listen", "y")
                .say("Is a meter connected", "n")
                .say("Do you want the live page", "y")
                .say("For how many seconds", "2");
    }
}
