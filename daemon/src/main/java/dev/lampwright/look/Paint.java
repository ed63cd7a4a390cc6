package dev.lampwright.look;

/** Gives the pixels of a zone their colours. May keep state between frames; for one layer. */
@FunctionalInterface
public interface Paint {
    /**
     * Gives the colours of the places that a layer reaches.
     *
     * @param moment the time and the signals
     * @param cover the places that are reached; at least one
     * @param room where colours may be written, four floats for each place of the zone
     * @return where the colours are, there or elsewhere: linear light, not premultiplied, and alpha, place 0 of the zone at index 0. Values
     *     of places that are not reached are meaningless. Must not be written to
     */
    float[] paint(Moment moment, Cover cover, float[] room);

    /**
     * How long colours stay as at a moment, if nothing new is heard.
     *
     * @param moment the time and the signals
     * @return ns: 0 if they may change, {@link dev.lampwright.signal.Signals#FOREVER} if they do not
     */
    default long stillFor(Moment moment) {
        return 0;
    }

    /**
     * Whether all places have one colour, which is then at place 0 only.
     *
     * @return the same each time
     */
    default boolean isEven() {
        return false;
    }
}
