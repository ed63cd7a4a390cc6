package dev.lampwright.tool.plan;

import dev.lampwright.wiring.Rating;
import dev.lampwright.wiring.Wiring;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;

/**
 * One wire from a supply to a light, and back.
 *
 * @param name what it feeds
 * @param key where its part of the file begins, such as {@code wiring.strip}
 * @param supply index of the supply
 * @param amps the highest mean current under the ceiling, in A
 * @param rmsAmps the highest RMS current under the ceiling, pulses included, in A
 * @param pulseAmps current during a pulse, in A
 * @param shortAmps current if its far end is shorted, in A
 * @param metres length, one way, in m
 * @param dropVolts the drop across it, its contacts and its fuse, there and back, in V: for a plain light during the pulse, for the strip
 *     by the mean
 * @param feed its wire, connector and fuse
 * @param parts what comes after the fuse and must not get too warm: the wire first
 */
public record WireRun(
        String name,
        String key,
        int supply,
        double amps,
        double rmsAmps,
        double pulseAmps,
        double shortAmps,
        double metres,
        double dropVolts,
        Wiring.Feed feed,
        List<Part> parts) {
    /** The kind of a part after the fuse. */
    public enum Kind {
        /** The wire. */
        WIRE,
        /** The connector at the light. */
        CONNECTOR,
        /** The strip's own copper. */
        COPPER
    }

    /**
     * A part after the fuse.
     *
     * @param kind what it is
     * @param name its name, such as {@code its connector}
     * @param rating what it carries
     */
    public record Part(Kind kind, String name, Rating rating) {}

    /** Keeps a copy of the list. */
    public WireRun {
        parts = List.copyOf(parts);
    }

    /**
     * The wire among its parts.
     *
     * @return what it carries
     */
    public Rating wire() {
        return parts.get(0).rating();
    }

    /**
     * The weakest part after the fuse.
     *
     * @return one of its parts; the wire if others carry as much
     */
    public Part weakest() {
        return parts.stream()
                .min(Comparator.comparingDouble(part -> part.rating().amps()))
                .orElseThrow();
    }

    /**
     * The suitable fuse.
     *
     * @return its rating, in A; empty if none is both large enough for the load and small enough for everything behind it
     */
    public OptionalDouble rightFuse() {
        return FuseRatings.between(rmsAmps, weakest().rating().amps());
    }

    /**
     * The fuse to draw and to buy.
     *
     * @return the fitted one, or else the suitable one, in A
     */
    public OptionalDouble fuse() {
        return feed.fuseAmps().isPresent() ? feed.fuseAmps() : rightFuse();
    }
}
