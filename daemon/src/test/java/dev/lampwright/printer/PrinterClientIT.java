package dev.lampwright.printer;

import static dev.lampwright.testing.Bounds.assertAbove;
import static dev.lampwright.testing.Bounds.assertAtLeast;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.broker.Broker;
import dev.lampwright.broker.BrokerState;
import dev.lampwright.broker.PahoThreads;
import dev.lampwright.broker.Patience;
import dev.lampwright.payload.Quantity;
import dev.lampwright.testing.Alder;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.LogLines;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.TestCertificates;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Against a real Mosquitto. */
final class PrinterClientIT {
    private static final Duration DEADLINE = Duration.ofSeconds(30);
    private static final Patience SHORT_PINGS = new Patience(
            Patience.USUAL.network(),
            Duration.ofSeconds(1),
            Duration.ofMillis(500),
            Duration.ofSeconds(1),
            Patience.USUAL.firstPause(),
            Patience.USUAL.longestPause());

    private final AtomicReference<PrinterStatus> newest = new AtomicReference<>(PrinterStatus.nothingHeard());

    @TempDir
    Path folder;

    private PrinterClient start(Broker broker) {
        PrinterClient client = new PrinterClient(broker, Alder.bindings(), System::nanoTime, newest::set, SHORT_PINGS);
        client.start();
        return client;
    }

    private void awaitState(PrinterState state) {
        Await.until("the printer to be " + state, DEADLINE, () -> newest.get().state() == state);
    }

    private static void awaitPhase(PrinterClient client, BrokerState.Phase phase) {
        Await.until(
                "the broker to be " + phase,
                DEADLINE,
                () -> client.brokerState().phase() == phase);
    }

    private static void awaitReason(PrinterClient client, String words) {
        Await.until(
                "the reason to be: " + words,
                DEADLINE,
                () -> client.brokerState().reason().contains(words));
    }

    @Test
    void hearsWhatWasRetainedAndWhatIsPublished() {
        try (Mosquitto mosquitto = Mosquitto.start()) {
            mosquitto.publish(Alder.JOB, "{\"phase\":\"PREHEAT\"}", true);
            try (PrinterClient client = start(Alder.at(mosquitto.url()))) {
                awaitState(PrinterState.WARMING);
                mosquitto.publish(Alder.HEAT, "{\"plate\":{\"now\":41.5}}", false);
                Await.until("the bed", DEADLINE, () -> newest.get().value(Quantity.BED_ACTUAL) == 41.5);
                assertEquals(2, client.messages());
                assertEquals(new BrokerState(BrokerState.Phase.CONNECTED, ""), client.brokerState());
            }
        }
    }

    @Test
    void comesBackWhenTheBrokerWasKilled() {
        try (Mosquitto mosquitto = Mosquitto.start();
                PrinterClient client = start(Alder.at(mosquitto.url()))) {
            awaitPhase(client, BrokerState.Phase.CONNECTED);
            for (PrinterState state : new PrinterState[] {PrinterState.PRINTING, PrinterState.WARMING}) {
                mosquitto.kill();
                awaitPhase(client, BrokerState.Phase.LOST);
                mosquitto.restart();
                mosquitto.publish(
                        Alder.JOB,
                        state == PrinterState.PRINTING ? "{\"phase\":\"RUN\"}" : "{\"phase\":\"PREHEAT\"}",
                        true);
                awaitState(state);
            }
        }
    }

    @Test
    void findsOutThatTheBrokerStandsStillAndTakesWhatItKept() {
        try (Mosquitto mosquitto = Mosquitto.start();
                PrinterClient client = start(Alder.at(mosquitto.url()))) {
            mosquitto.publish(Alder.JOB, "{\"phase\":\"RUN\"}", true);
            awaitState(PrinterState.PRINTING);
            mosquitto.freeze();
            awaitReason(client, "stopped answering");
            PrinterStatus before = newest.get();
            mosquitto.thaw();
            awaitPhase(client, BrokerState.Phase.CONNECTED);
            Await.until("what was kept", DEADLINE, () -> client.messages() == 2);
            mosquitto.publish(Alder.HEAT, "{\"plate\":{\"now\":41.5}}", false);
            Await.until("the bed", DEADLINE, () -> newest.get().value(Quantity.BED_ACTUAL) == 41.5);
            assertEquals(PrinterState.PRINTING, newest.get().state());
            assertAbove(before.heardAtNanos(), newest.get().heardAtNanos());
        }
    }

