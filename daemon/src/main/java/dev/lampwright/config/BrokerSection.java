package dev.lampwright.config;

import dev.lampwright.printer.Broker;
import java.net.URI;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;

/** The section {@code [broker]}. What could hold a password is never shown. */
final class BrokerSection {
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
        URI url = table.needText("url", BrokerUrl.WANTED)
                .flatMap(text -> table.attempt("url", BrokerUrl.WANTED, () -> BrokerUrl.parse(text)))
                .orElse(STAND_IN);
        Optional<Path> caFile = path(table, "ca_file", "give the path of a PEM file with certificates", folder);
        Optional<String> username = table.text("username", WANTED_USER);
        Optional<Path> passwordFile =
                path(table, "password_file", "give the path of a file whose first line is the password", folder);
        if (caFile.isPresent() && url.getScheme().equals("mqtt")) {
            table.mistake("ca_file", "does nothing for mqtt://", "use mqtts:// in url, or leave ca_file out");
        }
        if (passwordFile.isPresent() && !table.has("username")) {
            table.mistake("password_file", "has no username beside it, which MQTT 3.1.1 does not allow", WANTED_USER);
        }
        return new Broker(url, caFile, username, passwordFile);
    }

    /** A path; a relative one starts from the folder. Empty if it is left out or wrong. */
    static Optional<Path> path(Table table, String key, String wanted, Path folder) {
        try {
            return table.text(key, wanted).map(text -> folder.resolve(text).normalize());
        } catch (InvalidPathException e) {
            table.mistake(key, "is no path", wanted);
            return Optional.empty();
        }
    }
}
