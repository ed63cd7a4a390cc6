package dev.lampwright.config;

import dev.lampwright.broker.Broker;
import dev.lampwright.broker.OwnCertificate;
import java.net.URI;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;

/** The section {@code [broker]}. Anything that could contain a password is never shown. */
final class BrokerSection {
    private static final String WANTED_USER = "give the name to log in with";
    private static final String CREDENTIAL = "credential:";

    private static final String CERTIFICATE = "certificate_file";
    private static final String KEY = "key_file";
    private static final String WANTED_CERTIFICATE = "give the path of a PEM file with our own certificate";
    private static final String WANTED_KEY = "give the path of a PEM file with its key, PKCS #8 and not encrypted";

    /** The broker, and how to log in there. */
    static final Section SECTION = Section.of(
            "broker",
            "where the printer reports",
            Key.own("url", "`mqtt://host` or `mqtts://host`, with a port if it is not 1883 or 8883")
                    .needed()
                    .example("\"mqtt://127.0.0.1:1883\"", "or mqtts://; without a port, 1883 or 8883"),
            Key.own("ca_file", "path of a PEM file")
                    .without("those of the Java runtime")
                    .comment("\"ca.pem\"", "certificates that mqtts:// trusts"),
            Key.own(CERTIFICATE, "path of a PEM file")
                    .with(KEY)
                    .comment("\"lampwright.pem\"", "our own, for a broker that asks who we are"),
            Key.own(KEY, "path of a PEM file, PKCS #8 and not encrypted")
                    .with(CERTIFICATE)
                    .comment("\"lampwright-key.pem\"", "its key"),
            Key.text("username", "text", WANTED_USER).comment("\"lamp\"", "the name to log in with"),
            Key.own("password_file", "path, or `credential:NAME` that systemd hands over")
                    .with("username")
                    .comment(
                            "\"password\"",
                            "its first line is the password; relative paths start from this file's folder"));

    private static final URI STAND_IN = URI.create("mqtt://127.0.0.1:1883");

    private BrokerSection() {}

    /**
     * Reads the section.
     *
     * @param table the section
     * @return the broker
     */
    static Broker read(Table table) {
        URI url = table.as(SECTION)
                .needText("url", BrokerUrl.WANTED)
                .flatMap(text -> table.attempt("url", BrokerUrl.WANTED, () -> BrokerUrl.parse(text)))
                .orElse(STAND_IN);
        Optional<Path> caFile = path(table, "ca_file", "give the path of a PEM file with certificates");
        Optional<String> username = table.text("username", WANTED_USER);
        Optional<Path> passwordFile = passwordFile(table, System.getenv());
        if (caFile.isPresent() && url.getScheme().equals("mqtt")) {
            table.mistake("ca_file", "does nothing for mqtt://", "use mqtts:// in url, or leave ca_file out");
        }
        if (passwordFile.isPresent() && !table.has("username")) {
            table.mistake("password_file", "needs username (MQTT 3.1.1)", WANTED_USER);
        }
        return new Broker(url, caFile, username, passwordFile, ownCertificate(table, url));
    }

    private static Optional<OwnCertificate> ownCertificate(Table table, URI url) {
        Optional<Path> certificateFile = path(table, CERTIFICATE, WANTED_CERTIFICATE);
        Optional<Path> keyFile = path(table, KEY, WANTED_KEY);
        if (table.has(CERTIFICATE) != table.has(KEY)) {
            boolean isKeyMissing = table.has(CERTIFICATE);
            table.mistake(
                    isKeyMissing ? CERTIFICATE : KEY,
                    "has no " + (isKeyMissing ? KEY : CERTIFICATE) + " beside it",
                    isKeyMissing ? WANTED_KEY : WANTED_CERTIFICATE);
        } else if (table.has(CERTIFICATE) && url.getScheme().equals("mqtt")) {
            table.mistake(CERTIFICATE, "does nothing for mqtt://", "use mqtts:// in url, or leave it and key_file out");
        }
        return certificateFile.flatMap(certificate -> keyFile.map(key -> new OwnCertificate(certificate, key)));
    }

    /**
     * A path, or {@code credential:NAME}: one of the {@link Credentials}.
     */
    static Optional<Path> passwordFile(Table table, Map<String, String> environment) {
        String wanted = "give the path of a file whose first line is the password, or \"credential:NAME\"";
        Optional<String> text = table.text("password_file", wanted);
        if (text.isEmpty() || !text.get().startsWith(CREDENTIAL)) {
            return path(table, "password_file", wanted);
        }
        String name = text.get().substring(CREDENTIAL.length());
        if (name.isEmpty() || name.contains("/")) {
            table.mistake("password_file", "has no name that a credential can have", wanted);
            return Optional.empty();
        }
        return Optional.of(Credentials.file(name, environment));
    }

    /** A path; a relative one is resolved against the folder of its file. Empty if missing or wrong. */
    static Optional<Path> path(Table table, String key, String wanted) {
        try {
            return table.text(key, wanted)
                    .map(text -> table.folder(key).resolve(text).normalize());
        } catch (InvalidPathException e) {
            table.mistake(key, "is not a path", wanted);
            return Optional.empty();
        }
    }
}
