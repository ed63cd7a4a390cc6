package dev.lampwright.printer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.broker.BrokerState;
import dev.lampwright.broker.Patience;
import dev.lampwright.payload.PayloadPath;
import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.Source;
import dev.lampwright.testing.Alder;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Forwarder;
import dev.lampwright.testing.LogLines;
import dev.lampwright.testing.Mosquitto;
import java.net.URI;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.junit.jupiter.api.Test;

/** Why nothing is heard, with a real Mosquitto and a printer whose connection really drops. The test moves the daemon's clock. */
final class SilenceIT {
    private static final Duration DEADLINE = Duration.ofSeconds(30);
    private static final Duration LONG = Duration.ofSeconds(20);
    private static final String LINK = "shop/alder/link";
    private static final String RUN = "{\"phase\":\"RUN\"}";

    private final AtomicReference<PrinterStatus> newest = new AtomicReference<>(PrinterStatus.nothingHeard());
    private final AtomicLong clock = new AtomicLong();

    private PrinterClient start(URI url) {
        Bindings bindings = new Bindings(
                        Alder.bindings().states(),
                        Alder.bindings().readings(),
                        Alder.bindings().events())
                .withWill(new Bindings.OfWill(new Source(LINK, PayloadPath.BARE), List.of("offline")));
        PrinterClient client = new PrinterClient(Alder.at(url), bindings, clock::get, newest::set, Patience.USUAL);
        client.start();
        return client;
    }

    private static URI through(Forwarder forwarder) {
        return URI.create("mqtt://127.0.0.1:" + forwarder.port());
    }

    private void awaitState(PrinterState state) {
        Await.until("the printer to be " + state, DEADLINE, () -> newest.get().state() == state);
    }

    private static void awaitMessages(PrinterClient client, long count) {
        Await.until(count + " messages", DEADLINE, () -> client.messages() >= count);
    }

    private static void awaitPhase(PrinterClient client, BrokerState.Phase phase) {
        Await.until(
                "the broker to be " + phase,
                DEADLINE,
                () -> client.brokerState().phase() == phase);
    }

    private void wait(Duration duration) {
        clock.addAndGet(duration.toNanos());
    }

    private static int times(LogLines log, String line) {
        return log.with(line).size();
    }

    /** The printer is a client with a last will, and its cable is unplugged. */
    @Test
    void theLastWillMakesItSilentAtOnceAndTheFirstWordEndsThat() throws MqttException {
        try (Mosquitto mosquitto = Mosquitto.start();
                Forwarder cable = Forwarder.to(mosquitto.port());
                LogLines log = new LogLines();
                PrinterClient client = start(mosquitto.url())) {
            MqttClient printer = new MqttClient("tcp://127.0.0.1:" + cable.port(), "alder", new MemoryPersistence());
            MqttConnectOptions options = new MqttConnectOptions();
            options.setWill(LINK, Alder.bytes("offline"), 1, true);
            awaitPhase(client, BrokerState.Phase.CONNECTED);
            printer.connect(options);
            printer.publish(Alder.JOB, Alder.bytes(RUN), 1, true);
            awaitState(PrinterState.PRINTING);
            cable.cut();
            awaitState(PrinterState.SILENT);
            assertEquals(Optional.of(Silence.LAST_WILL), client.silence("", LONG));
            client.lookAround(any -> LONG);
            client.lookAround(any -> LONG);
            assertEquals(1, times(log, "printer: its last will reports it offline"));
            Await.until("the printer to find itself cut off", DEADLINE, () -> !printer.isConnected());
            printer.close(true);
            mosquitto.publish(Alder.JOB, RUN, true);
            awaitState(PrinterState.PRINTING);
            assertEquals(Optional.empty(), client.silence("", LONG));
            client.lookAround(any -> LONG);
            client.lookAround(any -> LONG);
            assertEquals(1, times(log, "printer: heard again"));
        }
    }

    /** The broker retains both, and sends them in any order. */
    @Test
    void whatTheBrokerHasKeptDoesNotBringBackAPrinterThatIsGone() {
        try (Mosquitto mosquitto = Mosquitto.start()) {
            mosquitto.publish(LINK, "offline", true);
            mosquitto.publish(Alder.JOB, RUN, true);
            mosquitto.publish(Alder.HEAT, "{\"plate\":{\"now\":41.5}}", true);
            try (PrinterClient client = start(mosquitto.url())) {
                awaitMessages(client, 3);
                Await.until("the bed", DEADLINE, () -> newest.get().value(Quantity.BED_ACTUAL) == 41.5);
                assertEquals(PrinterState.SILENT, newest.get().state());
                assertEquals(Optional.of(Silence.LAST_WILL), client.silence("", LONG));
            }
        }
    }

