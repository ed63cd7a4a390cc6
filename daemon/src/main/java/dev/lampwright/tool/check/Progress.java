package dev.lampwright.tool.check;

/** Receives the progress of a check, to show to a waiting user. */
@FunctionalInterface
public interface Progress {
    /** Nobody waits. */
    Progress UNSEEN = (done, of) -> {};

    /**
     * Reports progress.
     *
     * @param done looks that have been drawn, 0 or more
     * @param of looks to draw altogether
     */
    void at(int done, int of);

    /** Is called for every frame that is drawn. Whatever it throws ends the check. */
    default void drawn() {}
}
