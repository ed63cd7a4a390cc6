package dev.lampwright.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.broker.Patience;
import java.time.Duration;
import org.junit.jupiter.api.Test;

final class BackoffTest {
    private static Backoff backoff(double chance) {
        return new Backoff(Duration.ofMillis(100), Duration.ofMillis(350), () -> chance);
    }

    @Test
    void doublesUpToTheLongestAndStartsAnew() {
        Backoff backoff = backoff(0);
        assertEquals(Duration.ofMillis(100), backoff.next());
        assertEquals(Duration.ofMillis(200), backoff.next());
        assertEquals(Duration.ofMillis(350), backoff.next());
        assertEquals(Duration.ofMillis(350), backoff.next());
        backoff.reset();
        assertEquals(Duration.ofMillis(100), backoff.next());
    }

    @Test
    void leavesNothingToChanceUnlessAsked() {
        Backoff backoff = new Backoff(Duration.ofMillis(250), Duration.ofSeconds(1));
        assertEquals(Duration.ofMillis(250), backoff.next());
        assertEquals(Duration.ofMillis(500), backoff.next());
        assertEquals(Duration.ofSeconds(1), backoff.next());
        assertEquals(Duration.ofSeconds(1), backoff.next());
    }

    @Test
    void chanceShortensByAQuarterAtMost() {
        assertEquals(Duration.ofMillis(75), backoff(1).next());
    }

    /** The promise is correct light within 2 s of the broker's return; the rest of that time is for connecting. */
    @Test
    void usualPausesLeaveHalfASecondForConnecting() {
        Duration worst = Patience.USUAL.network().plus(Patience.USUAL.longestPause());
        assertEquals(Duration.ofMillis(1500), worst);
    }
}
