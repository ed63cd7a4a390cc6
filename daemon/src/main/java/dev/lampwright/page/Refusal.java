package dev.lampwright.page;

import java.util.Map;

/**
 * That a request is not done, and why.
 *
 * @param status of HTTP
 * @param why for whoever reads it, with what would be right; one line
 * @param headers that go with the status
 */
record Refusal(int status, String why, Map<String, String> headers) {
    Refusal(int status, String why) {
        this(status, why, Map.of());
    }
}
