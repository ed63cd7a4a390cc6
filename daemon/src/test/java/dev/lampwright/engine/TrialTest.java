package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.cue.Wish;
import dev.lampwright.cue.Wishes;
import dev.lampwright.look.LookSpec;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class TrialTest {
    private static final LookSpec LOOK = new LookSpec("mine", List.of(), List.of(), false);
    private static final Wishes ASKED = Wishes.NONE.withLook("sea-mist", Long.MAX_VALUE);

    private final List<String> lent = new ArrayList<>();
    private boolean fault;
    private long now = 7;
    private int changes;
    private final Trial trial = new Trial(look -> lent.add(look.name()), () -> changes++, () -> fault, () -> now);

    private Wishes wishes() {
        return trial.over(ASKED);
    }

    private void pass(Duration time) {
        now += time.toNanos();
        trial.lookAround();
    }

    @Test
    void whatIsTriedGoesOverWhatIsAskedForUntilItsTimeIsUp() {
        assertSame(ASKED, wishes());
        assertEquals(Trial.Outcome.BEGUN, trial.begin(LOOK, "me", Duration.ofSeconds(20)));
        assertEquals(List.of("mine (on trial)"), lent);
        assertEquals("mine (on trial)", wishes().lookAt(now));
        long end = now + Duration.ofSeconds(20).toNanos();
        assertEquals("mine (on trial)", wishes().at(end - 1).lookAt(end - 1));
        assertEquals("sea-mist", wishes().at(end).name(Wish.LOOK), "even if nobody looks around");
        for (int i = 0; i < 4; i++) {
            pass(Duration.ofSeconds(5));
            trial.keep("me");
        }
        assertSame(ASKED, wishes());
        assertEquals(Trial.Over.TIME, trial.whyOver());
    }

    @Test
    void itIsOverWhenWhoeverTriesItHasLeft() {
        trial.begin(LOOK, "me", Trial.LONGEST);
        pass(Duration.ofSeconds(9));
        assertEquals(Optional.of(Duration.ofSeconds(51)), trial.keep("me"));
        pass(Duration.ofSeconds(9));
        assertEquals("mine (on trial)", wishes().lookAt(now));
        int before = changes;
        pass(Duration.ofSeconds(1));
        assertSame(ASKED, wishes());
        assertEquals(before + 1, changes);
        assertEquals(Optional.empty(), trial.keep("me"));
        assertEquals(Trial.Over.LEFT, trial.whyOver());
    }

    @Test
    void aFaultEndsItAndNoneBeginsDuringOne() {
        trial.begin(LOOK, "me", Trial.LONGEST);
        fault = true;
        pass(Duration.ZERO);
        assertSame(ASKED, wishes());
        assertEquals(Trial.Over.FAULT, trial.whyOver());
        assertEquals(Trial.Outcome.FAULT, trial.begin(LOOK, "me", Trial.LONGEST));
        fault = false;
        assertSame(ASKED, wishes(), "it does not come back");
    }

    @Test
    void oneTriesAtATimeAndMayChangeItsMind() {
        trial.begin(LOOK, "me", Trial.LONGEST);
        assertEquals(Trial.Outcome.TAKEN, trial.begin(LOOK, "you", Trial.LONGEST));
        assertEquals(Optional.empty(), trial.keep("you"));
        trial.end("you");
        assertTrue(trial.keep("me").isPresent());
        assertEquals(Trial.Outcome.BEGUN, trial.begin(LOOK, "me", Trial.LONGEST));
        trial.end("me");
        assertEquals(Trial.Outcome.BEGUN, trial.begin(LOOK, "you", Duration.ofHours(1)));
        assertEquals(Optional.of(Trial.LONGEST), trial.keep("you"));
        trial.configurationChanges();
        assertEquals(Trial.Over.CHANGED, trial.whyOver());
        assertSame(ASKED, wishes());
    }
}
