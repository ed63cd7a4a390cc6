package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DeliveryTest {
    @Test
    void whatIsWrittenIsReadBack() {
        Delivery delivery = new Delivery(512, 250_000_000, true);
        assertEquals("{\"tick\":512,\"late_ns\":250000000,\"relit\":true}", delivery.line());
        assertEquals(Optional.of(delivery), Delivery.read(delivery.line()));
    }

    @Test
    void otherLinesAreNotAboutIt() {
        assertTrue(Delivery.read("{\"tick\":512,\"left_out\":2}").isEmpty());
        assertTrue(Delivery.read("not JSON").isEmpty());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{\"late_ns\":1,\"relit\":true}",
                "{\"tick\":-1,\"late_ns\":1,\"relit\":true}",
                "{\"tick\":1,\"late_ns\":-1,\"relit\":true}",
                "{\"tick\":1,\"late_ns\":1,\"relit\":2}",
                "{\"tick\":1,\"late_ns\":1,\"relit\":true,\"state\":\"idle\"}"
            })
    void whatMakesNoSenseIsRejected(String line) {
        assertThrows(IllegalArgumentException.class, () -> Delivery.read(line));
    }
}
