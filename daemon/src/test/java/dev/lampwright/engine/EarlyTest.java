package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EarlyTest {
    @Test
    void whatIsWrittenIsReadBack() {
        Early early = new Early(512, 9_000_000);
        assertEquals("{\"tick\":512,\"early_ns\":9000000}", early.line());
        assertEquals(Optional.of(early), Early.read(early.line()));
    }

    @Test
    void otherLinesAreNotAboutIt() {
        assertTrue(Early.read("{\"tick\":512,\"left_out\":2}").isEmpty());
        assertTrue(Early.read("not JSON").isEmpty());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{\"early_ns\":1}",
                "{\"tick\":-1,\"early_ns\":1}",
                "{\"tick\":1,\"early_ns\":0}",
                "{\"tick\":1,\"early_ns\":1,\"state\":\"idle\"}"
            })
    void whatMakesNoSenseIsRejected(String line) {
        assertThrows(IllegalArgumentException.class, () -> Early.read(line));
    }
}
