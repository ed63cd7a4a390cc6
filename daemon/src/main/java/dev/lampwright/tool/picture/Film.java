package dev.lampwright.tool.picture;

import java.util.List;

/**
 * Shots in a row, at equal distances.
 *
 * @param subject what they are taken of
 * @param shotsPerSecond how many a second
 * @param shots the earliest first; not empty
 */
public record Film(Subject subject, double shotsPerSecond, List<Shot> shots) {
    /** Keeps a copy of the shots. */
    public Film {
        shots = List.copyOf(shots);
    }

    /**
     * How long the film is.
     *
     * @return s
     */
    double seconds() {
        return shots.size() / shotsPerSecond;
    }
}
