package dev.lampwright.tool.fit;

import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.Setup;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the fitting has found so far. Each step adds its part.
 *
 * @param board the controller
 * @param supply what feeds the strip; empty until known
 * @param order the strip's order of channels
 * @param strip how long it is
 * @param zones named runs of pixels, by name
 * @param brightness share of the light that suits the room, 0 to 1
 * @param currents what was measured
 * @param dimmers what is on the controller's dimmers, from the first on
 * @param dimmerSupply what feeds them; empty if nothing is on them
 * @param printer the file's part about broker and printer, TOML
 * @param mount how the strip is mounted
 * @param page whether the live page is wanted
 */
record Findings(
        Optional<Board> board,
        Optional<Supply> supply,
        Optional<String> order,
        Optional<Strip> strip,
        Map<String, Run> zones,
        OptionalDouble brightness,
        Optional<Currents> currents,
        List<DimmerUse> dimmers,
        Optional<Supply> dimmerSupply,
        Optional<String> printer,
        Optional<Mount> mount,
        boolean page) {
    /** Nothing is known. */
    static final Findings NONE = new Findings(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Map.of(),
            OptionalDouble.empty(),
            Optional.empty(),
            List.of(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            false);

    /** Keeps copies of the collections, in their order. */
    Findings {
        zones = Collections.unmodifiableMap(new LinkedHashMap<>(zones));
        dimmers = List.copyOf(dimmers);
    }

    /**
     * The controller.
     *
     * @param port its port
     * @param baud bits per second
     * @param here what it reports about itself
     */
    record Board(String port, int baud, Here here) {}

    /**
     * A supply.
     *
     * @param volts its voltage
     * @param fromBoard whether the controller's own board or a USB port feeds the strip
     * @param amps its rating, if known
     * @param fuseAmps the fuse behind it, if there is one
     * @param ceilingMilliamps the ceiling on it
     */
    record Supply(double volts, boolean fromBoard, OptionalDouble amps, OptionalDouble fuseAmps, int ceilingMilliamps) {
        Supply withCeiling(int milliamps) {
            return new Supply(volts, fromBoard, amps, fuseAmps, milliamps);
        }
    }

    /**
     * How long the strip is.
     *
     * @param pixels pixels that are driven
     * @param goesOn whether it continues beyond what can be driven
     * @param runs the runs that it is cut into, one per data line; empty if all of it is on the first line
     */
    record Strip(int pixels, boolean goesOn, List<Setup.Run> runs) {
        /** A strip on the first data line. */
        Strip(int pixels, boolean goesOn) {
            this(pixels, goesOn, List.of());
        }

        Strip {
            runs = List.copyOf(runs);
        }
    }

    /**
     * A run of pixels.
     *
     * @param first where it begins
     * @param last where it ends; lower than {@code first} if it runs towards the controller
     */
    record Run(int first, int last) {
        Run reversed() {
            return new Run(last, first);
        }

        @Override
        public String toString() {
            return first == last ? Integer.toString(first) : first + "-" + last;
        }
    }

    /**
     * A value with its standard error.
     *
     * @param value in mA
     * @param error in mA
     */
    record Milliamps(double value, double error) {
        private static final double FINEST = 0.01;

        private static double hundredths(double number) {
            return Math.round(number / FINEST) * FINEST;
        }

        @Override
        public String toString() {
            String most = error < FINEST ? "under " + FINEST : TypedNumbers.shown(hundredths(error));
            return TypedNumbers.shown(hundredths(value)) + " ± " + most + " mA";
        }
    }

    /**
     * Measured currents.
     *
     * @param channels one channel of one pixel at full duty, in the strip's order
     * @param idle one dark pixel
     */
    record Currents(List<Milliamps> channels, Milliamps idle) {
        Currents {
            channels = List.copyOf(channels);
        }
    }

    /**
     * How the strip is mounted, as seen from in front of the printer. The words are those of the file.
     *
     * @param shape {@code straight}, {@code frame} or {@code ring}
     * @param sides pixels of each side of a frame
     * @param begins the corner of a frame where pixel 0 is
     * @param clockwise whether the strip runs clockwise from there
     */
    record Mount(String shape, List<Integer> sides, String begins, boolean clockwise) {
        Mount {
            sides = List.copyOf(sides);
        }
    }

    /** What is on a dimmer. */
    enum Hanging {
        NOTHING,
        WHITE,
        RED,
        GREEN,
        BLUE
    }

    /**
     * What is on one dimmer.
     *
     * @param what the kind of light
     * @param name name of a white light; otherwise empty
     * @param fullMilliamps its current at full duty
     */
    record DimmerUse(Hanging what, String name, int fullMilliamps) {}

    Findings withBoard(Board next) {
        return new Findings(
                Optional.of(next),
                supply,
                order,
                strip,
                zones,
                brightness,
                currents,
                dimmers,
                dimmerSupply,
                printer,
                mount,
                page);
    }

    Findings withSupply(Supply next) {
        return new Findings(
                board,
                Optional.of(next),
                order,
                strip,
                zones,
                brightness,
                currents,
                dimmers,
                dimmerSupply,
                printer,
                mount,
                page);
    }

    Findings withOrder(String next) {
        return new Findings(
                board,
                supply,
                Optional.of(next),
                strip,
                zones,
                brightness,
                currents,
                dimmers,
                dimmerSupply,
                printer,
                mount,
                page);
    }

    Findings withStrip(Strip next) {
        return new Findings(
                board,
                supply,
                order,
                Optional.of(next),
                zones,
                brightness,
                currents,
                dimmers,
                dimmerSupply,
                printer,
                mount,
                page);
    }

    Findings withZones(Map<String, Run> next) {
        return new Findings(
                board, supply, order, strip, next, brightness, currents, dimmers, dimmerSupply, printer, mount, page);
    }

    Findings withBrightness(double next) {
        return new Findings(
                board,
                supply,
                order,
                strip,
                zones,
                OptionalDouble.of(next),
                currents,
                dimmers,
                dimmerSupply,
                printer,
                mount,
                page);
    }

    Findings withCurrents(Currents next) {
        return new Findings(
                board,
                supply,
                order,
                strip,
                zones,
                brightness,
                Optional.of(next),
                dimmers,
                dimmerSupply,
                printer,
                mount,
                page);
    }

    Findings withDimmers(List<DimmerUse> next, Supply theirs) {
        return new Findings(
                board,
                supply,
                order,
                strip,
                zones,
                brightness,
                currents,
                new ArrayList<>(next),
                Optional.of(theirs),
                printer,
                mount,
                page);
    }

    Findings withPrinter(String next) {
        return new Findings(
                board,
                supply,
                order,
                strip,
                zones,
                brightness,
                currents,
                dimmers,
                dimmerSupply,
                Optional.of(next),
                mount,
                page);
    }

    Findings withMount(Mount next) {
        return new Findings(
                board,
                supply,
                order,
                strip,
                zones,
                brightness,
                currents,
                dimmers,
                dimmerSupply,
                printer,
                Optional.of(next),
                page);
    }

    Findings withPage(boolean next) {
        return new Findings(
                board, supply, order, strip, zones, brightness, currents, dimmers, dimmerSupply, printer, mount, next);
    }

    /** The strip's order; for steps after it was found. */
    String knownOrder() {
        return order.orElseThrow();
    }

    /** The strip's pixels; for steps after they were counted. */
    int knownPixels() {
        return strip.orElseThrow().pixels();
    }
}
