package dev.lampwright.signal;

/**
 * Where the printer is, and what counts as hot there.
 *
 * @param ambientC temperature of the room, in °C; a target at or below it is off
 * @param hotAboveC anything no hotter may be touched, in °C
 */
public record Room(double ambientC, double hotAboveC) {
    /**
     * What may be touched indefinitely, in °C: the burn threshold of ISO 13732-1 for a contact of 8 hours and more, whatever the material
     * (from memory).
     */
    public static final double TOUCHABLE_C = 43;

    /**
     * A room with the usual bound.
     *
     * @param ambientC its temperature, in °C
     * @return the room
     */
    public static Room at(double ambientC) {
        return new Room(ambientC, TOUCHABLE_C);
    }
}
