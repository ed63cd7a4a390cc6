package dev.lampwright.broker;

import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.Signature;
import java.security.cert.Certificate;
import java.security.cert.CertificateExpiredException;
import java.security.cert.CertificateNotYetValidException;
import java.security.cert.X509Certificate;
import java.util.List;
import javax.net.ssl.KeyManager;
import javax.net.ssl.KeyManagerFactory;

/** Our identity for a broker that requires a certificate. */
final class Identity {
    private static final byte[] SAMPLE = {1, 2, 3, 4};

    private Identity() {}

    /**
     * Reads certificate and key again.
     *
     * @param own where they are
     * @return the key managers that present them in a TLS handshake
     * @throws BrokerException if they cannot be used; the message says why
     */
    static KeyManager[] keyManagers(OwnCertificate own) throws BrokerException {
        List<X509Certificate> chain = new PemFile("certificate_file", own.certificateFile()).certificates();
        X509Certificate certificate = chain.get(0);
        checkTime(own, certificate);
        PrivateKey key = new PemFile("key_file", own.keyFile())
                .privateKey(certificate.getPublicKey().getAlgorithm());
        checkMatch(own, certificate, key);
        return keyManagers(chain, key);
    }

    private static void checkTime(OwnCertificate own, X509Certificate certificate) throws BrokerException {
        try {
            certificate.checkValidity();
        } catch (CertificateExpiredException e) {
            throw new BrokerException(
                    "certificate_file " + own.certificateFile() + " expired on "
                            + certificate.getNotAfter().toInstant() + "; get a new one",
                    e);
        } catch (CertificateNotYetValidException e) {
            throw new BrokerException(
                    "certificate_file " + own.certificateFile() + " is not valid before "
                            + certificate.getNotBefore().toInstant() + "; check the clock of this computer",
                    e);
        }
    }

    /** The certificate must verify what the key signs. */
    private static void checkMatch(OwnCertificate own, X509Certificate certificate, PrivateKey key)
            throws BrokerException {
        try {
            Signature signature = Signature.getInstance(signatureOf(key));
            signature.initSign(key);
            signature.update(SAMPLE);
            byte[] signed = signature.sign();
            signature.initVerify(certificate.getPublicKey());
            signature.update(SAMPLE);
            if (signature.verify(signed)) {
                return;
            }
        } catch (GeneralSecurityException e) {
            throw mismatch(own, e);
        }
        throw mismatch(own, null);
    }

    private static BrokerException mismatch(OwnCertificate own, Throwable cause) {
        return new BrokerException(
                "key_file " + own.keyFile() + " is not the key of certificate_file " + own.certificateFile()
                        + "; give the two that belong together",
                cause);
    }

    private static String signatureOf(PrivateKey key) {
        return switch (key.getAlgorithm()) {
            case "RSA" -> "SHA256withRSA";
            case "EC" -> "SHA256withECDSA";
            default -> key.getAlgorithm();
        };
    }

    private static KeyManager[] keyManagers(List<X509Certificate> chain, PrivateKey key) throws BrokerException {
        try {
            char[] passphrase = {};
            KeyStore store = Tls.emptyStore();
            store.setKeyEntry("own", key, passphrase, chain.toArray(Certificate[]::new));
            KeyManagerFactory factory = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
            factory.init(store, passphrase);
            return factory.getKeyManagers();
        } catch (GeneralSecurityException e) {
            throw Tls.impossible(e);
        }
    }
}
