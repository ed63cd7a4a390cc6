package dev.lampwright.broker;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.testing.Alder;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.LogLines;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.TestCertificates;
import dev.lampwright.testing.TestCertificates.Issued;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A real Mosquitto that accepts only clients that an authority vouches for. */
final class OwnCertificateIT {
    private static final Duration DEADLINE = Duration.ofSeconds(30);

    @TempDir
    Path folder;

    private TestCertificates certificates;

    @BeforeEach
    void makeCertificates() {
        certificates = TestCertificates.make(folder, "localhost");
    }

    private static BrokerClient start(Broker broker) {
        BrokerClient client =
                new BrokerClient(broker, Alder.bindings().topicFilters(), (t, p, r) -> {}, Optional.empty());
        client.start();
        return client;
    }

    private Broker broker(URI url, Optional<OwnCertificate> own) {
        return new Broker(url, Optional.of(certificates.authority()), Optional.empty(), Optional.empty(), own);
    }

    private static Optional<OwnCertificate> own(Issued issued) {
        return Optional.of(new OwnCertificate(issued.certificate(), issued.key()));
    }

    private static void awaitReason(BrokerClient client, String words) {
        Await.until(
                "the reason to be: " + words,
                DEADLINE,
                () -> client.state().reason().contains(words));
    }

    private static void awaitConnected(BrokerClient client) {
        Await.until("the connection", DEADLINE, () -> client.state().phase() == BrokerState.Phase.CONNECTED);
    }

    @Test
    void isLetInWithACertificate() {
        try (Mosquitto mosquitto = Mosquitto.askingForCertificates(certificates);
                BrokerClient client = start(broker(mosquitto.url(), own(certificates.issue("lampwright"))))) {
            awaitConnected(client);
            mosquitto.publish(Alder.JOB, "{\"phase\":\"RUN\"}", false);
            Await.until("the message", DEADLINE, () -> client.messages() == 1);
        }
    }

    /** The broker publishes it once the connection has ended without a goodbye. */
    @Test
    void aWillIsHeldWithACertificate() {
        Turnstile turnstile = new Turnstile();
        turnstile.open();
        AtomicReference<String> status = new AtomicReference<>();
        try (Mosquitto mosquitto = Mosquitto.askingForCertificates(certificates)) {
            Broker broker = broker(mosquitto.url(), own(certificates.issue("lampwright")));
            MessageSink sink = (topic, payload, retained) -> status.set(new String(payload, StandardCharsets.UTF_8));
            try (BrokerClient watcher =
                            new BrokerClient(broker, List.of("lampwright/alder/status"), sink, Optional.empty());
                    Wills wills = new Wills(broker, Patience.USUAL, turnstile)) {
                watcher.start();
                awaitConnected(watcher);
                holdAndRelease(wills);
                Await.until("the loss", DEADLINE, () -> "lost".equals(status.get()));
            }
        }
    }

    private static void holdAndRelease(Wills wills) {
        Wills.Held held = wills.hold(new Will("lampwright/alder/status", "lost", "off"), new Wills.Watcher() {
            @Override
            public void held() {}

            @Override
            public void lost() {}
        });
        Await.until("it is held", DEADLINE, () -> held.state().phase() == BrokerState.Phase.CONNECTED);
        held.release(false);
    }

    @Test
    void saysThatTheBrokerWantsOne() {
        try (Mosquitto mosquitto = Mosquitto.askingForCertificates(certificates);
                BrokerClient client = start(broker(mosquitto.url(), Optional.empty()))) {
            awaitReason(client, "certificate_file");
        }
    }

    @Test
    void saysThatTheBrokerDoesNotTrustOursAndIsLetInAsSoonAsItIsRenewed() throws IOException {
        TestCertificates others = TestCertificates.make(Files.createDirectory(folder.resolve("others")), "localhost");
        Issued wrong = others.issue("lampwright");
        Issued right = certificates.issue("lampwright");
        try (Mosquitto mosquitto = Mosquitto.askingForCertificates(certificates);
                BrokerClient client = start(broker(mosquitto.url(), own(wrong)))) {
            awaitReason(client, "certificate_file");
            Files.copy(right.key(), wrong.key(), StandardCopyOption.REPLACE_EXISTING);
            Files.copy(right.certificate(), wrong.certificate(), StandardCopyOption.REPLACE_EXISTING);
            awaitConnected(client);
        }
    }

    @Test
    void aKeyThatEverybodyCanReadIsToldOnce() throws IOException {
        Issued issued = certificates.issue("lampwright");
        Files.setPosixFilePermissions(issued.key(), PosixFilePermissions.fromString("rw-r--r--"));
        try (LogLines log = new LogLines();
                Mosquitto mosquitto = Mosquitto.askingForCertificates(certificates);
                BrokerClient client = start(broker(mosquitto.url(), own(issued)))) {
            awaitConnected(client);
            mosquitto.kill();
            awaitReason(client, "nothing listens there");
            mosquitto.restart();
            awaitConnected(client);
            String line = "key_file " + issued.key() + " can be read by everybody on this computer; chmod o-r "
                    + issued.key();
            assertEquals(1, log.with(line).size());
        }
    }
}
