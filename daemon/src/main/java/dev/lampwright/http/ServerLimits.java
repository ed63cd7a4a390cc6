package dev.lampwright.http;

import java.util.Map;

/**
 * Limits of the JDK's HTTP server, which it reads once, when the first server of the process is made (documentation of the module
 * {@code jdk.httpserver}). So whoever makes one sets the same, whichever comes first. Answers have no limit: a live page's stream of events
 * is an answer that never ends.
 */
public final class ServerLimits {
    private static final Map<String, String> LIMITS = Map.of(
            "sun.net.httpserver.maxReqTime", "5", // s; whoever takes longer to ask is cut off
            "sun.net.httpserver.nodelay", "true", // events are not held back
            "jdk.httpserver.maxConnections", "512");

    private ServerLimits() {}

    /** Sets them, but for what the command line says otherwise. To be called before a server is made. */
    public static void set() {
        LIMITS.forEach((property, value) -> {
            if (System.getProperty(property) == null) {
                System.setProperty(property, value);
            }
        });
    }
}
