package dev.lampwright.link;

import org.slf4j.Logger;

/** One kind of trouble: logged once when it begins, again only if it becomes another, and once when it is over. */
final class LineTrouble {
    private final Logger log;
    private volatile String words = "";

    LineTrouble(Logger log) {
        this.log = log;
    }

    /**
     * Something is wrong.
     *
     * @param newWords what, for the user; not empty
     */
    void begin(String newWords) {
        if (!newWords.equals(words)) {
            words = newWords;
            log.warn(newWords);
        }
    }

    /**
     * All is well.
     *
     * @param news what to log if there was trouble before
     */
    void over(String news) {
        if (isOn()) {
            words = "";
            log.info(news);
        }
    }

    /** Whether something is wrong. */
    boolean isOn() {
        return !words.isEmpty();
    }

    /** What is wrong, empty if nothing is. */
    String words() {
        return words;
    }
}
