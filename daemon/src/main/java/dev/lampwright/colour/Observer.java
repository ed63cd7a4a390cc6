package dev.lampwright.colour;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** The CIE 1931 standard observer, 2°: how an eye responds to a spectrum. The table names its source. */
final class Observer {
    private static final double STEP_M = 5e-9;
    private static final double M_PER_NM = 1e-9;
    private static final List<double[]> ROWS = read();

    private Observer() {}

    /**
     * Integrates a spectrum.
     *
     * @param spectrum from the wavelength in metres to the power there, per metre of wavelength
     * @return CIE X, Y and Z, in the unit of power
     */
    static Triple xyz(DoubleUnaryOperator spectrum) {
        double[] sums = new double[3];
        for (double[] row : ROWS) {
            double power = spectrum.applyAsDouble(row[0] * M_PER_NM) * STEP_M;
            for (int i = 0; i < sums.length; i++) {
                sums[i] += power * row[i + 1];
            }
        }
        return new Triple(sums[0], sums[1], sums[2]);
    }

    private static List<double[]> read() {
        try (InputStream file = Observer.class.getResourceAsStream("observer.txt");
                BufferedReader reader = new BufferedReader(new InputStreamReader(file, StandardCharsets.US_ASCII))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#"))
                    .map(line -> Arrays.stream(line.split(" ", 4))
                            .mapToDouble(Double::parseDouble)
                            .toArray())
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
