package dev.lampwright.history;

/**
 * Who acknowledged a fault, as far as the daemon knows.
 *
 * @param at when
 * @param way how the ask came: {@code page} or {@code mqtt}; empty if unknown
 * @param from the address from which the page was used; empty over MQTT, which does not say who published
 * @param by the asker's name, one printable line; empty if none was given
 */
public record Acknowledgement(Stamp at, String way, String from, String by) {
    /** The same with its time on the wall clock. */
    Acknowledgement wall(long wallAhead) {
        return new Acknowledgement(at.wall(wallAhead), way, from, by);
    }

    /**
     * Who, in words.
     *
     * @return for example {@code page at 192.168.1.20} or {@code panel (mqtt)}
     */
    public String who() {
        String where = from.isEmpty() ? way : way + " at " + from;
        if (by.isEmpty()) {
            return where.isEmpty() ? "somebody" : where;
        }
        return where.isEmpty() ? by : by + " (" + where + ")";
    }
}
