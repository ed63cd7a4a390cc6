package dev.lampwright.wiring;

import dev.lampwright.board.BoardKind;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * How the lights are wired, according to the file.
 *
 * @param wireC temperature of the wires and the strip's conductors, in °C, for their resistance
 * @param around what surrounds wires, connectors and strip
 * @param supplies the supplies, by their index in the controller's set-up
 * @param strip the strip's side
 * @param lights the plain lights, in the order of the file
 * @param board the controller's board
 * @param computer the single-board computer
 * @param defaults the defaults for what was left out, as they would be written in the file, by dotted key
 */
public record Wiring(
        double wireC,
        Surroundings around,
        List<Supply> supplies,
        Strip strip,
        List<Light> lights,
        Board board,
        Computer computer,
        Map<String, String> defaults) {
    /** Keeps copies of the collections, in their order. */
    public Wiring {
        supplies = List.copyOf(supplies);
        lights = List.copyOf(lights);
        defaults = Collections.unmodifiableMap(new LinkedHashMap<>(defaults));
    }

    /**
     * One supply.
     *
     * @param name its name
     * @param volts its voltage
     * @param tolerance how far below that its output may be, as a share of it, 0 or more
     * @param ratedAmps its rating, in A; empty if not configured
     * @param connectorAmps rating of the connector or header that everything on it goes through, in A; empty if not configured
     */
    public record Supply(
            String name, double volts, double tolerance, OptionalDouble ratedAmps, OptionalDouble connectorAmps) {
        /**
         * The lowest voltage that its output may have.
         *
         * @return V
         */
        public double leastVolts() {
            return volts * (1 - tolerance);
        }
    }

    /**
     * A wire to a light, there and back, and the parts in it.
     *
     * @param wire its size
     * @param connectorAmps rating of the connector at the light, or of the header that it is plugged into, in A; empty if not configured
     * @param fuseAmps rating of the fuse at the supply's end, in A; empty if not configured
     * @param contactOhms resistance of all contacts on the way there and back together, in Ω, 0 or more
     * @param fuseOhms resistance of the fuse with its holder, in Ω, 0 or more; empty if not configured
     */
    public record Feed(
            Wire wire,
            OptionalDouble connectorAmps,
            OptionalDouble fuseAmps,
            double contactOhms,
            OptionalDouble fuseOhms) {
        /** The voltage drop of a fuse at its rating, in V (assumed: about that of glass fuses of 1 to 10 A). */
        private static final double FUSE_VOLTS = 0.1;

        /**
         * The resistance in addition to the wire's.
         *
         * @param ratedAmps rating to assume for a fuse that is not configured, in A, above 0
         * @return resistance of contacts and fuse, in Ω
         */
        public double partOhms(double ratedAmps) {
            return contactOhms + fuseOhms.orElse(FUSE_VOLTS / fuseAmps.orElse(ratedAmps));
        }
    }

    /**
     * The strip's side.
     *
     * @param fromBoard whether the strip is fed by the controller's board instead of its own supply
     * @param feed the wire to each point
     * @param points where the wires join, the nearest pixel first; at least one
     * @param pixelsPerMetre pixels in one metre
     * @param loopOhmsPerMetre resistance of the strip's two conductors together at 20 °C, in Ω per metre
     * @param fullColourVolts lowest voltage at which a pixel shows its full colour
     * @param leastVolts lowest voltage at which a pixel works at all
     * @param pwmHz frequency of the pixels' own PWM, in Hz
     * @param together whether pixels are assumed to begin their pulses at the same time
     */
    public record Strip(
            boolean fromBoard,
            Feed feed,
            List<Point> points,
            double pixelsPerMetre,
            double loopOhmsPerMetre,
            double fullColourVolts,
            double leastVolts,
            double pwmHz,
            boolean together) {
        /** Keeps a copy of the list. */
        public Strip {
            points = List.copyOf(points);
        }
    }

    /**
     * A place where a wire from the supply joins the strip.
     *
     * @param pixel the pixel
     * @param metres length of the wire, one way, in m, above 0
     */
    public record Point(int pixel, double metres) {}

    /**
     * One plain light, which may have several of the controller's outputs.
     *
     * @param name its name
     * @param outputs its dimmers, as indices into the controller's set-up
     * @param feed the wire to it
     * @param metres length of that wire, one way, in m, above 0
     * @param watts what it draws at full, in W; empty if not configured
     * @param pwmHz frequency of its PWM, in Hz
     */
    public record Light(
            String name, List<Integer> outputs, Feed feed, double metres, OptionalDouble watts, double pwmHz) {
        /** Keeps a copy of the list. */
        public Light {
            outputs = List.copyOf(outputs);
        }
    }

    /**
     * The controller's board.
     *
     * @param kind one of those that the reference firmware runs on; its usual values replace those not configured
     * @param logicVolts high level of its outputs
     * @param shifter whether a level shifter drives the strip's data
     * @param ratedAmps what its 5 V pin or regulator may deliver, in A
     * @param ownAmps what it draws itself, in A
     * @param inputVolts input voltage of its regulator, in V
     */
    public record Board(
            BoardKind kind, double logicVolts, boolean shifter, double ratedAmps, double ownAmps, double inputVolts) {}

    /**
     * The single-board computer.
     *
     * @param amps the most that it draws, in A
     * @param supply index of the supply that feeds it; empty if it has its own
     */
    public record Computer(double amps, OptionalInt supply) {}
}
