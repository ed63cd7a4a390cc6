package dev.lampwright.colour;

/** Takes the nearest level. */
final class NearestLevel implements Rounding {
    @Override
    public byte level(float duty, int channel) {
        return (byte) (duty > 0 ? (duty < 1 ? duty * FULL + 0.5f : FULL) : 0);
    }
}
