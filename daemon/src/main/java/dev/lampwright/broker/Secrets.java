package dev.lampwright.broker;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.List;
import java.util.stream.Stream;

/** Files with secrets, which must not be readable by everybody. */
final class Secrets {
    private Secrets() {}

    /**
     * Warnings about careless permissions of a broker's files.
     *
     * @param broker the broker
     * @return one line for the user each
     */
    static List<String> warnings(Broker broker) {
        Stream<String> password = broker.passwordFile().stream()
                .filter(Secrets::isForEverybody)
                .map(file -> warning("password_file", file));
        Stream<String> key = broker.ownCertificate().stream()
                .map(OwnCertificate::keyFile)
                .filter(Secrets::isForEverybody)
                .map(file -> warning("key_file", file));
        return Stream.concat(password, key).toList();
    }

    private static String warning(String key, Path file) {
        return key + " " + file + " can be read by everybody on this computer; chmod o-r " + file;
    }

    /** Also false if the file does not exist, or if the file system has no permissions. */
    private static boolean isForEverybody(Path file) {
        try {
            return Files.getPosixFilePermissions(file).contains(PosixFilePermission.OTHERS_READ);
        } catch (IOException | UnsupportedOperationException e) {
            return false;
        }
    }
}
