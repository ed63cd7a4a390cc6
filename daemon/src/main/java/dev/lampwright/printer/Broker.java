package dev.lampwright.printer;

import java.net.URI;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Where the broker is and how to get in.
 *
 * @param url {@code mqtt://host:port} or {@code mqtts://host:port}
 * @param caFile PEM file with the certificates that {@code mqtts} trusts; empty for those of the Java runtime
 * @param username name to log in with
 * @param passwordFile file whose first line is the password; read at each connect, never logged
 */
public record Broker(URI url, Optional<Path> caFile, Optional<String> username, Optional<Path> passwordFile) {}
