package dev.lampwright.testing;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

final class MosquittoIT {
    @Test
    void listensUntilItIsKilledAndAgainAfterRestart() {
        try (Mosquitto mosquitto = Mosquitto.start()) {
            assertTrue(FreePort.isListening(mosquitto.port()));
            mosquitto.kill();
            assertFalse(FreePort.isListening(mosquitto.port()));
            mosquitto.restart();
            mosquitto.publish("shop/alder/job", "RUN", false);
        }
    }
}
