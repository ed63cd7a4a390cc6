package dev.lampwright.printer;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateException;
import java.security.cert.CertificateFactory;
import java.util.Collection;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLSocketFactory;
import javax.net.ssl.TrustManagerFactory;

/** Whose word is taken for who a broker is. */
final class TrustedAuthorities {
    private TrustedAuthorities() {}

    /**
     * Makes TLS sockets that trust these.
     *
     * @param caFile PEM file with certificates; empty for those of the Java runtime
     * @return a factory of TLS sockets, which check the certificate's chain
     * @throws BrokerException if the file cannot be used; the message says why
     */
    static SSLSocketFactory sockets(Optional<Path> caFile) throws BrokerException {
        try {
            SSLContext context = SSLContext.getInstance("TLS");
            TrustManagerFactory trust = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
            trust.init(caFile.isPresent() ? store(caFile.get()) : null);
            context.init(null, trust.getTrustManagers(), null);
            return context.getSocketFactory();
        } catch (GeneralSecurityException e) {
            throw new BrokerException("this Java runtime cannot do TLS: " + e.getMessage(), e);
        }
    }

    private static KeyStore store(Path caFile) throws BrokerException, GeneralSecurityException {
        try {
            KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
            store.load(null, null);
            int number = 0;
            for (Certificate certificate : certificates(caFile)) {
                store.setCertificateEntry("ca" + number++, certificate);
            }
            return store;
        } catch (IOException e) {
            throw new BrokerException("ca_file " + caFile + " cannot be read; check that it exists and who owns it", e);
        }
    }

    private static Collection<? extends Certificate> certificates(Path caFile) throws BrokerException, IOException {
        try (InputStream in = Files.newInputStream(caFile)) {
            Collection<? extends Certificate> all =
                    CertificateFactory.getInstance("X.509").generateCertificates(in);
            if (all.isEmpty()) {
                throw new BrokerException("ca_file " + caFile + " has no certificate in it; it must be PEM");
            }
            return all;
        } catch (CertificateException e) {
            throw new BrokerException("ca_file " + caFile + " is no PEM file of certificates", e);
        }
    }
}
