package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.broker.BrokerState;
import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.demo.MemoryController;
import dev.lampwright.demo.MemoryLine;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.Recording;
import org.junit.jupiter.api.Test;

/** A configuration with different bindings for the printer is read while the printer works. */
class ListenAgainIT {
    private static final String JOB = "shop/alder/job";
    private static final String HEAT = "shop/alder/heat";

    private static Config config(Mosquitto mosquitto, String bed, String running) throws ConfigException {
        return ConfigFile.read("""
                broker.url = "%s"
                controller.port = "memory"
                strip.pixels = 8
                printer.state = { topic = "shop/alder/job", printing = ["%s"] }
                printer.readings.bed.actual_C = { topic = "shop/alder/heat", %s }
                printer.readings.job.progress = { topic = "shop/alder/percent", scale = 0.01 }
                """.formatted(mosquitto.url(), running, bed), "alder.toml");
    }

    private static void awaitBed(Daemon daemon, double value) {
        Await.until("the bed at " + value, () -> daemon.statuses().of("").value(Quantity.BED_ACTUAL) == value);
    }

    private static void awaitConnected(Daemon daemon) {
        Await.until("a broker", () -> daemon.broker().phase() == BrokerState.Phase.CONNECTED);
    }

    /** What the printer reported once, in an unchanged place, is still known. */
    @Test
    void whatIsToldInTheSamePlaceIsNotForgotten() throws ConfigException {
        MemoryLine line = new MemoryLine(
                new MemoryController(MemoryController.BOARD, new Recording()), 500_000, System::nanoTime);
        try (Mosquitto mosquitto = Mosquitto.start();
                Daemon daemon = new Daemon(config(mosquitto, "scale = 1", "RUN"), next -> line)) {
            daemon.start();
            awaitConnected(daemon);
            mosquitto.publish(JOB, "RUN", false);
            mosquitto.publish("shop/alder/percent", "40", false);
            mosquitto.publish(HEAT, "50", false);
            awaitBed(daemon, 50);
            daemon.change(config(mosquitto, "scale = 2", "RUN"));
            assertEquals(
                    Double.NaN, daemon.statuses().of("").value(Quantity.BED_ACTUAL), "that was read by the old scale");
            awaitConnected(daemon);
            mosquitto.publish(HEAT, "30", false);
            awaitBed(daemon, 60);
            assertEquals(PrinterState.PRINTING, daemon.statuses().of("").state());
            assertEquals(0.4, daemon.statuses().of("").value(Quantity.JOB_PROGRESS));
            daemon.change(config(mosquitto, "scale = 2", "GO"));
            assertEquals(PrinterState.SILENT, daemon.statuses().of("").state(), "its words mean something else now");
        }
    }
}
