package dev.lampwright.protocol;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;

/** The project's test vectors, which a script makes from {@code wire.md} alone and which the C reader takes too. */
final class Vectors {
    static final HexFormat HEX = HexFormat.of();

    private static final Path FILE = Path.of("..", "firmware-notes", "vectors", "packets.txt");

    /** A line of the file: the message is absent where the wire is to be read as none. */
    record Vector(String name, String wireHex, List<Recorder.Copy> messages) {
        byte[] wire() {
            return HEX.parseHex(wireHex);
        }

        @Override
        public String toString() {
            return name;
        }
    }

    private Vectors() {}

    static Stream<Vector> all() {
        try {
            return Files.readAllLines(FILE).stream()
                    .filter(line -> !line.startsWith("#"))
                    .map(Vectors::parse);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Stream<Vector> good() {
        return all().filter(vector -> !vector.messages.isEmpty());
    }

    static Vector named(String name) {
        return all().filter(vector -> vector.name.equals(name)).findFirst().orElseThrow();
    }

    private static Vector parse(String line) {
        String[] words = line.split(" ", -1);
        return switch (words[0]) {
            case "good" -> new Vector(words[1], words[2], List.of(message(words)));
            case "bad" -> new Vector(words[1], words[2], List.of());
            default -> throw new IllegalStateException("not a vector: " + line);
        };
    }

    private static Recorder.Copy message(String[] words) {
        String body = words[5].equals("-") ? "" : words[5];
        return new Recorder.Copy(Integer.parseInt(words[3], 16), Integer.parseInt(words[4], 16), body);
    }
}
