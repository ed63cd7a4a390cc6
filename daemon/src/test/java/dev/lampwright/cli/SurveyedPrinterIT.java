package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.phrase.Phrase;
import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.tool.fit.HeardPrinter;
import dev.lampwright.tool.fit.PrinterFinder;
import dev.lampwright.tool.fit.UnheardException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The survey as a step of the guided fitting, on a real Mosquitto. */
class SurveyedPrinterIT {
    private static final Duration LONG = Duration.ofMinutes(5);

    /** Receives the messages, and asks for the end once enough was heard or said. */
    private static final class Listener implements PrinterFinder.Told {
        final List<String> lines = new ArrayList<>();
        private final long start = System.nanoTime();
        private final Duration patience;

        Listener(Duration patience) {
            this.patience = patience;
        }

        @Override
        public void say(List<Phrase> more) {
            more.stream().map(Phrase::english).forEach(lines::add);
        }

        @Override
        public boolean ended() {
            return System.nanoTime() - start > patience.toNanos();
        }
    }

    private static Map<String, String> at(String url) {
        return Map.of("url", url);
    }

    @Test
    void findsAPrinterAndWritesItForTheFile() throws ConfigException, UnheardException {
        try (Mosquitto mosquitto = Mosquitto.start()) {
            mosquitto.publish(
                    "shop/alder/heat",
                    "{\"plate\": {\"now\": 59.8, \"set\": 60}, \"tip\": {\"now\": 214.6, \"set\": 215}}",
                    true);
            Listener told = new Listener(LONG);
            String sections = new SurveyedPrinter()
                    .find(at(mosquitto.url().toString()), Duration.ofSeconds(2), told)
                    .sections();
            Config config = ConfigFile.read(
                    "[broker]\nurl = \"" + mosquitto.url() + "\"\n" + sections
                            + "[controller]\nport = \"/dev/ttyACM0\"\n[strip]\npixels = 30\n",
                    "alder.toml");
            assertEquals(
                    List.of("shop/alder/heat"), List.copyOf(config.bindings().topicFilters()));
            assertTrue(sections.contains("bed.actual_C = "), sections);
        }
    }

    @Test
    void hearsTheWordThatComesNextAtThePlaceOfTheState() throws UnheardException {
        try (Mosquitto mosquitto = Mosquitto.start()) {
            mosquitto.publish("shop/alder/job", "{\"phase\": \"PRINTING\", \"percent\": 12}", true);
            Map<String, String> broker = at(mosquitto.url().toString());
            Listener told = new Listener(LONG);
            SurveyedPrinter printer = new SurveyedPrinter();
            assertEquals(Optional.empty(), printer.nextWord(broker, "", LONG, told), "it has heard of no place yet");
            HeardPrinter heard = printer.find(broker, Duration.ofSeconds(2), told);
            assertEquals("topic = \"shop/alder/job\"\nat = \"/phase\"\n", heard.place(), told.lines.toString());
            assertEquals(
                    List.of(new HeardPrinter.Word(
                            "PRINTING",
                            List.of(Phrase.of("doing_nothing_long", "did nothing for long enough to be sure")),
                            "printing")),
                    heard.words());
            Thread pausing = new Thread(() -> {
                while (!Thread.currentThread().isInterrupted()) {
                    mosquitto.publish("shop/alder/job", "{\"phase\": \"tauko\"}", false);
                }
            });
            pausing.start();
            assertEquals(Optional.of("tauko"), printer.nextWord(broker, heard.place(), LONG, told));
            pausing.interrupt();
        }
    }

    @Test
    void endsWhenTheUserStops() throws UnheardException {
        try (Mosquitto mosquitto = Mosquitto.start()) {
            Listener told = new Listener(Duration.ZERO);
            assertEquals(
                    HeardPrinter.NOTHING,
                    new SurveyedPrinter().find(at(mosquitto.url().toString()), LONG, told));
        }
    }

    @Test
    void aBrokerThatIsNotThereIsToldInWords() {
        String nobody = "mqtt://127.0.0.1:" + FreePort.find();
        Listener told = new Listener(LONG);
        UnheardException unheard =
                assertThrows(UnheardException.class, () -> new SurveyedPrinter().find(at(nobody), LONG, told));
        assertEquals(
                "broker " + nobody + ": nothing listens there; start the broker or check the port",
                unheard.getMessage());
    }
}
