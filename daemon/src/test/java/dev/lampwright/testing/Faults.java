package dev.lampwright.testing;

import java.io.ByteArrayOutputStream;
import java.util.Random;
import java.util.function.UnaryOperator;

/** Ways in which a bad line changes the bytes that pass it. Each has its own seeded random numbers and is for one thread. */
public final class Faults {
    private Faults() {}

    /** No fault at all. */
    public static UnaryOperator<byte[]> none() {
        return UnaryOperator.identity();
    }

    /** Everything is lost. */
    public static UnaryOperator<byte[]> silence() {
        return bytes -> new byte[0];
    }

    /** Now and then a bit is flipped, a byte lost or a byte doubled, each with the same probability for each byte. */
    public static UnaryOperator<byte[]> all(long seed, double chance) {
        Random random = new Random(seed);
        return bytes -> {
            ByteArrayOutputStream changed = new ByteArrayOutputStream();
            for (byte value : bytes) {
                int copies = random.nextDouble() < chance ? 2 * random.nextInt(2) : 1;
                int flipped = random.nextDouble() < chance ? 1 << random.nextInt(8) : 0;
                for (int copy = 0; copy < copies; copy++) {
                    changed.write(value ^ flipped);
                }
            }
            return changed.toByteArray();
        };
    }
}
