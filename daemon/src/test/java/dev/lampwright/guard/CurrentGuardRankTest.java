package dev.lampwright.guard;

import static dev.lampwright.testing.Bounds.assertBelow;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.look.Zone;
import dev.lampwright.protocol.Frame;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Each rank is dimmed until it is dark before the next is touched; the calculation here follows DEVELOPERS.md, The guards. */
class CurrentGuardRankTest {
    private static final Map<String, Zone> ZONES =
            Map.of("glow", Zone.run(0, 3), "job", Zone.run(4, 7), "bed", Zone.run(8, 9));

    /** Ten pixels of 37 mA at full white: 370 mA. */
    @Test
    void theLowestRankGoesFirst() {
        assertLevels(370, 255, 255, 255);
        assertLevels(300, 131, 255, 255);
        assertLevels(226, 0, 255, 255);
        assertLevels(154, 0, 127, 255);
        assertLevels(82, 0, 0, 255);
        assertLevels(46, 0, 0, 127);
        assertLevels(10, 0, 0, 0);
        assertLevels(9, 0, 0, 0);
    }

    private static void assertLevels(int ceiling, int glow, int job, int bed) {
        Fitted fitted = Fitted.strip(10, ceiling, ZONES);
        Frame frame = fitted.filled(255);
        guard(fitted, Optional.of(List.of("glow", "job", "bed"))).hold(frame);
        assertEquals(glow, frame.strip()[0] & 0xFF, "glow at " + ceiling + " mA");
        assertEquals(job, frame.strip()[12] & 0xFF, "job at " + ceiling + " mA");
        assertEquals(bed, frame.strip()[24] & 0xFF, "bed at " + ceiling + " mA");
    }

    /** Any frame and any ranks: if a rank has kept light, all higher ranks have kept all of theirs. */
    @Test
    void noRankIsTouchedWhileALowerOneIsLit() {
        SplittableRandom chance = new SplittableRandom(5);
        long dimmed = 0;
        for (int trial = 0; trial < 5000; trial++) {
            Fitted fitted = Fitted.any(chance);
            Optional<List<String>> order = Optional.of(Fitted.anyOrder(chance));
            Frame frame = fitted.filled(chance.nextInt(1, 256));
            Frame before = fitted.frame();
            before.copyFrom(frame);
            CurrentGuard guard = guard(fitted, order);
            guard.hold(frame);
            Ranks ranks = Ranks.of(fitted.fitting(), order);
            dimmed += guard.dimmedFrames();
            for (int one = 0; one < fitted.setup().pixels(); one++) {
                for (int other = 0; other < fitted.setup().pixels(); other++) {
                    boolean higher = ranks.ofPixel(one) > ranks.ofPixel(other);
                    int at = one * fitted.setup().channels();
                    boolean touched = frame.strip()[at] != before.strip()[at];
                    int lower = other * fitted.setup().channels();
                    assertTrue(!higher || !touched || frame.strip()[lower] == 0, "trial " + trial);
                }
            }
        }
        assertTrue(dimmed > 1000 && dimmed < 4900, dimmed + " of 5000 are dimmed");
    }

    /** A status zone that is within the ceiling by itself is never dimmed because of another. */
    @Test
    void statusIsKeptByDefault() {
        Fitted fitted =
                Fitted.strip(10, 120, Map.of("glow", Zone.run(0, 5), "job", Zone.run(6, 7), "bed", Zone.run(8, 8)));
        CurrentGuard guard = guard(fitted, Optional.empty());
        Frame frame = fitted.filled(255);
        guard.hold(frame);
        byte[] status = new byte[9];
        Arrays.fill(status, (byte) 255);
        assertArrayEquals(status, Arrays.copyOfRange(frame.strip(), 18, 27));
        assertBelow(20, frame.strip()[0] & 0xFF);
    }

    private static CurrentGuard guard(Fitted fitted, Optional<List<String>> order) {
        return new CurrentGuard(fitted.setup(), Ranks.of(fitted.fitting(), order), 60, 2);
    }
}
