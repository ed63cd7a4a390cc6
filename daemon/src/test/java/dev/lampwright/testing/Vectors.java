package dev.lampwright.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The wire's test vectors, which a script generates from {@code wire.md} alone. */
public final class Vectors {
    private static final Path FILE = Path.of("..", "firmware-notes", "vectors", "packets.txt");

    private Vectors() {}

    /**
     * The bytes on the line.
     *
     * @param name of the vector
     * @return its wire, in hexadecimal
     */
    public static String wire(String name) {
        try {
            return Files.readAllLines(FILE).stream()
                    .map(line -> line.split(" ", -1))
                    .filter(words -> words.length > 2 && words[1].equals(name))
                    .map(words -> words[2])
                    .findFirst()
                    .orElseThrow();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
