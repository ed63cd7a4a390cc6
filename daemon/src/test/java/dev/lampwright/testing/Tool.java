package dev.lampwright.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** Programs that tests run. */
final class Tool {
    private static final int DEADLINE_S = 30;

    private Tool() {}

    /**
     * Runs a program to its end.
     *
     * @param command the program and its arguments
     * @param debianPackage its Debian package, for the failure message
     * @return its output
     * @throws AssertionError if it is not installed, takes longer than 30 s or fails; the message contains its output
     */
    static String run(List<String> command, String debianPackage) {
        Path output = newFile();
        Process process = start(command, output, debianPackage);
        try {
            if (!process.waitFor(DEADLINE_S, TimeUnit.SECONDS)) {
                throw new AssertionError(command.get(0) + " takes longer than " + DEADLINE_S + " s");
            }
            if (process.exitValue() != 0) {
                throw new AssertionError(command.get(0) + " failed: " + text(output));
            }
            return text(output);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError("interrupted while waiting for " + command.get(0), e);
        } finally {
            process.destroyForcibly();
            remove(output);
        }
    }

    /**
     * Starts a program.
     *
     * @param command the program and its arguments
     * @param output file for its output
     * @param debianPackage its Debian package, for the failure message
     * @return the process
     * @throws AssertionError if it is not installed
     */
    static Process start(List<String> command, Path output, String debianPackage) {
        try {
            return new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(output.toFile())
                    .start();
        } catch (IOException e) {
            throw new AssertionError(
                    command.get(0) + " cannot be started; install the Debian package " + debianPackage, e);
        }
    }

    private static void remove(Path file) {
        try {
            Files.delete(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static String text(Path output) {
        try {
            return Files.readString(output);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Path newFile() {
        try {
            return Files.createTempFile("lampwright-tool", ".out");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
