package dev.lampwright.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import org.junit.jupiter.api.Test;

/** Names of the properties: documentation of the module {@code jdk.httpserver}, and for the first two its source (from memory). */
class ServerLimitsTest {
    @Test
    void questionsHaveALimitAndAnswersHaveNone() {
        ServerLimits.set();
        assertEquals("5", System.getProperty("sun.net.httpserver.maxReqTime"));
        assertNull(System.getProperty("sun.net.httpserver.maxRspTime"), "a stream of events never ends");
    }
}
