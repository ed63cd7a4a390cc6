package dev.lampwright.broker;

import java.time.Duration;

/**
 * How long to wait for the broker.
 *
 * @param network to answer the opening of the network connection, for each address of the host
 * @param answer to answer a request, including all that opening the connection takes
 * @param ping to answer a ping; a quiet connection is also checked this often
 * @param keepAlive how long a connection may be quiet before it is pinged; whole seconds
 * @param firstPause between the first two attempts to connect
 * @param longestPause between later ones
 */
public record Patience(
        Duration network,
        Duration answer,
        Duration ping,
        Duration keepAlive,
        Duration firstPause,
        Duration longestPause) {
    /**
     * The default. After the broker's host has come back, light is right within 2 s: an attempt that got no answer ends after
     * {@code network}, then comes {@code longestPause}, and connecting and subscribing take about 0.4 s, most of which is the client
     * library waiting for its own threads.
     */
    public static final Patience USUAL = new Patience(
            Duration.ofSeconds(1),
            Duration.ofSeconds(3),
            Duration.ofMillis(2500),
            Duration.ofSeconds(10),
            Duration.ofMillis(250),
            Duration.ofMillis(500));
}
