package dev.lampwright.testing;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * An authority made for one test, and a broker's certificate from it. Needs the Debian package {@code openssl}.
 *
 * @param authority PEM file with the certificate of the authority
 * @param certificate PEM file with the certificate of the broker
 * @param key PEM file with the key of the broker
 */
public record TestCertificates(Path authority, Path certificate, Path key) {
    /**
     * A certificate that the authority has issued.
     *
     * @param certificate PEM file with it
     * @param key PEM file with its key, PKCS #8
     */
    public record Issued(Path certificate, Path key) {}

    /**
     * Creates them.
     *
     * @param folder the folder; it is not cleaned up
     * @param host the host name that the broker's certificate is for
     * @return where they are
     */
    public static TestCertificates make(Path folder, String host) {
        Path authority = folder.resolve("authority.pem");
        Path authorityKey = folder.resolve("authority-key.pem");
        Path certificate = folder.resolve("broker.pem");
        Path key = folder.resolve("broker-key.pem");
        openssl(authorityKey, authority, "/CN=test authority", List.of());
        issue(authority, key, certificate, host);
        return new TestCertificates(authority, certificate, key);
    }

    /**
     * Issues a certificate from the authority.
     *
     * @param name the subject
     * @return a certificate with that name, and its key
     */
    public Issued issue(String name) {
        Path folder = authority.getParent();
        Issued issued = new Issued(folder.resolve(name + ".pem"), folder.resolve(name + "-key.pem"));
        issue(authority, issued.key, issued.certificate, name);
        return issued;
    }

    private static void issue(Path authority, Path key, Path certificate, String name) {
        openssl(
                key,
                certificate,
                "/CN=" + name,
                List.of(
                        "-CA",
                        authority.toString(),
                        "-CAkey",
                        authority.resolveSibling("authority-key.pem").toString(),
                        "-addext",
                        "subjectAltName=DNS:" + name));
    }

    /**
     * Creates a self-signed certificate.
     *
     * @param folder where to
     * @param name its subject, and the name of its files
     * @param options of {@code openssl req}, such as the kind of key
     * @return the certificate
     */
    public static Issued selfSigned(Path folder, String name, String... options) {
        Issued issued = new Issued(folder.resolve(name + ".pem"), folder.resolve(name + "-key.pem"));
        List<String> command = new ArrayList<>(List.of("openssl", "req", "-x509", "-subj", "/CN=" + name));
        command.addAll(List.of("-keyout", issued.key.toString(), "-out", issued.certificate.toString()));
        command.addAll(List.of(options));
        Tool.run(command, "openssl");
        return issued;
    }

    /**
     * Creates a self-signed certificate that expired some days ago. {@code openssl req} cannot; {@code keytool} can.
     *
     * @param folder where to
     * @return it
     */
    public static Issued expired(Path folder) {
        String store = folder.resolve("expired.p12").toString();
        Issued issued = new Issued(folder.resolve("expired.pem"), folder.resolve("expired-key.pem"));
        List<String> make =
                new ArrayList<>(List.of("keytool", "-genkeypair", "-keystore", store, "-storepass", "sesame"));
        make.addAll(List.of("-storetype", "PKCS12", "-keyalg", "EC", "-dname", "CN=expired"));
        make.addAll(List.of("-startdate", "-10d", "-validity", "5"));
        Tool.run(make, "default-jdk-headless");
        List<String> unpack = List.of("openssl", "pkcs12", "-in", store, "-passin", "pass:sesame");
        List<String> key = List.of("-nocerts", "-nodes", "-out", issued.key.toString());
        List<String> certificate = List.of("-nokeys", "-out", issued.certificate.toString());
        Tool.run(Stream.concat(unpack.stream(), key.stream()).toList(), "openssl");
        Tool.run(Stream.concat(unpack.stream(), certificate.stream()).toList(), "openssl");
        return issued;
    }

    /**
     * Writes an RSA key in the form that came before PKCS #8.
     *
     * @param key the key
     * @param older where to
     */
    public static void writeInOlderForm(Path key, Path older) {
        Tool.run(List.of("openssl", "rsa", "-traditional", "-in", key.toString(), "-out", older.toString()), "openssl");
    }

    private static void openssl(Path key, Path certificate, String subject, List<String> more) {
        List<String> command = new ArrayList<>(List.of("openssl", "req", "-x509", "-newkey", "rsa:2048", "-nodes"));
        command.addAll(
                List.of("-days", "2", "-subj", subject, "-keyout", key.toString(), "-out", certificate.toString()));
        command.addAll(more);
        Tool.run(command, "openssl");
    }
}
