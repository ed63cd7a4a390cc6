package dev.lampwright.tool.fit;

import dev.lampwright.file.FileFailure;
import dev.lampwright.file.PrivateFile;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/**
 * Files next to a configuration for what is entered on the page: the broker's password, and certificates. Only this user may read them, and
 * the fitting never does.
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
        return write(beside(secret ? ".broker-password" : ".broker-ca.pem"), right);
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

    /** Never through a link, and never for a moment with another mode. */
    private static Path write(Path file, String text) throws IOException {
        Path beside = file.resolveSibling("." + file.getFileName() + ".new");
        try {
            Files.deleteIfExists(beside);
            try (BufferedWriter writer = PrivateFile.create(beside)) {
                writer.write(text);
            }
            Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            return file;
        } catch (IOException e) {
            Files.deleteIfExists(beside);
            throw FileFailure.ofWriting(file, e);
        }
    }
}
