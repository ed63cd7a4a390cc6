package dev.lampwright.config;

import java.net.InetAddress;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * What the configuration says about the live page.
 *
 * @param address where it listens; without a token, an address of loopback
 * @param port its port; 0 for any that is free
 * @param tokenFile a file whose first line is what viewers have to know; empty if there is nothing to know
 * @param viewTokenFile a file whose first line lets people watch and no more; empty if there is none
 * @param hosts names by which browsers may ask for it, beside {@code localhost} and addresses; in lower case
 * @param viewers the most who may watch at the same time
 * @param tls whether all browsers come by way of a server with TLS
 */
public record PageSettings(
        InetAddress address,
        int port,
        Optional<Path> tokenFile,
        Optional<Path> viewTokenFile,
        List<String> hosts,
        int viewers,
        boolean tls) {
    /** How many may watch where nothing is said about it. */
    public static final int USUAL_VIEWERS = 32;

    /** Keeps a copy of the list. */
    public PageSettings {
        hosts = List.copyOf(hosts);
    }
}
