package dev.lampwright.desk;

/**
 * Who asks for something, as far as the daemon knows. Contains no secrets.
 *
 * @param way how the ask came: {@code page} or {@code mqtt}; empty if it is not known
 * @param from the address that it came from; empty if that is not known, as over MQTT, where the broker does not say who published
 * @param by what the asker calls itself, one printable line; empty if it does not
 */
public record Asker(String way, String from, String by) {
    /** Nothing is known. */
    public static final Asker UNKNOWN = new Asker("", "", "");

    /** Over the broker. */
    public static final Asker MQTT = new Asker("mqtt", "", "");

    /**
     * Somebody who has the page open.
     *
     * @param address of the browser, or of a server between it and the page
     */
    public static Asker page(String address) {
        return new Asker("page", address, "");
    }

    /** The same, with a name that the asker gives. */
    Asker calling(String itself) {
        return new Asker(way, from, itself);
    }
}
