package dev.lampwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.shelf.Statuses;
import dev.lampwright.testing.Alder;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Mosquitto;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Rigs of other daemons, found at real brokers. */
class ElsewhereIT {
    private static final String PREFIX = "lampwright/alder";

    private static void report(Mosquitto broker, PrinterState state) {
        byte[] status = Statuses.of("alder", state, AlarmState.NORMAL, "a1", Instant.now());
        broker.publish(PREFIX + "/status", status, true);
    }

    private static List<Elsewhere.Found> await(Elsewhere elsewhere, int count) {
        Await.until(
                count + " rigs are found",
                () -> elsewhere.rows(Set.of(), System.nanoTime()).size() == count);
        return elsewhere.rows(Set.of(), System.nanoTime());
    }

    @Test
    void rigsWithTheSamePrefixAtTwoBrokersAreTwo() {
        try (Mosquitto one = Mosquitto.start();
                Mosquitto two = Mosquitto.start();
                Elsewhere elsewhere = new Elsewhere()) {
            report(one, PrinterState.PRINTING);
            report(two, PrinterState.IDLE);
            elsewhere.follow(Set.of(Alder.at(one.url()), Alder.at(two.url())));
            List<Elsewhere.Found> found = await(elsewhere, 2);
            assertNotEquals(found.get(0).where(), found.get(1).where());
            elsewhere.follow(Set.of(Alder.at(two.url())));
            assertEquals(
                    List.of(found.stream()
                            .filter(row -> row.where().contains(":" + two.port()))
                            .findFirst()
                            .orElseThrow()
                            .where()),
                    await(elsewhere, 1).stream().map(Elsewhere.Found::where).toList());
        }
    }
}
