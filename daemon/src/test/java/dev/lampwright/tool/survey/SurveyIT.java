package dev.lampwright.tool.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.broker.Broker;
import dev.lampwright.broker.FakeBroker;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Child;
import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.Limited;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.RunningDaemon;
import java.io.BufferedReader;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The survey at a real Mosquitto, to which {@code mosquitto_pub} publishes. */
class SurveyIT {
    private static final Duration LONG = Duration.ofMinutes(5);
    private static final int SECONDS_BETWEEN = 25;

    @TempDir
    private Path folder;

    private static Broker at(URI url) {
        return new Broker(url, Optional.empty(), Optional.empty(), Optional.empty());
    }

    private static Printer printer(String name) {
        return Printers.all().stream()
                .filter(printer -> printer.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** What a printer publishes on each topic in a whole job. */
    private static Map<String, List<String>> job(Printer printer) {
        Map<String, List<String>> job = new LinkedHashMap<>();
        for (Job.Moment moment : Job.moments()) {
            for (Printer.Message message : printer.speaker().apply(moment)) {
                job.computeIfAbsent(message.topic(), any -> new ArrayList<>()).add(message.payload());
            }
        }
        return job;
    }

    /** A printer with one topic per value, message by message, every twenty-fifth second of its job; plus a weather station. */
    @Test
    void bindsAPrinterThatItHearsAtABroker() throws Exception {
        Printer elm = printer("elm");
        Random random = new Random(1);
        try (Mosquitto mosquitto = Mosquitto.start();
                Listener listener = new Listener(at(mosquitto.url()), "#")) {
            mosquitto.publish("werkstatt/ulme/bett/soll", "0", true);
            Thread listening = new Thread(() -> {
                try {
                    listener.listen(LONG, (survey, connected) -> {});
                } catch (IOException | InterruptedException e) {
                    throw new IllegalStateException(e);
                }
            });
            listening.start();
            Await.until("what was retained", () -> listener.survey().messages() == 1);
            long sent = 1;
            for (int i = 0; i < Job.moments().size(); i += SECONDS_BETWEEN) {
                Job.Moment moment = Job.moments().get(i);
                List<Printer.Message> messages = new ArrayList<>(elm.speaker().apply(moment));
                messages.addAll(Printers.noise(moment, random).subList(0, 2));
                messages.forEach(message -> mosquitto.publish(message.topic(), message.payload(), false));
                sent += messages.size();
            }
            long all = sent;
            Await.until("all messages", () -> listener.survey().messages() == all);
            listener.stop();
            listening.join(60_000);
            Score score = Score.of(elm, listener.survey().proposal(), Integer.MAX_VALUE);
            System.out.println("at a broker: " + score);
            assertTrue(score.share() >= 0.85, score.toString());
        }
    }

    /** The command as a process, ended by its time limit, while the whole job is repeated. */
    @Test
    void theCommandWritesAFileThatCheckFindsGood() throws IOException, InterruptedException {
        Path file = folder.resolve("larch.toml");
        try (Mosquitto mosquitto = Mosquitto.start()) {
            Process survey = Limited.start(
                    new ProcessBuilder(RunningDaemon.command(
                                    List.of(),
                                    "survey",
                                    "--broker",
                                    mosquitto.url().toString(),
                                    "--seconds",
                                    "8",
                                    "--write",
                                    file.toString()))
                            .redirectErrorStream(true),
                    LONG);
            try (BufferedReader output = survey.inputReader(StandardCharsets.UTF_8)) {
                Map<String, List<String>> job = job(printer("larch"));
                while (survey.isAlive()) {
                    job.forEach(mosquitto::publishAll);
                }
                List<String> lines = output.lines().toList();
                assertEquals(0, survey.waitFor(), lines.toString());
                assertTrue(
                        lines.stream().anyMatch(line -> line.matches("attic/larch +/bedTempF .* bed.actual_C")),
                        lines.toString());
                assertFalse(lines.stream().anyMatch(line -> line.contains("\u001b")), "no terminal, no drawing");
            } finally {
                survey.destroyForcibly();
            }
        }
        String text = Files.readString(file);
        assertTrue(
                text.contains("\nbed.actual_C = { topic = \"attic/larch\", at = \"/bedTempF\", unit = \"°F\" }\n"),
                text);
        Process check = new ProcessBuilder(RunningDaemon.command(List.of(), "check", file.toString())).start();
        assertTrue(check.waitFor(1, TimeUnit.MINUTES));
        assertEquals(0, check.exitValue());
    }

    /** A separate process, because it silences the log. */
    @Test
    void theBrokerIsTakenFromAFileThatHasNothingElse() throws IOException, InterruptedException {
        int port = FreePort.find();
        Path file = Files.writeString(folder.resolve("alder.toml"), "broker.url = \"mqtt://127.0.0.1:" + port + "\"\n");
        Child child = Child.run(RunningDaemon.command(List.of(), "survey", "--config", file.toString()));
        assertEquals(1, child.status());
        assertEquals(1, child.output().lines().count(), child.output());
        assertTrue(child.output().startsWith("broker mqtt://127.0.0.1:" + port + ": "), child.output());
    }

    @Test
    void aBrokerThatRefusesIsToldInOneLine() {
        try (Mosquitto mosquitto = Mosquitto.startWith(new Mosquitto.Account("lamp", "sesame"))) {
            IOException e = assertThrows(
                    IOException.class, () -> Listener.listen(at(mosquitto.url()), "#", Duration.ofSeconds(1)));
            assertTrue(e.getMessage().startsWith("broker " + mosquitto.url() + ": "), e.getMessage());
            assertEquals(1, e.getMessage().lines().count());
        }
    }

    /**
     * A broker that violates MQTT as soon as it has accepted the login; whether the survey noticed the login before is a matter of timing.
     */
    @Test
    void aBrokerThatLosesUsIsToldAsThatAndNotAsAQuietPrinter() throws IOException, InterruptedException {
        int port = FreePort.find();
        try (FakeBroker broker = FakeBroker.on(port, peer -> {
            peer.connack(0);
            peer.suback(1, 1);
            peer.send(0x30, 4, 0, 1, 0, 'x');
            peer.silence();
        })) {
            Child child = Child.run(RunningDaemon.command(
                    List.of(), "survey", "--broker", "mqtt://127.0.0.1:" + port, "--seconds", "2"));
            assertEquals(1, child.status());
            String last = child.output().lines().reduce((one, next) -> next).orElseThrow();
            assertTrue(last.startsWith("broker mqtt://127.0.0.1:" + port + ": "), child.output());
            assertTrue(last.contains("is not valid MQTT"), child.output());
            assertFalse(child.output().contains("nothing was published"), child.output());
            assertTrue(broker.connections() > 0);
        }
    }

    @Test
    void aConnectionThatEndsMeanwhileIsTold() throws IOException, InterruptedException {
        int port = FreePort.find();
        CountDownLatch seen = new CountDownLatch(1);
        try (FakeBroker broker = FakeBroker.on(port, peer -> {
                    peer.connack(0);
                    peer.suback(1, 1);
                    awaitSeen(seen);
                    peer.send(0x30, 4, 0, 1, 0, 'x');
                    peer.silence();
                });
                Listener listener = new Listener(at(URI.create("mqtt://127.0.0.1:" + port)), "#")) {
            assertEquals(Optional.empty(), listener.trouble());
            listener.listen(LONG, (survey, connected) -> {
                if (connected) {
                    seen.countDown();
                }
                if (listener.trouble().isPresent()) {
                    listener.stop();
                }
            });
            String trouble = listener.trouble().orElseThrow();
            assertTrue(
                    trouble.startsWith("broker mqtt://127.0.0.1:" + port
                            + ": lost the connection once while listening; the last reason: what came back"),
                    trouble);
            assertEquals(1, broker.connections());
        }
    }

    private static void awaitSeen(CountDownLatch seen) {
        try {
            assertTrue(seen.await(20, TimeUnit.SECONDS));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
