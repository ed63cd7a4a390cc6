package dev.lampwright.tool.plan;

import dev.lampwright.wiring.Wiring;
import java.util.OptionalDouble;

/**
 * One wire from a supply to a light, and back.
 *
 * @param name what it feeds
 * @param key where its part of the file begins, such as {@code wiring.strip}
 * @param supply index of the supply
 * @param amps the most that it carries under the ceiling, in A
 * @param metres length, one way, in m
 * @param dropVolts what is lost on it, there and back, in V
 * @param feed its wire, connector and fuse
 */
public record WireRun(
        String name, String key, int supply, double amps, double metres, double dropVolts, Wiring.Feed feed) {
    /**
     * What the weakest part behind the fuse bears.
     *
     * @return A: the wire's, or the connector's if that is known and less
     */
    public double bearsAmps() {
        return Math.min(
                feed.wire().bearsAmps(), feed.connectorAmps().orElse(feed.wire().bearsAmps()));
    }

    /**
     * The fuse that suits.
     *
     * @return its rating, in A; nothing if none is both large enough for the load and small enough for wire and connector
     */
    public OptionalDouble rightFuse() {
        return FuseRatings.between(amps, bearsAmps());
    }

    /**
     * The fuse to draw and to buy.
     *
     * @return the one that is fitted, else the one that suits, in A
     */
    public OptionalDouble fuse() {
        return feed.fuseAmps().isPresent() ? feed.fuseAmps() : rightFuse();
    }
}
