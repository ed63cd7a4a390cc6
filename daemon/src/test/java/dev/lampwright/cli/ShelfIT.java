package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.broker.BrokerClient;
import dev.lampwright.broker.Will;
import dev.lampwright.cue.AlarmState;
import dev.lampwright.json.Json;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.shelf.Shelf;
import dev.lampwright.shelf.ShelfListener;
import dev.lampwright.shelf.ShelfRow;
import dev.lampwright.shelf.Standing;
import dev.lampwright.shelf.Statuses;
import dev.lampwright.testing.Alder;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.upkeep.Worker;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;

/** The shelf at real brokers. */
class ShelfIT {
    private static final Duration DEADLINE = Duration.ofSeconds(30);
    private static final Path SHIPPED = Path.of("..", "systemd", "mosquitto", "bridge.conf");

    /** A daemon that reports three times a second, with a clock that may be wrong. */
    private static final class Reporting implements AutoCloseable {
        private final BrokerClient client;
        private final Worker worker;

        Reporting(URI broker, String prefix, String run, Duration wrong) {
            String topic = prefix + "/status";
            client = new BrokerClient(
                    Alder.at(broker),
                    List.of(prefix + "/ask/#"),
                    (asked, payload, kept) -> {},
                    Optional.of(
                            new Will(topic, new String(Statuses.gone("alder", "lost"), StandardCharsets.UTF_8), "")));
            worker = new Worker(
                    "reporting",
                    Duration.ofMillis(300),
                    () -> client.publish(
                            topic,
                            Statuses.of(
                                    "alder",
                                    PrinterState.PRINTING,
                                    AlarmState.NORMAL,
                                    run,
                                    Instant.now().plus(wrong)),
                            true));
        }

        void start() {
            client.start();
            worker.start();
        }

        @Override
        public void close() {
            worker.close();
            client.close();
        }
    }

    private static void keep(Mosquitto broker, String prefix, PrinterState state, AlarmState alarm) {
        String rig = prefix.substring(prefix.lastIndexOf('/') + 1);
        broker.publish(prefix + "/status", Statuses.of(rig, state, alarm, "a1", Instant.now()), true);
    }

    private static JsonNode shelf(Mosquitto broker) {
        Run run = Run.of("shelf", "--broker", broker.url().toString(), "--json");
        assertEquals(0, run.status(), run.err());
        return Json.read(run.out()).orElseThrow();
    }

    @Test
    void allRigsAreFoundWithNothingConfiguredButTheBroker() {
        try (Mosquitto broker = Mosquitto.start()) {
            keep(broker, "alder", PrinterState.PRINTING, AlarmState.NORMAL);
            keep(broker, "a/b/c/rowan", PrinterState.FAULT, AlarmState.ALERT);
            keep(broker, "shop/birch", PrinterState.DONE, AlarmState.NORMAL);
            broker.publish("hall/bench/status", Statuses.ofSeveral("bench", Instant.now()), true);
            broker.publish("shop/oak/status", "online", true);
            broker.publish("shop/elm/status", "{\"online\":true,\"state\":\"idle\"}", true);
            JsonNode told = shelf(broker);
            List<String> prefixes = StreamSupport.stream(told.path("rigs").spliterator(), false)
                    .map(rig -> rig.path("prefix").asText())
                    .toList();
            assertEquals(List.of("hall/bench", "a/b/c/rowan", "shop/birch", "alder"), prefixes);
            assertEquals("fault", told.path("rigs").get(0).path("standing").asText());
            JsonNode printers = told.path("rigs").get(0).path("printers");
            assertEquals(
                    "{\"name\":\"birch\",\"standing\":\"fault\",\"needs_person\":true,\"state\":\"fault\",\"alarm\":\"alert\","
                            + "\"fault_text\":\"door open\"}",
                    printers.get(0).toString());
            assertEquals(45, printers.get(1).path("left_s").asInt());
            assertEquals(4, printers.size());
            assertEquals("+/+/+/+/status", told.path("searched").get(3).asText());
            Run table = Run.of("shelf", "--broker", broker.url().toString(), "--levels", "2");
            assertTrue(table.out().startsWith("3 rigs, 2 need you, 4 at work (next ready in 45 s)\n"), table.out());
            assertTrue(
                    table.out().endsWith("Found under alder, hall/…, shop/…. Looked for prefixes of up to 2 levels.\n"),
                    table.out());
        }
    }

    @Test
    void aWrongClockOfAnotherComputerAndTwoDaemonsOnOnePrefixAreSeenThrough() {
        try (Mosquitto broker = Mosquitto.start();
                Reporting first = new Reporting(broker.url(), "shop/alder", "a1", Duration.ofHours(-5))) {
            first.start();
            assertEquals(
                    "working",
                    shelf(broker).path("rigs").get(0).path("standing").asText());
            Shelf shelf = new Shelf(Duration.ofSeconds(5));
            try (Reporting second = new Reporting(broker.url(), "shop/alder", "b2", Duration.ZERO);
                    ShelfListener listener = new ShelfListener(Alder.at(broker.url()), 2, shelf)) {
                second.start();
                listener.start();
                Await.until(
                        "two daemons",
                        DEADLINE,
                        () -> shelf.rows(System.nanoTime()).stream().anyMatch(ShelfRow::twice));
            }
        }
    }

    private static Mosquitto bridged(Mosquitto centre) throws IOException {
        List<String> lines = Files.readString(SHIPPED)
                .replace("centre.example:8883", "127.0.0.1:" + centre.port())
                .lines()
                .filter(line -> !line.startsWith("remote_") && !line.startsWith("bridge_cafile"))
                .toList();
        return Mosquitto.startWith(lines);
    }

    private static void await(String what, ShelfListener listener, Shelf shelf, Standing standing) {
        Await.until(
                () -> what + ": " + shelf.rows(System.nanoTime()),
                () -> {
                    listener.noteContact();
                    List<ShelfRow> rows = shelf.rows(System.nanoTime());
                    return rows.size() == 1 && rows.get(0).standing() == standing;
                },
                DEADLINE);
    }

    /** The bridge is the one that comes with the package. */
    @Test
    void aRigBehindABridgeIsLostWhileItsBrokerIsGoneAndThereAgainAfterwards() throws IOException {
        Shelf shelf = new Shelf(Duration.ofSeconds(2));
        try (Mosquitto centre = Mosquitto.start();
                Mosquitto hall = bridged(centre);
                Reporting alder = new Reporting(hall.url(), "lampwright/alder", "a1", Duration.ZERO);
                ShelfListener listener = new ShelfListener(Alder.at(centre.url()), 2, shelf)) {
            alder.start();
            listener.start();
            await("the rig, by way of the bridge", listener, shelf, Standing.WORKING);
            assertEquals(
                    "hall/alder", shelf.rows(System.nanoTime()).get(0).status().prefix());
            hall.kill();
            await("the rig to be lost with its broker", listener, shelf, Standing.LOST);
            hall.restart();
            await("the rig again", listener, shelf, Standing.WORKING);
            centre.kill();
            centre.restart();
            await("the rig at a centre that has forgotten all", listener, shelf, Standing.WORKING);
            assertTrue(
                    centre.read("hall/alder/status").contains("\"rig\":\"alder\""),
                    "statuses are kept at the centre too");
        }
    }
}