    @Test
    void nothingHeardIsToldOnceAndEndsWithTheFirstMessage() {
        try (Mosquitto mosquitto = Mosquitto.start();
                LogLines log = new LogLines();
                PrinterClient client = start(mosquitto.url())) {
            awaitPhase(client, BrokerState.Phase.CONNECTED);
            mosquitto.publish(Alder.JOB, RUN, false);
            awaitState(PrinterState.PRINTING);
            wait(LONG);
            assertEquals(Optional.empty(), client.silence("", LONG));
            wait(Duration.ofSeconds(1));
            assertEquals(Optional.of(Silence.NOTHING_HEARD), client.silence("", LONG));
            client.lookAround(any -> LONG);
            wait(LONG);
            client.lookAround(any -> LONG);
            assertEquals(1, times(log, "printer: nothing heard for 21 s"));
            mosquitto.publish(Alder.JOB, RUN, false);
            awaitMessages(client, 2);
            Await.until(
                    "the end of silence",
                    DEADLINE,
                    () -> client.silence("", LONG).isEmpty());
            client.lookAround(any -> LONG);
            assertEquals(1, times(log, "printer: heard again"));
        }
    }

    /** What was reported last stays valid for the usual time; only then is the broker named as the cause. */
    @Test
    void aBrokerThatIsGoneIsToldApart() {
        try (Mosquitto mosquitto = Mosquitto.start();
                LogLines log = new LogLines();
                PrinterClient client = start(mosquitto.url())) {
            awaitPhase(client, BrokerState.Phase.CONNECTED);
            mosquitto.publish(Alder.JOB, RUN, false);
            awaitState(PrinterState.PRINTING);
            mosquitto.kill();
            awaitPhase(client, BrokerState.Phase.LOST);
            assertEquals(Optional.empty(), client.silence("", LONG));
            wait(Duration.ofSeconds(30));
            assertEquals(Optional.of(Silence.BROKER_GONE), client.silence("", LONG));
            client.lookAround(any -> LONG);
            assertEquals(1, times(log, "printer: nothing heard for 30 s, because the broker is gone"));
            mosquitto.restart();
            awaitPhase(client, BrokerState.Phase.CONNECTED);
            mosquitto.publish(Alder.JOB, RUN, false);
            Await.until(
                    "the end of silence",
                    DEADLINE,
                    () -> client.silence("", LONG).isEmpty());
            client.lookAround(any -> LONG);
            assertEquals(1, times(log, "printer: heard again"));
        }
    }

    /** MQTT 3.1.1, section 3.3.1.3: each new subscription gets retained messages, so a flapping connection gets them over and over. */
    @Test
    void whatIsKeptIsNoSignOfLifeTheSecondTime() {
        try (Mosquitto mosquitto = Mosquitto.start();
                Forwarder cable = Forwarder.to(mosquitto.port())) {
            mosquitto.publish(Alder.JOB, RUN, true);
            try (PrinterClient client = start(through(cable))) {
                awaitState(PrinterState.PRINTING);
                for (int again = 2; again <= 4; again++) {
                    wait(Duration.ofSeconds(15));
                    cable.cut();
                    awaitPhase(client, BrokerState.Phase.LOST);
                    cable.restore();
                    awaitMessages(client, again);
                }
                assertEquals(0, newest.get().heardAtNanos());
                assertEquals(Optional.of(Silence.NOTHING_HEARD), client.silence("", LONG));
            }
        }
    }

    /** So a fault that was published while the broker was away is shown. */
    @Test
    void whatIsKeptAndNewIsNews() {
        try (Mosquitto mosquitto = Mosquitto.start();
                Forwarder cable = Forwarder.to(mosquitto.port())) {
            mosquitto.publish(Alder.JOB, RUN, true);
            try (PrinterClient client = start(through(cable))) {
                awaitState(PrinterState.PRINTING);
                wait(Duration.ofSeconds(15));
                cable.cut();
                awaitPhase(client, BrokerState.Phase.LOST);
                mosquitto.publish(Alder.JOB, "{\"phase\":\"ALARM_DOOR\"}", true);
                cable.restore();
                awaitState(PrinterState.FAULT);
                assertEquals(Optional.empty(), client.silence("", LONG));
            }
        }
    }
}
