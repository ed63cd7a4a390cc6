package dev.lampwright.history;

/**
 * Who acknowledged a fault, as far as the daemon knows.
 *
 * @param at when
 * @param way how it came: {@code page} or {@code mqtt}; empty if that is not known
 * @param from the address that the page was asked from; empty over MQTT, which does not say who published
 * @param by what the asker called itself, one printable line; empty if it did not
 */
public record Acknowledgement(Stamp at, String way, String from, String by) {
    /** The same with its time on the clock on the wall. */
    Acknowledgement wall(long wallAhead) {
        return new Acknowledgement(at.wall(wallAhead), way, from, by);
    }

    /**
     * Who, in words.
     *
     * @return for instance {@code page at 192.168.1.20} or {@code panel (mqtt)}
     */
    public String who() {
        String where = from.isEmpty() ? way : way + " at " + from;
        if (by.isEmpty()) {
            return where.isEmpty() ? "somebody" : where;
        }
        return where.isEmpty() ? by : by + " (" + where + ")";
    }
}
