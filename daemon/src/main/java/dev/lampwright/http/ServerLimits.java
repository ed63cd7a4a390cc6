package dev.lampwright.http;

import java.util.Map;

/**
 * Limits of the JDK's HTTP server, which it reads once, when the first server of the process is created (documentation of the module
 * {@code jdk.httpserver}). So every part that creates one sets the same limits. Answers have no limit: a live page's stream of events is an
 * answer that never ends.
 */
public final class ServerLimits {
    private static final Map<String, String> LIMITS = Map.of(
            "sun.net.httpserver.maxReqTime", "5", // s; a client that takes longer to send its request is cut off
            "sun.net.httpserver.nodelay", "true", // events are not held back
            "jdk.httpserver.maxConnections", "512");

    private ServerLimits() {}

    /** Sets them, unless the command line says otherwise. Call this before creating a server. */
    public static void set() {
        LIMITS.forEach((property, value) -> {
            if (System.getProperty(property) == null) {
                System.setProperty(property, value);
            }
        });
    }
}
