package dev.lampwright.tool.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.look.Zone;
import dev.lampwright.tool.picture.ZoneMarks.Mark;
import dev.lampwright.tool.picture.ZoneMarks.Run;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ZoneMarksTest {
    private static final Lettering LETTERING = new Lettering(1);

    private static Mark only(Zone zone) {
        return new ZoneMarks(Map.of("bed", zone), 60, 8, LETTERING).marks().get(0);
    }

    @Test
    void arrowsGoAsZonesDo() {
        assertEquals(List.of(new Run(3, 9)), only(Zone.run(3, 9)).runs());
        assertEquals(List.of(new Run(9, 3)), only(Zone.run(9, 3)).runs());
        assertEquals(List.of(new Run(5, 5)), only(Zone.run(5, 5)).runs());
        assertEquals(
                List.of(new Run(0, 9), new Run(29, 20)),
                only(Zone.run(0, 9).then(Zone.run(29, 20))).runs());
    }

    @Test
    void aMirroredZoneGoesFromItsEndsToTheMiddle() {
        assertEquals(
                List.of(new Run(0, 4), new Run(9, 5)),
                only(Zone.run(0, 9).mirrored()).runs());
    }

    @Test
    void theNameStandsOverTheLongestRun() {
        assertEquals(24.5, only(Zone.run(0, 5).then(Zone.run(20, 29))).middle());
    }

    @Test
    void zonesThatOverlapStandInRowsOfTheirOwn() {
        Map<String, Zone> zones = new LinkedHashMap<>();
        zones.put("strip", Zone.run(0, 59));
        zones.put("bed", Zone.run(0, 29));
        zones.put("nozzle", Zone.run(59, 30));
        zones.put("job", Zone.run(0, 59));
        zones.put("shelf", Zone.run(60, 60));
        ZoneMarks marks = new ZoneMarks(zones, 60, 8, LETTERING);
        assertEquals(2, marks.rows());
        assertEquals(
                List.of("bed 0", "nozzle 0", "job 1"),
                marks.marks().stream()
                        .map(mark -> mark.name() + " " + mark.row())
                        .toList());
    }

    @Test
    void aNameThatIsLongerThanItsZoneNeedsItsRoomToo() {
        Map<String, Zone> zones = new LinkedHashMap<>();
        zones.put("a-very-long-name", Zone.run(0, 1));
        zones.put("bed", Zone.run(2, 3));
        assertEquals(2, new ZoneMarks(zones, 60, 8, LETTERING).rows());
    }
}
