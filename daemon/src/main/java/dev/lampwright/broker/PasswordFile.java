package dev.lampwright.broker;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** A file whose first line is a password, in UTF-8. */
final class PasswordFile {
    private PasswordFile() {}

    /**
     * Reads it anew.
     *
     * @param file the file
     * @return the first line
     * @throws BrokerException if there is none; the message names the file and never shows what stands in it
     */
    static char[] read(Path file) throws BrokerException {
        try (BufferedReader reader = Files.newBufferedReader(file)) {
            String line = reader.readLine();
            if (line == null || line.isEmpty()) {
                throw new BrokerException("password_file " + file + " has no first line; write the password there");
            }
            return line.toCharArray();
        } catch (NoSuchFileException e) {
            throw new BrokerException("password_file " + file + " does not exist; write the password there", e);
        } catch (AccessDeniedException e) {
            throw new BrokerException("password_file " + file + " may not be read by this user; change its owner", e);
        } catch (IOException e) {
            throw new BrokerException("password_file " + file + " cannot be read as UTF-8 text", e);
        }
    }
}
