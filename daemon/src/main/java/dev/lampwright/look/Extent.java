package dev.lampwright.look;

/**
 * Which pixels of a zone a layer covers. Edges that fall inside a pixel are drawn as partial cover, and an edge may be softened, so slow
 * movement has no steps. May keep working memory; for one layer.
 */
@FunctionalInterface
public interface Extent {
    /**
     * Writes how much each pixel is covered.
     *
     * @param moment the time and the signals
     * @param cover receives the cover of each place of the zone, place 0 at its beginning; nothing is reached yet
     */
    void cover(Moment moment, Cover cover);

    /**
     * How long it covers the same as at a moment, if nothing new is heard.
     *
     * @param moment the time and the signals
     * @return ns: 0 if it may move, {@link dev.lampwright.signal.Signals#FOREVER} if it does not
     */
    default long stillFor(Moment moment) {
        return 0;
    }
}
