package dev.lampwright.config;

import dev.lampwright.printer.Broker;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;

/** The section {@code [broker]}. What could hold a password is never shown. */
final class BrokerSection {
    /** Ports that IANA has registered for {@code mqtt} and {@code secure-mqtt}. */
    private static final Map<String, Integer> PORTS = Map.of("mqtt", 1883, "mqtts", 8883);

    private static final int HIGHEST_PORT = 65535;
    private static final String WANTED_URL =
            "give \"mqtt://host\" or \"mqtts://host\", with :port if it is not 1883 or 8883";
    private static final String WANTED_USER = "give the name to log in with";
    private static final URI STAND_IN = URI.create("mqtt://127.0.0.1:1883");

    private BrokerSection() {}

    /**
     * Reads the section.
     *
     * @param table the section
     * @param folder what relative paths start from
     * @return the broker
     */
    static Broker read(Table table, Path folder) {
        URI url =
                table.needText("url", WANTED_URL).map(text -> url(table, text)).orElse(STAND_IN);
        Optional<Path> caFile =
                FilePath.read(table, "ca_file", "give the path of a PEM file with certificates", folder);
        Optional<String> username = table.text("username", WANTED_USER);
        Optional<Path> passwordFile = FilePath.read(
                table, "password_file", "give the path of a file whose first line is the password", folder);
        if (caFile.isPresent() && url.getScheme().equals("mqtt")) {
            table.mistake("ca_file", "does nothing for mqtt://", "use mqtts:// in url, or leave ca_file out");
        }
        if (passwordFile.isPresent() && !table.has("username")) {
            table.mistake("password_file", "has no username beside it, which MQTT 3.1.1 does not allow", WANTED_USER);
        }
        return new Broker(url, caFile, username, passwordFile);
    }

    private static URI url(Table table, String text) {
        try {
            URI url = new URI(text);
            Optional<Wrong> wrong = wrong(url);
            wrong.ifPresent(w -> table.mistake("url", w.what, w.right));
            return wrong.isPresent() ? STAND_IN : withPort(url);
        } catch (URISyntaxException e) {
            table.mistake("url", "is no URL", WANTED_URL);
            return STAND_IN;
        }
    }

    private record Wrong(String what, String right) {}

    private static Optional<Wrong> wrong(URI url) {
        String scheme = String.valueOf(url.getScheme());
        if (String.valueOf(url.getRawAuthority()).contains("@")) {
            return Optional.of(new Wrong("has a name or a password in it", "use username and password_file"));
        }
        if (!PORTS.containsKey(scheme)) {
            return Optional.of(new Wrong("does not begin with mqtt:// or mqtts://", WANTED_URL));
        }
        if (url.getHost() == null) {
            return Optional.of(new Wrong("has no host name or address that can be one", WANTED_URL));
        }
        if (url.getPort() == 0 || url.getPort() > HIGHEST_PORT) {
            return Optional.of(new Wrong("has port " + url.getPort(), "give a port from 1 to 65535"));
        }
        boolean bare = url.getRawPath().isEmpty() && url.getRawQuery() == null && url.getRawFragment() == null;
        return bare ? Optional.empty() : Optional.of(new Wrong("has something after the host", WANTED_URL));
    }

    private static URI withPort(URI url) {
        int port = url.getPort() > 0 ? url.getPort() : PORTS.get(url.getScheme());
        return URI.create(url.getScheme() + "://" + url.getHost() + ":" + port);
    }
}
