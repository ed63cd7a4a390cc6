package dev.lampwright.config;

import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * What the configuration says about the live page.
 *
 * @param address where it listens; without a token, a loopback address
 * @param port its port; 0 for any free port
 * @param tokenFile a file whose first line is the token that viewers need; empty if they need none
 * @param viewTokenFile a file whose first line is a view-only token; empty if there is none
 * @param editTokenFile a file whose first line is the token for saving looks; without it, only browsers on this machine may save
 * @param hosts host names that browsers may use for it, in addition to {@code localhost} and addresses; in lower case
 * @param viewers the maximum number of simultaneous viewers
 * @param tls whether all browsers come through a server with TLS
 */
public record PageSettings(
        InetAddress address,
        int port,
        Optional<Path> tokenFile,
        Optional<Path> viewTokenFile,
        Optional<Path> editTokenFile,
        List<String> hosts,
        int viewers,
        boolean tls) {
    /** The default maximum number of viewers. */
    public static final int USUAL_VIEWERS = 32;

    /**
     * The default port: a dynamic one, which IANA assigns to nobody (RFC 6335, section 6: 49152 to 65535), above those that Linux hands out
     * by itself (its documentation of {@code ip_local_port_range}: 32768 to 60999).
     */
    public static final int USUAL_PORT = 61_117;

    /** Keeps a copy of the list. */
    public PageSettings {
        hosts = List.copyOf(hosts);
    }

    /**
     * A page for browsers on this computer alone.
     *
     * @param port its port
     * @return the settings
     */
    public static PageSettings forThisComputer(int port) {
        Optional<Path> none = Optional.empty();
        return new PageSettings(
                InetAddress.getLoopbackAddress(), port, none, none, none, List.of(), USUAL_VIEWERS, false);
    }

    /**
     * The same page for browsers on other computers too.
     *
     * @return settings with the wildcard address
     */
    public PageSettings onAllAddresses() {
        InetAddress all = new InetSocketAddress(0).getAddress();
        return new PageSettings(all, port, tokenFile, viewTokenFile, editTokenFile, hosts, viewers, tls);
    }

    /**
     * The files with its tokens.
     *
     * @return those that there are
     */
    public TokenFiles tokens() {
        return new TokenFiles(tokenFile, viewTokenFile, editTokenFile);
    }
}