    @Test
    void stoppingAFrozenBrokersClientDoesNotWait() {
        try (Mosquitto mosquitto = Mosquitto.start()) {
            PrinterClient client = start(Alder.at(mosquitto.url()));
            awaitPhase(client, BrokerState.Phase.CONNECTED);
            mosquitto.freeze();
            client.close();
            assertEquals(new BrokerState(BrokerState.Phase.LOST, "closed"), client.brokerState());
            mosquitto.thaw();
        }
        Await.until("the threads to end", DEADLINE, () -> PahoThreads.count() == 0);
    }

    @Test
    void twoClientsDoNotThrowEachOtherOut() {
        try (Mosquitto mosquitto = Mosquitto.start();
                LogLines log = new LogLines();
                PrinterClient first = start(Alder.at(mosquitto.url()));
                PrinterClient second = start(Alder.at(mosquitto.url()))) {
            awaitPhase(first, BrokerState.Phase.CONNECTED);
            awaitPhase(second, BrokerState.Phase.CONNECTED);
            mosquitto.publish(Alder.JOB, "{\"phase\":\"RUN\"}", false);
            Await.until("both to hear", DEADLINE, () -> first.messages() == 1 && second.messages() == 1);
            assertEquals(0, log.with("WARN").size());
        }
    }

    @Test
    void logsInAsSoonAsThePasswordIsRight() throws IOException {
        Path file = folder.resolve("password");
        try (Mosquitto mosquitto = Mosquitto.startWith(new Mosquitto.Account("lamp", "sesame"));
                LogLines log = new LogLines();
                PrinterClient client =
                        start(new Broker(mosquitto.url(), Optional.empty(), Optional.of("lamp"), Optional.of(file)))) {
            awaitReason(client, "does not exist");
            Files.writeString(file, "wrong-1234\n");
            awaitReason(client, "check username");
            Files.writeString(file, "sesame\n");
            awaitPhase(client, BrokerState.Phase.CONNECTED);
            mosquitto.publish(Alder.JOB, "{\"phase\":\"RUN\"}", true);
            awaitState(PrinterState.PRINTING);
            assertEquals(1, log.with("does not exist").size());
            assertEquals(0, log.with("sesame").size() + log.with("wrong-1234").size());
        }
    }

    @Test
    void speaksTlsWithABrokerThatItsAuthorityVouchesFor() {
        TestCertificates certificates = TestCertificates.make(folder, "localhost");
        try (Mosquitto mosquitto = Mosquitto.startWith(certificates);
                PrinterClient client = start(secure(mosquitto.url(), certificates.authority()))) {
            mosquitto.publish(Alder.JOB, "{\"phase\":\"RUN\"}", true);
            awaitState(PrinterState.PRINTING);
            mosquitto.restart();
            mosquitto.publish(Alder.JOB, "{\"phase\":\"PREHEAT\"}", true);
            awaitState(PrinterState.WARMING);
            assertAtLeast(2, client.messages());
        }
    }

    @Test
    void doesNotTrustAnotherAuthority() throws IOException {
        TestCertificates certificates = TestCertificates.make(folder, "localhost");
        TestCertificates others = TestCertificates.make(Files.createDirectory(folder.resolve("others")), "localhost");
        try (Mosquitto mosquitto = Mosquitto.startWith(certificates);
                PrinterClient client = start(secure(mosquitto.url(), others.authority()))) {
            awaitReason(client, "not from a trusted authority");
            assertEquals(0, client.messages());
        }
    }

    @Test
    void doesNotTrustACertificateForAnotherHost() {
        TestCertificates certificates = TestCertificates.make(folder, "alder.example");
        try (Mosquitto mosquitto = Mosquitto.startWith(certificates);
                PrinterClient client = start(secure(mosquitto.url(), certificates.authority()))) {
            awaitReason(client, "not for this host");
            assertEquals(0, client.messages());
        }
    }

    @Test
    void saysWhatIsWrongWithTheCaFile() throws IOException {
        Path caFile = folder.resolve("ca.pem");
        URI url = URI.create("mqtts://localhost:1");
        try (PrinterClient client = start(secure(url, caFile))) {
            awaitReason(client, "ca_file " + caFile + " cannot be read");
            Files.writeString(caFile, "garbage");
            awaitReason(client, "ca_file " + caFile + " is not a PEM file");
            Files.writeString(caFile, "");
            awaitReason(client, "ca_file " + caFile + " has no certificate in it");
        }
    }

    @Test
    void saysThatThePortDoesNotSpeakTls() {
        try (Mosquitto mosquitto = Mosquitto.start();
                PrinterClient client = start(Alder.at(URI.create("mqtts://127.0.0.1:" + mosquitto.port())))) {
            awaitReason(client, "check that this port speaks TLS");
        }
    }

    private static Broker secure(URI url, Path caFile) {
        return new Broker(url, Optional.of(caFile), Optional.empty(), Optional.empty());
    }
}
