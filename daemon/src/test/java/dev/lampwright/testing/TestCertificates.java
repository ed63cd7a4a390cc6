package dev.lampwright.testing;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * An authority made for one test, and a broker's certificate from it. Needs the Debian package {@code openssl}.
 *
 * @param authority PEM file with the certificate of the authority
 * @param certificate PEM file with the certificate of the broker
 * @param key PEM file with the key of the broker
 */
public record TestCertificates(Path authority, Path certificate, Path key) {
    /**
     * Makes them.
     *
     * @param folder where to; it is not cleaned up
     * @param host the host name that the broker's certificate is for
     * @return where they are
     */
    public static TestCertificates make(Path folder, String host) {
        Path authority = folder.resolve("authority.pem");
        Path authorityKey = folder.resolve("authority-key.pem");
        Path certificate = folder.resolve("broker.pem");
        Path key = folder.resolve("broker-key.pem");
        openssl(authorityKey, authority, "/CN=test authority", List.of());
        openssl(
                key,
                certificate,
                "/CN=" + host,
                List.of(
                        "-CA",
                        authority.toString(),
                        "-CAkey",
                        authorityKey.toString(),
                        "-addext",
                        "subjectAltName=DNS:" + host));
        return new TestCertificates(authority, certificate, key);
    }

    private static void openssl(Path key, Path certificate, String subject, List<String> more) {
        List<String> command = new ArrayList<>(List.of("openssl", "req", "-x509", "-newkey", "rsa:2048", "-nodes"));
        command.addAll(
                List.of("-days", "2", "-subj", subject, "-keyout", key.toString(), "-out", certificate.toString()));
        command.addAll(more);
        Tool.run(command, "openssl");
    }
}
