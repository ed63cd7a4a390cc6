package dev.lampwright.engine;

import dev.lampwright.colour.Miniature;
import dev.lampwright.config.Config;
import java.util.HexFormat;
import java.util.Optional;
import java.util.function.Supplier;

/** What a strip looks like from afar: the newest frame in a few colours. For one thread at a time. */
public final class StripGlance implements AutoCloseable {
    private final Supplier<FrameTap> taps;
    private final int most;
    private FrameTap tap;
    private Optional<FrameTap.Place> place = Optional.empty();
    private Miniature colours;
    private boolean seen;

    /**
     * Creates a glance that has seen nothing yet.
     *
     * @param taps where frames can be read; a new one for each configuration
     */
    public StripGlance(Supplier<FrameTap> taps) {
        this(taps, Miniature.MOST);
    }

    /**
     * Creates a glance that has seen nothing yet.
     *
     * @param taps where frames can be read; a new one for each configuration
     * @param most the most colours, 1 or more
     */
    public StripGlance(Supplier<FrameTap> taps, int most) {
        this.taps = taps;
        this.most = most;
    }

    /**
     * Reads the newest frame.
     *
     * @return whether anything has changed
     */
    public synchronized boolean look() {
        follow(taps.get());
        if (place.isEmpty() || !place.get().fresh()) {
            return false;
        }
        boolean first = !seen;
        seen = true;
        return colours.take(place.get().take().strip()) || first;
    }

    private void follow(FrameTap now) {
        if (now == tap && place.isPresent()) {
            return;
        }
        close();
        tap = now;
        Config config = now.config();
        colours = new Miniature(config.setup().order(), config.fitting().pixels(), most);
        place = Optional.of(now.open());
    }

    /**
     * The colours of the last look, from the controller on.
     *
     * @return red, green and blue of each, encoded as sRGB; empty before there was a frame
     */
    public synchronized byte[] rgb() {
        return seen ? colours.rgb().clone() : new byte[0];
    }

    /**
     * The same as text.
     *
     * @return six hexadecimal digits for each colour
     */
    public String hex() {
        return HexFormat.of().formatHex(rgb());
    }

    /** Stops looking until the next {@link #look}. */
    @Override
    public synchronized void close() {
        place.ifPresent(FrameTap.Place::close);
        place = Optional.empty();
        seen = false;
    }
}
