package dev.lampwright.protocol;

/** The version of the wire that this code speaks. */
public final class Version {
    /** Version 1, as {@code firmware-notes/wire.md} has it. */
    public static final int SPOKEN = 1;

    private Version() {}
}
