package dev.lampwright.guard;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What the README says about {@code guard.dim_order}. */
class RanksTest {
    @Test
    void theFirstNamedIsTheLowestAndTheUnnamedTheHighest() {
        Ranks ranks = Ranks.of(fitting(), Optional.of(List.of("glow", "job")));
        assertEquals(3, ranks.count());
        assertEquals(List.of(2, 2, 0, 1, 1, 1), pixels(ranks));
        assertEquals(List.of(2, 2, 2, 2), dimmers(ranks));
    }

    @Test
    void aPixelInSeveralZonesBelongsToTheOneOfTheHighestRank() {
        assertEquals(
                List.of(2, 2, 0, 1, 1, 1), pixels(Ranks.of(fitting(), Optional.of(List.of("glow", "job", "bed")))));
        assertEquals(List.of(1, 1, 2, 0, 0, 0), pixels(Ranks.of(fitting(), Optional.of(List.of("job", "bed")))));
    }

    @Test
    void withoutAnOrderStatusZonesComeLastAndAlike() {
        Ranks ranks = Ranks.of(fitting(), Optional.empty());
        assertEquals(List.of(1, 1, 0, 1, 1, 1), pixels(ranks));
        assertEquals(List.of(0, 0, 0, 0), dimmers(ranks));
    }

    @Test
    void dimmersAndPlainColourStripsHaveRanksToo() {
        Ranks ranks = Ranks.of(fitting(), Optional.of(List.of("work", "cove")));
        assertEquals(List.of(1, 1, 0, 1), dimmers(ranks));
    }

    @Test
    void anEmptyOrderDimsAllAlike() {
        Ranks ranks = Ranks.of(fitting(), Optional.of(List.of()));
        assertEquals(List.of(0, 0, 0, 0, 0, 0), pixels(ranks));
        assertEquals(1, ranks.count());
    }

    /** Bed 0 and 1, glow 2 and 3, job 3 to 5; a white light in the middle of a plain colour strip's channels. */
    private static Fitting fitting() {
        Map<String, Zone> zones = new LinkedHashMap<>();
        zones.put("strip", Zone.run(0, 5));
        zones.put("bed", Zone.run(0, 1));
        zones.put("glow", Zone.run(2, 3));
        zones.put("job", Zone.run(5, 3));
        zones.put("cove", Zone.run(6, 6));
        return new Fitting(
                6,
                zones,
                List.of(
                        new Fitting.DimmerUse("cove", 6, 0),
                        new Fitting.DimmerUse("cove", 6, 1),
                        Fitting.DimmerUse.white("work"),
                        new Fitting.DimmerUse("cove", 6, 2)));
    }

    private static List<Integer> pixels(Ranks ranks) {
        return IntStream.range(0, 6).map(ranks::ofPixel).boxed().toList();
    }

    private static List<Integer> dimmers(Ranks ranks) {
        return IntStream.range(0, 4).map(ranks::ofDimmer).boxed().toList();
    }
}
