package dev.lampwright.broker;

import java.net.URI;
import java.nio.file.Path;
import java.util.Optional;

/**
 * The broker's address and login.
 *
 * @param url {@code mqtt://host:port} or {@code mqtts://host:port}
 * @param caFile PEM file with the certificates that {@code mqtts} trusts; empty for those of the Java runtime
 * @param username name to log in with
 * @param passwordFile file whose first line is the password; read at each connection attempt, never logged
 * @param ownCertificate the client certificate for a broker that requires one; only for {@code mqtts}
 */
public record Broker(
        URI url,
        Optional<Path> caFile,
        Optional<String> username,
        Optional<Path> passwordFile,
        Optional<OwnCertificate> ownCertificate) {
    /**
     * A broker that does not ask for a certificate.
     *
     * @param url as above
     * @param caFile as above
     * @param username as above
     * @param passwordFile as above
     */
    public Broker(URI url, Optional<Path> caFile, Optional<String> username, Optional<Path> passwordFile) {
        this(url, caFile, username, passwordFile, Optional.empty());
    }
}
