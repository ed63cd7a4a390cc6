package dev.lampwright.config;

import java.net.URI;
import java.net.URISyntaxException;
import java.util.Locale;
import java.util.Map;

/**
 * The address of a broker: {@code mqtt://host:port} or {@code mqtts://host:port}. Anything that could contain a password is never shown.
 */
final class BrokerUrl {
    /** What would be valid. */
    static final String WANTED = "give \"mqtt://host\" or \"mqtts://host\", with :port if it is not 1883 or 8883";

    /** Ports that IANA has registered for {@code mqtt} and {@code secure-mqtt}. */
    private static final Map<String, Integer> PORTS = Map.of("mqtt", 1883, "mqtts", 8883);

    private static final int HIGHEST_PORT = 65535;

    private BrokerUrl() {}

    /**
     * Reads an address.
     *
     * @param text as given by the user
     * @return the same, with its port, and its scheme in lower case (RFC 3986, section 3.1: schemes are case-insensitive)
     * @throws IllegalArgumentException if it is not valid; the message says what is wrong and, after a semicolon, what would be valid
     */
    static URI parse(String text) {
        try {
            return withPort(new URI(text));
        } catch (URISyntaxException e) {
            throw wrong("is not a URL", WANTED);
        }
    }

    private static URI withPort(URI url) {
        String scheme = String.valueOf(url.getScheme()).toLowerCase(Locale.ROOT);
        if (String.valueOf(url.getRawAuthority()).contains("@")) {
            throw wrong("has a name or a password in it", "use username and password_file");
        }
        if (!PORTS.containsKey(scheme)) {
            throw wrong("does not begin with mqtt:// or mqtts://", WANTED);
        }
        if (url.getHost() == null) {
            throw wrong("has no host name or address that can be one", WANTED);
        }
        if (url.getPort() == 0 || url.getPort() > HIGHEST_PORT) {
            throw wrong("has port " + url.getPort(), "give a port from 1 to 65535");
        }
        if (!url.getRawPath().isEmpty() || url.getRawQuery() != null || url.getRawFragment() != null) {
            throw wrong("has something after the host", WANTED);
        }
        int port = url.getPort() > 0 ? url.getPort() : PORTS.get(scheme);
        return URI.create(scheme + "://" + url.getHost() + ":" + port);
    }

    private static IllegalArgumentException wrong(String what, String right) {
        return new IllegalArgumentException(what + "; " + right);
    }
}
