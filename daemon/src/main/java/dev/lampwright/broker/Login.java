package dev.lampwright.broker;

import java.nio.file.Path;
import java.util.Optional;

/** What a client shows the broker to be let in. It has no {@code toString} of its own, so no log can show the password. */
final class Login {
    private final Optional<String> username;
    private final Optional<char[]> password;

    private Login(Optional<String> username, Optional<char[]> password) {
        this.username = username;
        this.password = password;
    }

    /**
     * Reads the password file anew.
     *
     * @param broker how to get in
     * @return the user name and password
     * @throws BrokerException if there is no password where there should be one, or one without a user name, which MQTT 3.1.1
     *     does not have (section 3.1.2.9)
     */
    static Login of(Broker broker) throws BrokerException {
        if (broker.passwordFile().isPresent() && broker.username().isEmpty()) {
            throw new BrokerException("there is a password_file and no username; name both or neither");
        }
        Optional<Path> file = broker.passwordFile();
        return new Login(
                broker.username(), file.isPresent() ? Optional.of(PasswordFile.read(file.get())) : Optional.empty());
    }

    Optional<String> username() {
        return username;
    }

    Optional<char[]> password() {
        return password;
    }
}
