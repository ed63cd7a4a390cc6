package dev.lampwright.broker;

import java.io.IOException;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.util.Optional;
import javax.net.ssl.KeyManager;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLSocketFactory;
import javax.net.ssl.TrustManagerFactory;

/** Encrypted connections: which authorities are trusted for a broker, and our own identity. */
final class Tls {
    private Tls() {}

    /**
     * Creates TLS sockets for a broker. Its files are read again.
     *
     * @param broker the broker
     * @return a factory of TLS sockets, which check the chain of the broker's certificate
     * @throws BrokerException if a file cannot be used; the message says why
     */
    static SSLSocketFactory sockets(Broker broker) throws BrokerException {
        Optional<OwnCertificate> own = broker.ownCertificate();
        KeyManager[] identity = own.isPresent() ? Identity.keyManagers(own.get()) : new KeyManager[0];
        try {
            TrustManagerFactory trust = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
            trust.init(broker.caFile().isPresent() ? trusted(broker.caFile().get()) : null);
            SSLContext context = SSLContext.getInstance("TLS");
            context.init(identity, trust.getTrustManagers(), null);
            return context.getSocketFactory();
        } catch (GeneralSecurityException e) {
            throw impossible(e);
        }
    }

    private static KeyStore trusted(Path caFile) throws BrokerException, GeneralSecurityException {
        KeyStore store = emptyStore();
        int number = 0;
        for (Certificate certificate : new PemFile("ca_file", caFile).certificates()) {
            store.setCertificateEntry("ca" + number++, certificate);
        }
        return store;
    }

    /**
     * A place for keys and certificates, in memory.
     *
     * @return an empty one
     * @throws BrokerException if the Java runtime has none
     */
    static KeyStore emptyStore() throws BrokerException {
        try {
            KeyStore store = KeyStore.getInstance("PKCS12");
            store.load(null, null);
            return store;
        } catch (GeneralSecurityException | IOException e) {
            throw impossible(e);
        }
    }

    static BrokerException impossible(Exception e) {
        return new BrokerException("this Java runtime cannot do TLS: " + e.getMessage(), e);
    }
}
