package dev.lampwright.broker;

import dev.lampwright.file.RegularFile;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;

/** The credentials of a client. There is no {@code toString}, so no log can show the password. */
final class Login {
    private final Optional<String> username;
    private final Optional<char[]> password;

    private Login(Optional<String> username, Optional<char[]> password) {
        this.username = username;
        this.password = password;
    }

    /**
     * Reads the password file again.
     *
     * @param broker the broker
     * @return the user name and password
     * @throws BrokerException if there is no password where there should be one, or one without a user name, which MQTT 3.1.1 does not have
     *     (section 3.1.2.9)
     */
    static Login of(Broker broker) throws BrokerException {
        if (broker.passwordFile().isPresent() && broker.username().isEmpty()) {
            throw new BrokerException("password_file is set without username; set both or neither");
        }
        Optional<Path> file = broker.passwordFile();
        return new Login(broker.username(), file.isPresent() ? Optional.of(password(file.get())) : Optional.empty());
    }

    /** The first line of a file, in UTF-8. An error names the file and never shows its content. */
    private static char[] password(Path file) throws BrokerException {
        requireRegular(file);
        try (BufferedReader reader = Files.newBufferedReader(file)) {
            String line = reader.readLine();
            if (line == null || line.isEmpty()) {
                throw new BrokerException("password_file " + file + " has no first line; write the password there");
            }
            return line.toCharArray();
        } catch (NoSuchFileException e) {
            throw new BrokerException("password_file " + file + " does not exist; write the password there", e);
        } catch (AccessDeniedException e) {
            throw new BrokerException("password_file " + file + " cannot be read by this user; change its owner", e);
        } catch (IOException e) {
            throw new BrokerException("password_file " + file + " cannot be read as UTF-8 text", e);
        }
    }

    private static void requireRegular(Path file) throws BrokerException {
        try {
            RegularFile.require(file);
        } catch (IOException e) {
            throw new BrokerException(
                    "password_file " + file + " cannot be read: it " + e.getMessage()
                            + "; write the password into a file",
                    e);
        }
    }

    Optional<String> username() {
        return username;
    }

    Optional<char[]> password() {
        return password;
    }
}
