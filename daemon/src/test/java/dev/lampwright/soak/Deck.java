package dev.lampwright.soak;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Deque;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;

/** Which trouble comes next: a deck of all kinds, shuffled again when it is used up. */
final class Deck {
    private static final int ONE_PAIR_IN = 4;

    private final Collection<Kind> kinds;
    private final SplittableRandom chance;
    private final Deque<Kind> left = new ArrayDeque<>();
    private int drawn;

    /**
     * Makes one.
     *
     * @param kinds all that there are
     * @param chance decides their order, and whether two come together
     */
    Deck(Collection<Kind> kinds, SplittableRandom chance) {
        this.kinds = kinds;
        this.chance = chance;
    }

    /** Draws one kind or, later on, two that come together. */
    List<Kind> draw() {
        Kind one = next();
        boolean single =
                left.isEmpty() || !mixes(one) || chance.nextInt(ONE_PAIR_IN) > 0 || drawn < Kind.values().length;
        drawn++;
        if (single || !mixes(left.peek())) {
            return List.of(one);
        }
        return List.of(one, left.remove());
    }

    private Kind next() {
        if (left.isEmpty()) {
            List<Kind> shuffled = new ArrayList<>(kinds);
            Collections.shuffle(shuffled, new Random(chance.nextLong()));
            left.addAll(shuffled);
        }
        return left.remove();
    }

    /** Those that take their own time, or are awaited through the log, come alone. */
    private static boolean mixes(Kind kind) {
        return switch (kind) {
            case STARVED, STORMED, FLOODED, BAD_CONFIGURATION, CONFIGURATION_GONE, DISK_FULL -> false;
            default -> true;
        };
    }
}
