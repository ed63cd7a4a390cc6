package dev.lampwright.tool.fit;

import dev.lampwright.file.PrivateFile;
import dev.lampwright.file.RandomToken;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Files next to a configuration for what is entered on the page, the broker's password and certificates, and for the page's tokens. Only
 * this user may read them, and the fitting never does.
 */
final class GivenFiles {
    private static final int LONGEST_PASSWORD = 1024;
    private static final String BEGINNING = "-----BEGIN CERTIFICATE-----";

    private final Path config;

    GivenFiles(Path config) {
        this.config = config.toAbsolutePath().normalize();
    }

    /**
     * Writes what was typed.
     *
     * @param kind a password or certificates
     * @param text what was typed
     * @return the path of the file
     * @throws Question.UnusableException if the text cannot be right
     * @throws IOException if it cannot be written; the message says what to do, and nothing of the text
     */
    Path write(Form.Kind kind, String text) throws Question.UnusableException, IOException {
        boolean secret = kind == Form.Kind.SECRET;
        String right = secret ? password(text) : certificates(text);
        Path file = beside(secret ? ".broker-password" : ".broker-ca.pem");
        PrivateFile.replace(file, right);
        return file;
    }

    /** Where the token is that lets people use the live page. */
    Path pageToken() {
        return beside(".page-token");
    }

    /** Where the token is that lets people save looks and fit as well. */
    Path editToken() {
        return beside(".edit-token");
    }

    /**
     * Makes both tokens of the page, and replaces those of an earlier file.
     *
     * @throws IOException if they cannot be written; the message says what to do
     */
    void makeTokens() throws IOException {
        PrivateFile.replace(pageToken(), RandomToken.make() + "\n");
        PrivateFile.replace(editToken(), RandomToken.make() + "\n");
    }

    /**
     * Deletes both, if they are there.
     *
     * @throws IOException if that fails
     */
    void deleteTokens() throws IOException {
        Files.deleteIfExists(pageToken());
        Files.deleteIfExists(editToken());
    }

    private Path beside(String suffix) {
        return config.resolveSibling(config.getFileName().toString().replaceFirst("\\.toml$", "") + suffix);
    }

    private static String password(String text) throws Question.UnusableException {
        if (text.isEmpty() || text.length() > LONGEST_PASSWORD || text.chars().anyMatch(Character::isISOControl)) {
            throw new Question.UnusableException(
                    "password_form",
                    "a password is one line of at most " + LONGEST_PASSWORD + " characters",
                    "most",
                    LONGEST_PASSWORD);
        }
        return text + "\n";
    }

    private static String certificates(String text) throws Question.UnusableException {
        if (!text.contains(BEGINNING)) {
            throw new Question.UnusableException(
                    "certificates_form", "certificates begin with " + BEGINNING, "beginning", BEGINNING);
        }
        return text.strip() + "\n";
    }
}
