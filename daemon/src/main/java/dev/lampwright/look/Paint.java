package dev.lampwright.look;

/** Gives the pixels of a zone their colours. May remember what was before; for one layer. */
@FunctionalInterface
public interface Paint {
    /**
     * Gives the colours of the places that a layer reaches.
     *
     * @param moment the time and the signals
     * @param cover which places these are; at least one
     * @param room where colours may be written, four floats for each place of the zone
     * @return where they stand, there or elsewhere: linear light, not premultiplied, and alpha, place 0 of the zone at index 0. What is
     *     there of places that are not reached means nothing. Not to be written to
     */
    float[] paint(Moment moment, Cover cover, float[] room);

    /**
     * How long colours stay as they are at a moment, if nothing new is heard.
     *
     * @param moment the time and the signals
     * @return ns: 0 if they may change, {@link dev.lampwright.signal.Signals#FOREVER} if they do not
     */
    default long stillFor(Moment moment) {
        return 0;
    }

    /**
     * Whether all places have one colour, which then stands at place 0 alone.
     *
     * @return the same each time
     */
    default boolean isEven() {
        return false;
    }
}
