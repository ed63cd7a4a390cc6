package dev.lampwright.colour;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** Conversions and mixtures from general colour libraries, whose names and versions are in the first line of the file. */
final class Vectors {
    private Vectors() {}

    /** The lines of a kind, each as its fields after the kind. */
    static List<String[]> of(String kind) {
        try (BufferedReader reader = new BufferedReader(
                new InputStreamReader(Vectors.class.getResourceAsStream("vectors.txt"), StandardCharsets.US_ASCII))) {
            return reader.lines()
                    .filter(line -> line.startsWith(kind + "|"))
                    .map(line -> line.substring(kind.length() + 1).split("\\|", -1))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static double[] numbers(String field) {
        return Arrays.stream(field.split(" ", -1))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }
}
