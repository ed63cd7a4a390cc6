package dev.lampwright.tool.check;

/** Is told how far a check has come, so that somebody who waits can see it. */
@FunctionalInterface
public interface Progress {
    /** Nobody waits. */
    Progress UNSEEN = (done, of) -> {};

    /**
     * Notes how far it is.
     *
     * @param done looks that have been drawn, 0 or more
     * @param of looks to draw altogether
     */
    void at(int done, int of);
}
