package dev.lampwright.broker;

import java.io.EOFException;
import java.net.ConnectException;
import java.net.NoRouteToHostException;
import java.net.ProtocolException;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.security.cert.CertificateException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.net.ssl.SSLException;
import org.eclipse.paho.client.mqttv3.MqttException;

/** What went wrong with a connection, in words for the user. */
final class BrokerWords {
    private static final String LOST = "the connection was lost; check the broker's log and the network";

    private static final Optional<Why> LOST_AT_ONCE = Why.of("broker_lost", LOST);

    private static final String TURNED_AWAY =
            "the broker closed the connection before the login was complete; check its log, certificate_file and key_file";
    private static final List<String> ABOUT_OUR_CERTIFICATE = List.of(
            "certificate_required",
            "bad_certificate",
            "unsupported_certificate",
            "certificate_revoked",
            "certificate_expired",
            "certificate_unknown",
            "unknown_ca",
            "access_denied");

    /** A reason, with the code by which others find their own text for it. */
    private record Why(String code, String words) {
        static Optional<Why> of(String code, String words) {
            return Optional.of(new Why(code, words));
        }
    }

    private BrokerWords() {}

    /**
     * Puts a failure into words.
     *
     * @param failure the exception from Paho, the network or our own code
     * @return the same as an exception with a message for the user
     */
    static BrokerException failure(Throwable failure) {
        if (failure instanceof BrokerException ours) {
            return ours;
        }
        Why why = causes(failure)
                .map(BrokerWords::network)
                .flatMap(Optional::stream)
                .findFirst()
                .or(() -> answer(failure))
                .orElseGet(() -> unexpected(failure));
        return new BrokerException(why.code, why.words, failure);
    }

    /**
     * Puts a failure before the login was accepted into words.
     *
     * @param failure the exception from Paho, the network or our own code
     * @param isSecure whether over TLS. In TLS 1.3 (RFC 8446, section 2) a client has finished before its certificate is looked at, and the
     *     reason for a refusal is often lost with the connection
     * @return the same as an exception with a message for the user
     */
    static BrokerException failureToOpen(Throwable failure, boolean isSecure) {
        BrokerException plain = failure(failure);
        return isSecure && plain.getMessage().equals(LOST) ? new BrokerException(TURNED_AWAY, failure) : plain;
    }

    private static Stream<Throwable> causes(Throwable failure) {
        return Stream.iterate(failure, cause -> cause != null, Throwable::getCause)
                .limit(10);
    }

    private static Optional<Why> network(Throwable cause) {
        if (cause instanceof UnknownHostException) {
            return Why.of("broker_unknown_host", "unknown host; check the url and the DNS server");
        } else if (cause instanceof NoRouteToHostException) {
            return Why.of("broker_no_route", "there is no route to the host; check the network");
        } else if (cause instanceof ConnectException) {
            return Why.of("broker_closed", "nothing listens there; start the broker or check the port");
        } else if (cause instanceof SocketTimeoutException) {
            return Why.of("broker_silent", "the host does not answer; check the network and the url");
        } else if (cause instanceof SSLException) {
            return Why.of("", tls(cause));
        } else if (cause instanceof ProtocolException) {
            return Why.of("", cause.getMessage());
        } else if (cause instanceof EOFException || cause instanceof SocketException) {
            return LOST_AT_ONCE;
        }
        return Optional.empty();
    }

    private static String tls(Throwable failure) {
        return causes(failure)
                .filter(CertificateException.class::isInstance)
                .findFirst()
                .map(cause -> "the certificate is not for this host or not from a trusted authority ("
                        + cause.getMessage() + "); check the url and ca_file")
                .or(() -> refusal(failure))
                .orElseGet(() -> "TLS failed (" + failure.getMessage() + "); check that this port speaks TLS,"
                        + " then ca_file, and certificate_file if the broker asks for one");
    }

    /** Alerts of RFC 8446, section 6.2, with which a broker refuses our certificate, or a missing one. */
    private static Optional<String> refusal(Throwable failure) {
        String message = String.valueOf(failure.getMessage());
        return message.contains("fatal alert") && ABOUT_OUR_CERTIFICATE.stream().anyMatch(message::contains)
                ? Optional.of("the broker rejected our certificate (" + message
                        + "); check certificate_file and key_file, and that the broker trusts who signed them")
                : Optional.empty();
    }

    /** Return codes of MQTT 3.1.1, section 3.2.2.3, and those that Paho adds. */
    private static Optional<Why> answer(Throwable failure) {
        int code = failure instanceof MqttException mqtt ? mqtt.getReasonCode() : 0;
        return switch (code) {
            case 1 -> Why.of("broker_version", "the broker does not speak MQTT 3.1.1; use one that does");
            case 2 -> Why.of("", "the broker rejects our client id; its log says why");
            case 3 -> Why.of("broker_unavailable", "the broker reports that it is unavailable; check it");
            case 4 ->
                Why.of(
                        "broker_login",
                        "the broker rejected the user name or the password; check username and password_file");
            case 5 ->
                Why.of(
                        "broker_login",
                        "the broker refused the login; check username, password_file and its access list");
            case MqttException.REASON_CODE_CLIENT_TIMEOUT, MqttException.REASON_CODE_WRITE_TIMEOUT ->
                Why.of("broker_silent", "the broker stopped answering; check it and the network");
            case MqttException.REASON_CODE_CONNECTION_LOST, MqttException.REASON_CODE_CLIENT_NOT_CONNECTED ->
                LOST_AT_ONCE;
            case MqttException.REASON_CODE_INVALID_MESSAGE ->
                Why.of("broker_no_mqtt", "what came back is not MQTT; check the port in the url");
            default -> Optional.empty();
        };
    }

    private static Why unexpected(Throwable failure) {
        return new Why(
                "broker_no_mqtt", "what came back is not valid MQTT (" + failure + "); check the port in the url");
    }
}
