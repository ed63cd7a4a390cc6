package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Browser;
import dev.lampwright.testing.Child;
import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.PtyController;
import dev.lampwright.testing.RunningDaemon;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Two printers on one strip, from their messages to the controller, the status, the metrics, the live page and what people ask for. */
@Tag("alone")
@Timeout(90)
class ViewsIT {
    private static final Duration SOON = Duration.ofSeconds(20);

    @TempDir
    private Path folder;

    private static String text(String broker, Path port, int metrics, int page) {
        return """
                [broker]
                url = "%s"
                [controller]
                port = "%s"
                baud = 500000
                [strip]
                pixels = 30
                [supply]
                ceiling_mA = 3000
                [metrics]
                port = %d
                [page]
                port = %d
                [printers.alder.state]
                topic = "shop/alder/job"
                idle = ["READY"]
                printing = ["RUN"]
                fault = ["ALARM*"]
                [printers.alder.readings]
                job.left_s = { topic = "shop/alder/left" }
                [printers.birch.state]
                topic = "shop/birch/job"
                idle = ["READY"]
                printing = ["RUN"]
                fault = ["ALARM*"]
                [looks]
                idle.layers = [{ colour = "#202020" }]
                printing.layers = [{ colour = "#00ff00" }]
                fault.layers = [{ colour = "#ff0000" }]
                fault-seen.layers = [{ colour = "#400000" }]
                [[cues]]
                alarm = "acknowledged"
                look = "fault-seen"
                fade_s = 0
                [[cues]]
                state = "idle"
                look = "idle"
                fade_s = 0
                [[cues]]
                state = "printing"
                look = "printing"
                fade_s = 0
                """.formatted(broker, port, metrics, page);
    }

    private static JsonNode status(Mosquitto broker) throws IOException {
        return new ObjectMapper().readTree(broker.read("lampwright/status"));
    }

    private static void awaitPicture(PtyController controller, RunningDaemon daemon, int alder, int birch) {
        Picture picture = Picture.all(alder).bar(15, 29, 1, birch);
        Await.until(
                () -> picture + "; log " + daemon.log(),
                () -> controller.recording().lastIs(entry -> entry.fromHost() && picture.isOn(entry.strip())),
                SOON);
    }

    /** Waits until the live page says something about each printer. */
    private static void awaitWords(Browser browser, String words) {
        String script = "return [...document.querySelectorAll('#printers li')].map(e => e.textContent).join(' | ')";
        Await.until(
                () -> words + "; the page says " + browser.run(script),
                () -> browser.run(script).toString().matches(words),
                SOON);
    }

    private static Child tell(Path config, String... words) throws IOException, InterruptedException {
        String[] all = new String[words.length + 3];
        all[0] = "tell";
        all[1] = "--config";
        all[2] = config.toString();
        System.arraycopy(words, 0, all, 3, words.length);
        return Child.run(RunningDaemon.command(List.of(), all));
    }

    @Test
    void twoPrintersHaveTheirOwnLightFaultAndAcknowledgement() throws IOException, InterruptedException {
        int metrics = FreePort.find();
        int page = FreePort.find();
        try (Mosquitto broker = Mosquitto.start();
                PtyController controller = PtyController.pluggedIn(folder)) {
            Path config = Files.writeString(
                    folder.resolve("two.toml"), text(broker.url().toString(), controller.port(), metrics, page));
            try (RunningDaemon daemon = RunningDaemon.start(config);
                    Browser browser = Browser.start()) {
                broker.publish("shop/alder/job", "RUN", true);
                broker.publish("shop/birch/job", "READY", true);
                awaitPicture(controller, daemon, 0x00ff00, 0x202020);
                broker.publish("shop/alder/left", "600", true);
                Await.until("the page's port", () -> FreePort.isListening(page));
                browser.open("http://127.0.0.1:" + page + "/");
                awaitWords(browser, "alder.*Printing: about 10 min.* \\| birch.*Idle.*");
                broker.publish("shop/birch/job", "ALARM door", true);
                awaitPicture(controller, daemon, 0x00ff00, 0xff0000);
                awaitWords(browser, "alder.*Printing.* \\| birch.*Fault.*");
                Child acknowledged = tell(config, "acknowledge");
                assertEquals(
                        "fault of birch acknowledged", acknowledged.output().strip());
                awaitPicture(controller, daemon, 0x00ff00, 0x400000);
                Await.until(
                        () -> "the status, " + broker.read("lampwright/status"),
                        () -> broker.read("lampwright/status").contains("acknowledged"),
                        SOON);
                JsonNode printers = status(broker).path("printers");
                assertEquals("printing", printers.path("alder").path("state").asText());
                assertEquals("normal", printers.path("alder").path("alarm").asText());
                assertEquals("fault", printers.path("birch").path("state").asText());
                assertEquals("fault-seen", printers.path("birch").path("look").asText());
                broker.publish("shop/alder/job", "ALARM tip", true);
                awaitPicture(controller, daemon, 0xff0000, 0x400000);
                String told = HttpClient.newHttpClient()
                        .send(
                                HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + metrics + "/metrics"))
                                        .build(),
                                BodyHandlers.ofString())
                        .body();
                for (String line : List.of(
                        "lampwright_printer_state{printer=\"alder\",state=\"fault\"} 1.0",
                        "lampwright_printer_alarm{printer=\"birch\",state=\"acknowledged\"} 1.0")) {
                    assertTrue(told.lines().anyMatch(line::equals), () -> line + " in " + told);
                }
            }
        }
    }
}
