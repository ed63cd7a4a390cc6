package dev.lampwright.desk;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.cue.AlarmState;
import dev.lampwright.cue.Wish;
import dev.lampwright.cue.Wishes;
import dev.lampwright.json.Json;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Fitting.DimmerUse;
import dev.lampwright.look.Zone;
import dev.lampwright.testing.CapturedLog;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DeskTest {
    private static final Fitting FITTING = fitting(6);
    private static final QuietHours NIGHT =
            new QuietHours(LocalTime.of(22, 0), LocalTime.of(6, 0), ZoneId.of("UTC"), 0.2);

    private long nanos;
    private Instant wall = Instant.parse("2026-11-25T12:00:00Z");
    private Desk.Alarm alarm = Desk.Alarm.NONE;
    private final AtomicReference<Wishes> slot = new AtomicReference<>(Wishes.NONE);
    private Desk desk = desk(DeskSettings.USUAL);

    private static KnownLooks only(String... names) {
        return new KnownLooks(Set.of(names), Set.of());
    }

    private static Fitting fitting(int pixels) {
        Map<String, Zone> zones = new LinkedHashMap<>();
        zones.put("strip", Zone.run(0, pixels - 1));
        zones.put("bed", Zone.run(0, 1));
        return new Fitting(pixels, zones, List.of(DimmerUse.white("work"), DimmerUse.white("side")));
    }

    private Desk desk(DeskSettings settings) {
        Desk.Clocks clocks = new Desk.Clocks(() -> nanos, () -> wall);
        return new Desk(settings, FITTING, only("idle", "done"), clocks, () -> alarm, slot::set);
    }

    private String now(String word, String payload) {
        Answer answer = desk.ask(word, payload);
        assertTrue(answer.done(), answer.json());
        return answer.text();
    }

    private String why(String word, String payload) {
        Wishes before = slot.get();
        Answer answer = desk.ask(word, payload);
        assertFalse(answer.done(), answer.json());
        assertSame(before, slot.get(), "nothing has changed");
        return answer.text();
    }

    @Test
    void brightness() {
        assertEquals("brightness 0.4", now("brightness", "0.4"));
        assertEquals(0.4f, slot.get().brightness());
        assertEquals("brightness 0", now("brightness", " {\"brightness\": 0, \"id\": \"a\"} "));
        assertEquals(0, slot.get().brightness());
    }

    @Test
    void theConfigurationsBrightnessCountsUntilAnotherIsAskedFor() {
        desk = desk(new DeskSettings(0.3, Optional.empty(), false));
        assertEquals(0.3f, slot.get().brightness());
        now("brightness", "0.8");
        desk.change(new DeskSettings(0.3, Optional.empty(), false), FITTING, only("idle"));
        assertEquals(0.8f, slot.get().brightness());
        desk.change(new DeskSettings(0.5, Optional.empty(), false), FITTING, only("idle"));
        assertEquals(0.5f, slot.get().brightness());
    }

    @Test
    void whiteLights() {
        assertEquals("white light 0.7", now("work", "0.7"));
        assertEquals(0.7f, slot.get().level(1));
        assertEquals("side 0", now("work", "{\"dimmer\": \"side\", \"work\": 0}"));
        assertEquals(0.7f, slot.get().level(0));
        assertEquals(0, slot.get().level(1));
        assertEquals("white light automatic", now("work", "auto"));
        assertTrue(Float.isNaN(slot.get().level(0)));
    }

    @Test
    void aLookForATime() {
        assertEquals("look done for 60 s", now("look", "done"));
        assertEquals("done", slot.get().lookAt(TimeUnit.SECONDS.toNanos(59)));
        assertEquals("", slot.get().lookAt(TimeUnit.SECONDS.toNanos(60)));
        assertEquals("look idle for 2.5 s", now("look", "{\"look\": \"idle\", \"for_s\": 2.5}"));
        assertEquals("look automatic", now("look", "auto"));
        assertEquals("", slot.get().lookAt(nanos));
        alarm = new Desk.Alarm(AlarmState.ALERT, true);
        assertEquals("look idle for 60 s, once the fault is seen and over", now("look", "\"idle\""));
    }

    @Test
    void acknowledgeAndReset() {
        assertEquals("there is no fault to acknowledge", why("acknowledge", ""));
        assertEquals("there is no fault to reset", why("reset", ""));
        alarm = new Desk.Alarm(AlarmState.ALERT, true);
        assertEquals("the fault has not been acknowledged; acknowledge it first", why("reset", ""));
        assertEquals("fault acknowledged", now("acknowledge", ""));
        alarm = new Desk.Alarm(AlarmState.ACKNOWLEDGED, true);
        assertEquals("the fault is not over yet; reset it once it is", why("reset", ""));
        alarm = new Desk.Alarm(AlarmState.ACKNOWLEDGED, false);
        assertEquals("fault reset", now("reset", "{}"));
    }

    @Test
    void quietByHoursAndByAsking() {
        desk = desk(new DeskSettings(1, Optional.of(NIGHT), false));
        assertEquals(1, slot.get().quiet());
        wall = Instant.parse("2026-11-25T22:00:00Z");
        desk.look();
        assertEquals(0.2f, slot.get().quiet());
        assertTrue(desk.quiet());
        assertEquals("quiet off for 10 s", now("quiet", "{\"quiet\": \"off\", \"for_s\": 10}"));
        assertEquals(1, slot.get().quiet());
        nanos = TimeUnit.SECONDS.toNanos(10);
        desk.look();
        assertEquals(0.2f, slot.get().quiet());
        wall = Instant.parse("2026-11-26T07:00:00Z");
        assertEquals("quiet on", now("quiet", "on"));
        assertEquals(0.2f, slot.get().quiet());
        assertEquals("quiet auto", now("quiet", "auto"));
        assertFalse(desk.quiet());
    }

    @Test
    void quietWithoutHours() {
        assertEquals("quiet on", now("quiet", "on"));
        assertEquals((float) QuietHours.USUAL_LIGHT, slot.get().quiet());
        assertEquals("quiet auto, and [quiet] sets no hours", now("quiet", "auto"));
    }

    @Test
    void severalPixelsAndZonesAtOnce() {
        String payload = "{\"pixels\": {\"bed\": \"red\", \"1\": \"#00f\", \"5-4\": \"lime\"}, \"for_s\": 5}";
        assertEquals("4 pixels for 5 s", now("pixels", payload));
        assertEquals("pixels automatic", now("pixels", "auto"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "brightness | 1.1        | brightness is 1.1; give a number from 0 to 1, \"40 %\", \"on\", \"off\" or \"auto\"",
                "brightness | bright     | brightness is \"bright\"; give a number from 0 to 1, \"40 %\", \"on\", \"off\" or \"auto\"",
                "brightness | {}         | brightness is missing; give a number from 0 to 1, \"40 %\", \"on\", \"off\" or \"auto\"",
                "brightness | null       | brightness is null; give a number from 0 to 1, \"40 %\", \"on\", \"off\" or \"auto\"",
                "brightness | {\"brightness\": 1, \"colour\": 2} | colour is not known; give only brightness,"
                        + " fade_s, for_s, until",
                "brightness | {\"brightness\": [1]} | brightness is [1]; give a number from 0 to 1, \"40 %\", \"on\", \"off\" or \"auto\"",
                "work  | dim             | work is \"dim\"; give a number from 0 to 1, \"40 %\", \"on\", \"off\" or \"auto\", or these by the names of"
                        + " white lights",
                "work  | {\"work\": {\"top\": 1}} | there is no white light \"top\"; choose one of: work, side",
                "work  | {\"work\": {\"work\": 1, \"side\": \"dim\"}} | work side is \"dim\"; give a number from 0 to 1, \"40 %\", \"on\", \"off\" or \"auto\"",
                "work  | {\"work\": {}}   | work is missing; give a number from 0 to 1, \"40 %\", \"on\", \"off\" or \"auto\", or these by the names of"
                        + " white lights",
                "work  | {\"dimmer\": \"side\", \"work\": {\"side\": 1}} | dimmer is \"side\"; give names in one place only",
                "work  | {\"dimmer\": \"top\", \"work\": 1} | there is no white light \"top\"; choose one of: work, side",
                "work  | {\"dimmer\": 5, \"work\": 1} | dimmer is 5; give a word, or leave it out",
                "look  | dune            | there is no look \"dune\"; choose one of: done, idle",
                "look  | 7               | look is 7; give the name of a look, or \"auto\"",
                "look  | {\"look\": \"done\", \"for_s\": -1} | for_s is -1; give a number from 0.1 to 604800",
                "look  | {\"look\": \"done\", \"for_s\": 0} | for_s is 0; give a number from 0.1 to 604800",
                "look  | {\"look\": \"done\", \"for_s\": 5, \"until\": \"changed\"} | for_s and until cannot be combined; give one of them",
                "look  | {\"look\": \"done\", \"until\": \"noon\"} | until is \"noon\"; give \"changed\", or for_s with seconds",
                "look  | {\"look\": \"done\", \"fade_s\": 601} | fade_s is 601; give a number from 0 to 600",
                "look  | {\"look\": \"done\", \"fade_s\": \"slow\"} | fade_s is \"slow\"; give a number from 0 to 600",
                "quiet | maybe           | quiet is \"maybe\"; give \"on\", \"off\" or \"auto\"",
                "pixels | {\"pixels\": {\"6\": \"red\"}} | 6 is past the end of the strip; stay within 0-5",
                "pixels | {\"pixels\": {\"door\": \"red\"}} | there is no zone \"door\"; choose one of: strip, bed, or pixels such as 3 or 5-9",
                "pixels | {\"pixels\": {\"1\": 7}} | pixels 1 is 7; give a colour, for instance \"orange\"",
                "pixels | red            | pixels is \"red\"; give colours by zone or by pixel, for instance {\"pixels\": {\"bed\": \"green\","
                        + " \"3\": \"red\", \"5-9\": \"navy\"}}",
                "pixels | 7              | pixels is 7; give an object of places and colours",
                "lights | dim            | lights is \"dim\"; give \"off\", \"on\", \"auto\", or an object with any of brightness, work, look,"
                        + " pixels and quiet",
                "lights | [1]            | lights is [1]; give \"off\", \"on\", \"auto\", or an object with any of brightness, work, look,"
                        + " pixels and quiet",
                "lights | {\"lights\": {\"reset\": 1}} | reset is not known; give any of brightness, work, look, pixels, quiet",
                "lights | {\"lights\": {\"brightness\": 0.5, \"look\": \"dune\"}} | there is no look \"dune\"; choose one of: done, idle",
                "dance | 1               | \"dance\" is not something you can ask for; choose one of: brightness, work,"
                        + " look, pixels, acknowledge, reset, quiet, lights",
            })
    void whatIsWrongIsRefusedWithAReasonAndChangesNothing(String word, String payload, String reason) {
        assertEquals(reason, why(word, payload));
    }

    @Test
    void aWrongColourNamesItsPlace() {
        String reason = why("pixels", "{\"pixels\": {\"1\": \"red\", \"bed\": \"rde\"}}");
        assertTrue(reason.startsWith("bed: "), reason);
    }

    @Test
    void aLongMessageIsRefused() {
        assertEquals(
                "the message is longer than 65536 characters; send a shorter one", why("look", "x".repeat(65_537)));
    }

    /** However long an ask is, the line has room for the correction. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "look   | %s                                  | choose one of: done, idle",
                "quiet  | %s                                  | give \"on\", \"off\" or \"auto\"",
                "work   | %s                                  | give a number from 0 to 1, \"40 %\", \"on\", \"off\" or \"auto\"",
                "work   | {\"dimmer\": \"%s\", \"work\": 1}     | choose one of: work, side",
                "pixels | %s                                  | \"5-9\": \"navy\"}}",
                "pixels | {\"pixels\": {\"%s\": \"red\"}}       | or pixels such as 3 or 5-9",
                "pixels | {\"pixels\": {\"%s\": 7}}           | give a colour, for instance \"orange\"",
                "pixels | {\"pixels\": {\"bed\": \"%s\"}}       | write it like",
                "look   | {\"%s\": 1, \"look\": \"done\"}       | give only fade_s, for_s, look, until",
                "lights | %s                                  | pixels and quiet",
                "lights | {\"lights\": {\"%s\": 1}}           | give any of brightness",
            })
    void aLongWordLeavesRoomForWhatWouldBeRight(String word, String payload, String right) {
        for (String longWord : List.of("x".repeat(5000), "[".repeat(5000), "\ud83d\udca1".repeat(5000))) {
            String why = why(word, payload.replace("%s", longWord));
            assertTrue(why.contains("; ") && why.contains(right), why);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"a\nb\u2028c\u0000", "\ud800", "💡"})
    void anAnswerIsOneLine(String name) {
        assertTrue(desk.ask(name, "1").json().lines().count() == 1);
        assertEquals(1, desk.ask("look", name).json().lines().count());
    }

    @Test
    void anAnswerSaysWhatItIsAnAnswerTo() {
        assertEquals(
                "{\"ask\":\"look\",\"done\":true,\"now\":\"look done for 60 s\",\"id\":\"17\"}",
                desk.ask("look", "{\"look\": \"done\", \"id\": 17}").json());
        assertEquals(
                "{\"ask\":\"look\",\"done\":false,\"why\":\"there is no look \\\"x\\\"; choose one of: done, idle\","
                        + "\"code\":\"unknown_look\",\"values\":{\"name\":\"x\",\"wanted\":\"choose one of: done, idle\"},\"id\":\"b\"}",
                desk.ask("look", "{\"look\": \"x\", \"id\": \"b\"}").json());
    }

    @Test
    void whatIsAskedForStaysWhereThereStillIsWhatItWasAskedOf() {
        now("work", "{\"work\": {\"work\": 1, \"side\": 0.3}}");
        now("pixels", "{\"pixels\": {\"bed\": \"red\", \"4-5\": \"lime\"}, \"until\": \"changed\"}");
        now("look", "done");
        Map<String, Zone> zones = Map.of("strip", Zone.run(0, 4), "bed", Zone.run(3, 4));
        desk.change(DeskSettings.USUAL, new Fitting(5, zones, List.of(DimmerUse.white("side"))), only("idle"));
        assertEquals(0.3f, slot.get().level(0));
        assertEquals("", slot.get().lookAt(nanos));
        assertArrayEquals(new boolean[] {false, false, false, true, true}, own(5));
        assertEquals(List.of("work side", "pixels bed"), asked());
        assertEquals("there is no look \"done\"; choose one of: idle", why("look", "done"));
    }

    /** For each pixel, whether it has its own light. */
    private boolean[] own(int pixels) {
        List<Float> rgba = slot.get().floats(Wish.PIXELS);
        boolean[] own = new boolean[pixels];
        for (int i = 0; 4 * i < rgba.size(); i++) {
            own[i] = !rgba.get(4 * i).isNaN();
        }
        return own;
    }

    private List<String> asked() {
        List<String> asked = new ArrayList<>();
        for (JsonNode one : Json.read(desk.asked().json().text()).orElseThrow()) {
            asked.add((one.path("ask").asText() + " " + one.path("name").asText()).strip());
        }
        return asked;
    }

    @Test
    void onIsTheLastLevelThatWasNotOff() {
        desk = desk(new DeskSettings(0.3, Optional.empty(), false));
        assertEquals("brightness 0", now("brightness", "off"));
        assertEquals("brightness 0.3", now("brightness", "on"));
        assertEquals("brightness 0.4", now("brightness", "40 %"));
        now("brightness", "OFF");
        assertEquals("brightness 0.4", now("brightness", "{\"brightness\": \"On\"}"));
        assertEquals("brightness automatic", now("brightness", "auto"));
        assertEquals(0.3f, slot.get().brightness());
        assertEquals("white light 1", now("work", "on"));
        now("work", "{\"work\": {\"side\": \"20%\"}}");
        now("work", "off");
        assertEquals("work 1, side 0.2", now("work", "on"));
    }

    @Test
    void everythingCanBeForATimeOrUntilChanged() {
        assertEquals("brightness 0.4 for 10 s", now("brightness", "{\"brightness\": 0.4, \"for_s\": 10}"));
        assertEquals("side 1 for 20 s", now("work", "{\"work\": {\"side\": 1}, \"for_s\": 20}"));
        assertEquals("look done until changed", now("look", "{\"look\": \"done\", \"until\": \"changed\"}"));
        assertEquals(
                "2 pixels until changed", now("pixels", "{\"pixels\": {\"bed\": \"red\"}, \"until\": \"changed\"}"));
        Wishes wishes = slot.get();
        long ten = TimeUnit.SECONDS.toNanos(10);
        assertEquals(0.4f, wishes.at(ten - 1).brightness());
        assertEquals(1, wishes.at(ten).brightness(), "in the very frame, whenever the desk looks");
        assertEquals(1, wishes.at(ten).level(1));
        assertEquals("done", wishes.at(ten).lookAt(ten));
        nanos = ten;
        desk.look();
        assertTrue(Float.isNaN(slot.get().at(2 * ten).level(1)));
        nanos = TimeUnit.DAYS.toNanos(400);
        desk.look();
        assertEquals(List.of("look", "pixels bed"), asked());
        assertEquals("done", slot.get().at(nanos).lookAt(nanos));
        assertArrayEquals(new boolean[] {true, true, false, false, false, false}, own(6));
    }

    @Test
    void aClockOnTheWallThatIsSetChangesNoTime() {
        now("brightness", "{\"brightness\": 0.4, \"for_s\": 10}");
        wall = wall.plusSeconds(100_000);
        desk.look();
        assertEquals(0.4f, slot.get().at(nanos).brightness());
    }

    @Test
    void placesThatAMessageDoesNotNameStayAsTheyAre() {
        now("pixels", "{\"pixels\": {\"bed\": \"red\"}, \"for_s\": 10}");
        now("pixels", "{\"pixels\": {\"5-4\": \"lime\"}, \"for_s\": 20}");
        assertArrayEquals(new boolean[] {true, true, false, false, true, true}, own(6));
        assertEquals(List.of("pixels 4-5", "pixels bed"), asked());
        assertEquals("2 pixels automatic", now("pixels", "{\"pixels\": {\"bed\": \"auto\"}}"));
        assertArrayEquals(new boolean[] {false, false, false, false, true, true}, own(6));
        assertEquals("2 pixels automatic", now("pixels", "{\"pixels\": {\"bed\": \"auto\"}}"), "twice is once");
    }

    @Test
    void aColourOverOthersTakesTheirPlaceUnlessTheyOutlastIt() {
        now("pixels", "{\"pixels\": {\"bed\": \"red\"}, \"for_s\": 10}");
        now("pixels", "{\"pixels\": {\"5\": \"red\"}, \"until\": \"changed\"}");
        now("pixels", "{\"pixels\": {\"strip\": \"off\"}, \"for_s\": 30}");
        assertEquals(List.of("pixels strip", "pixels 5"), asked());
        assertEquals(0f, slot.get().floats(Wish.PIXELS).get(0));
        assertEquals(
                "the colour there is that of strip; end that with {\"pixels\": {\"strip\": \"auto\"}}",
                why("pixels", "{\"pixels\": {\"bed\": \"auto\"}}"));
        assertEquals("6 pixels automatic", now("pixels", "{\"pixels\": {\"strip\": \"auto\"}}"));
        assertEquals(List.of(), asked());
    }

    @Test
    void aColourThatOutlastsAnotherShowsAgain() {
        now("pixels", "{\"pixels\": {\"5\": \"red\"}, \"until\": \"changed\"}");
        now("pixels", "{\"pixels\": {\"strip\": \"off\"}, \"for_s\": 30}");
        nanos = TimeUnit.SECONDS.toNanos(30);
        desk.look();
        assertArrayEquals(new boolean[] {false, false, false, false, false, true}, own(6));
        assertEquals(1f, slot.get().floats(Wish.PIXELS).get(20));
    }

    @Test
    void thereIsABoundOfPlaces() {
        StringBuilder many = new StringBuilder("{\"pixels\": {\"0-1\": \"red\"");
        Map<String, Zone> zones = new LinkedHashMap<>();
        for (int i = 0; i < PixelsAsk.MOST_PLACES; i++) {
            zones.put("z" + i, Zone.run(0, 5));
            many.append(", \"z").append(i).append("\": \"red\"");
        }
        desk.change(DeskSettings.USUAL, new Fitting(6, zones, List.of()), only("idle"));
        String why = why("pixels", many + "}}");
        assertTrue(why.startsWith("more than 1024 places would have colours of their own; "), why);
        now("pixels", many.toString().replace("\"0-1\": \"red\", ", "") + "}}");
        assertEquals(AskedFor.MOST_PLACES, asked().size());
        assertEquals(PixelsAsk.MOST_PLACES, desk.asked().count(Ask.PIXELS));
        assertEquals(PixelsAsk.MOST_PLACES - AskedFor.MOST_PLACES, desk.asked().more());
    }

    @Test
    void lightsAreSetTogetherOrNotAtAll() {
        String parts =
                "\"brightness\": \"40 %\", \"work\": {\"side\": \"on\"}, \"look\": \"done\", \"pixels\": {\"bed\": \"red\"},"
                        + " \"quiet\": \"on\"";
        why("lights", "{\"lights\": {" + parts.replace("red", "rde") + "}}");
        assertEquals(
                "brightness 0.4 for 30 s, side 1 for 30 s, look done for 30 s, 2 pixels for 30 s, quiet on for 30 s",
                now("lights", "{\"lights\": {" + parts + "}, \"for_s\": 30}"));
        Wishes wishes = slot.get();
        assertEquals(0.4f, wishes.brightness());
        assertEquals(1, wishes.level(1));
        assertEquals("done", wishes.lookAt(nanos));
        assertTrue(desk.quiet());
        Wishes after = wishes.at(TimeUnit.SECONDS.toNanos(30));
        assertTrue(after.plain(), "all of it ends in one frame");
    }

    @Test
    void allOffAndOnAndBack() {
        now("work", "0.7");
        assertEquals("all lights off", now("lights", "off"));
        assertEquals(0, slot.get().brightness());
        assertEquals(0, slot.get().level(0));
        assertEquals("all lights on", now("lights", "on"));
        assertEquals(1, slot.get().brightness());
        assertEquals(0.7f, slot.get().level(1));
        now("look", "done");
        now("quiet", "on");
        now("pixels", "{\"pixels\": {\"bed\": \"red\"}}");
        assertEquals("all lights automatic", now("lights", "auto"));
        assertTrue(slot.get().plain());
        assertEquals(List.of(), asked());
        desk.change(DeskSettings.USUAL, new Fitting(6, FITTING.zones(), List.of()), only("idle"));
        assertEquals("all lights off for 5 s", now("lights", "{\"lights\": \"off\", \"for_s\": 5}"));
    }

    @Test
    void aFadeGoesWithWhatWasAskedForAndWithItsEnd() {
        now("work", "{\"work\": {\"side\": 1}, \"fade_s\": 3, \"for_s\": 5}");
        now("brightness", "{\"brightness\": 0.5, \"fade_s\": 2}");
        Wishes wishes = slot.get();
        assertEquals(List.of(Float.NaN, 3f), wishes.floats(Wish.LEVELS_FADE));
        assertEquals(List.of(2f), wishes.floats(Wish.BRIGHTNESS_FADE));
        Wishes after = wishes.at(TimeUnit.SECONDS.toNanos(5));
        assertTrue(Float.isNaN(after.level(1)));
        assertEquals(List.of(Float.NaN, 3f), after.floats(Wish.LEVELS_FADE));
        now("brightness", "1");
        assertEquals(List.of(), slot.get().floats(Wish.BRIGHTNESS_FADE));
    }

    @Test
    void whatIsAskedForIsToldWithItsEnd() {
        now("brightness", "0.4");
        now("work", "{\"dimmer\": \"side\", \"work\": \"off\", \"for_s\": 90}");
        now("pixels", "{\"pixels\": {\"bed\": \"#ff0000\"}, \"until\": \"changed\"}");
        nanos = TimeUnit.MILLISECONDS.toNanos(30_500);
        wall = wall.plusMillis(30_500);
        assertEquals(
                "[{\"ask\":\"brightness\",\"value\":0.4,\"until\":\"changed\"},"
                        + "{\"ask\":\"work\",\"name\":\"side\",\"value\":0,\"until\":\"2026-11-25T12:01:30Z\",\"left_s\":60},"
                        + "{\"ask\":\"pixels\",\"name\":\"bed\",\"value\":\"#ff0000\",\"until\":\"changed\"}]",
                desk.asked().json().text());
        assertEquals(List.of("brightness", "work", "pixels"), desk.asked().words());
        assertEquals(1, desk.asked().count(Ask.WORK));
        assertEquals(
                (double) Instant.parse("2026-11-25T12:01:30Z").getEpochSecond(),
                desk.asked().endEpochSeconds(Ask.WORK).orElseThrow());
        assertEquals(
                Double.POSITIVE_INFINITY,
                desk.asked().endEpochSeconds(Ask.PIXELS).orElseThrow());
        assertTrue(desk.asked().endEpochSeconds(Ask.LOOK).isEmpty());
    }

    /** The start of another run: it knows nothing but the text, and its monotonic clock starts from zero. */
    private void restart(String kept, DeskSettings settings, Fitting fitting, KnownLooks looks) {
        nanos = -77;
        desk = new Desk(settings, fitting, looks, new Desk.Clocks(() -> nanos, () -> wall), () -> alarm, slot::set);
        desk.restore(kept);
    }

    @Test
    void whatIsKeptCountsInAnotherRunUntilTheSameTime() {
        now("brightness", "40 %");
        now("work", "{\"work\": {\"side\": 0.7}}");
        now("work", "{\"work\": {\"side\": \"off\"}, \"for_s\": 3600}");
        now("look", "{\"look\": \"done\", \"for_s\": 60}");
        now("pixels", "{\"pixels\": {\"strip\": \"navy\", \"bed\": \"oklch(70% 0.15 50)\"}, \"until\": \"changed\"}");
        now("quiet", "on");
        List<Float> pixels = slot.get().floats(Wish.PIXELS);
        String kept = desk.kept();
        wall = wall.plusSeconds(59);
        restart(kept, DeskSettings.USUAL, FITTING, only("idle", "done"));
        Wishes wishes = slot.get();
        assertEquals(0.4f, wishes.brightness());
        assertEquals(0, wishes.level(1));
        assertTrue(Float.isNaN(wishes.level(0)));
        assertEquals("done", wishes.lookAt(nanos));
        assertEquals(pixels, wishes.floats(Wish.PIXELS));
        assertTrue(desk.quiet());
        assertEquals("", wishes.at(nanos + TimeUnit.SECONDS.toNanos(1)).lookAt(nanos + TimeUnit.SECONDS.toNanos(1)));
        assertEquals("side 0.7", now("work", "{\"work\": {\"side\": \"on\"}}"), "the level before it was off is known");
        kept = desk.kept();
        wall = wall.plusSeconds(1);
        restart(kept, DeskSettings.USUAL, FITTING, only("idle", "done"));
        assertEquals(List.of("brightness", "work side", "pixels bed", "pixels strip", "quiet"), asked());
    }

    /** A board without a real-time clock starts in the past, until it learns the time. */
    @Test
    void whatIsKeptEndsByTheClockOnTheWallAlsoWhenThatIsSetLater() {
        now("brightness", "{\"brightness\": 0.4, \"for_s\": 3600}");
        Instant end = wall.plusSeconds(3600);
        String kept = desk.kept();
        wall = wall.minusSeconds(100_000);
        restart(kept, DeskSettings.USUAL, FITTING, only());
        assertEquals(0.4f, slot.get().at(nanos).brightness());
        wall = end.minusSeconds(10);
        desk.look();
        long ten = TimeUnit.SECONDS.toNanos(10);
        assertEquals(0.4f, slot.get().at(nanos + ten - 1).brightness());
        assertEquals(1, slot.get().at(nanos + ten).brightness());
        wall = end;
        desk.look();
        assertEquals(1, slot.get().at(nanos).brightness());
    }

    @Test
    void whatNoLongerAppliesIsDroppedInOneLine() {
        now("brightness", "0.4");
        now("work", "{\"work\": {\"side\": 1}}");
        now("look", "{\"look\": \"done\", \"until\": \"changed\"}");
        now("pixels", "{\"pixels\": {\"bed\": \"red\", \"5\": \"red\"}, \"until\": \"changed\"}");
        Fitting other = new Fitting(5, Map.of("strip", Zone.run(0, 4)), List.of(DimmerUse.white("work")));
        try (CapturedLog log = new CapturedLog(Desk.class.getName())) {
            restart(desk.kept(), DeskSettings.USUAL, other, only("idle"));
            assertEquals(
                    List.of(
                            "WARN what was asked for is dropped, since the configuration does not have it: work side 1, look done,"
                                    + " pixels bed red, pixels 5 red"),
                    log.lines());
        }
        assertEquals(List.of("brightness"), asked());
        assertFalse(desk.kept().contains("done"));
    }

    @Test
    void whatIsToBeKeptIsCounted() {
        assertEquals(0, desk.changes());
        now("look", "{\"look\": \"done\", \"for_s\": 10}");
        long asked = desk.changes();
        assertTrue(asked > 0);
        why("look", "dune");
        now("quiet", "auto");
        nanos = TimeUnit.SECONDS.toNanos(5);
        wall = wall.plusSeconds(5);
        desk.look();
        assertEquals(asked, desk.changes(), "nothing is other than before");
        wall = wall.plusSeconds(7200);
        desk.look();
        assertEquals(asked + 1, desk.changes(), "a clock that was set moves its end");
        nanos = TimeUnit.SECONDS.toNanos(10);
        wall = wall.plusSeconds(5);
        desk.look();
        assertEquals(asked + 2, desk.changes());
    }

    /** Wherever a text is cut off or changed, it is either refused as a whole, with a reason, or still valid. */
    @Test
    void aDamagedTextChangesNothing() {
        now("brightness", "0.4");
        now("pixels", "{\"pixels\": {\"bed\": \"red\"}, \"for_s\": 100}");
        String kept = desk.kept();
        desk = desk(DeskSettings.USUAL);
        Wishes before = slot.get();
        for (int end = 0; end < kept.length(); end++) {
            String cut = kept.substring(0, end);
            Exception e = assertThrows(IllegalArgumentException.class, () -> desk.restore(cut), cut);
            assertEquals("is cut off, or is not JSON", e.getMessage());
        }
        for (String foreign : List.of("{}", "[]", "7", kept.replace("asks 1", "asks 2"))) {
            Exception e = assertThrows(IllegalArgumentException.class, () -> desk.restore(foreign), foreign);
            assertEquals("is not what this version of lampwright writes there", e.getMessage());
        }
        for (String wrong : List.of("\"brightness\"", "0.4", "\"changed\"")) {
            String changed = kept.replaceFirst(wrong, "null");
            Exception e = assertThrows(IllegalArgumentException.class, () -> desk.restore(changed), changed);
            assertTrue(e.getMessage().contains("which is not possible"), e.getMessage());
        }
        assertSame(before, slot.get());
        Random random = new Random(11);
        for (int i = 0; i < 5000; i++) {
            StringBuilder text = new StringBuilder(kept);
            text.setCharAt(random.nextInt(text.length()), (char) (32 + random.nextInt(95)));
            try {
                desk.restore(text.toString());
            } catch (IllegalArgumentException e) {
                assertFalse(e.getMessage().isEmpty());
            }
        }
    }

    @Test
    void aSwatchCanBeAskedForThoughNoCueUsesIt() {
        desk.change(DeskSettings.USUAL, FITTING, new KnownLooks(Set.of("idle"), Set.of("sea-mist")));
        assertTrue(desk.ask("look", "sea-mist").done());
        assertEquals(
                "there is no look \"mist\"; choose one of: idle, or one that `lampwright looks` lists",
                why("look", "mist"));
    }

    @Test
    void noMessageMakesItThrow() {
        Random random = new Random(7);
        String alphabet = "{}[]\":,0123456789.eE+-truefalsnl \n\u0000 levelook";
        for (int i = 0; i < 20_000; i++) {
            StringBuilder text = new StringBuilder();
            for (int j = random.nextInt(40); j > 0; j--) {
                text.append(alphabet.charAt(random.nextInt(alphabet.length())));
            }
            List<String> words = Ask.words();
            desk.ask(words.get(random.nextInt(words.size())), text.toString());
        }
    }

    @Test
    void anIdIsOneValue() {
        assertEquals(
                Optional.of("7"),
                desk.ask("brightness", "{\"brightness\": 0.5, \"id\": 7}").id());
        for (String id : List.of("{}", "[1]", "null", "{\"a\":1}")) {
            Answer answer = desk.ask("brightness", "{\"brightness\": 0.2, \"id\": " + id + "}");
            assertFalse(answer.done());
            assertEquals("id is " + id + "; give text or a number, or leave it out", answer.text());
            assertEquals(Optional.empty(), answer.id());
        }
        assertEquals(0.5f, desk.wishes().brightness());
    }

    @Test
    void whoAcknowledgesIsPassedOn() {
        List<Asker> askers = new ArrayList<>();
        Desk one = new Desk(
                DeskSettings.USUAL,
                FITTING,
                only("idle"),
                new Desk.Clocks(() -> 0, () -> Instant.EPOCH),
                () -> List.of(alarm),
                slot::set,
                (asker, printer) -> askers.add(asker));
        alarm = Desk.Alarm.NONE;
        assertFalse(one.ask("acknowledge", "", Asker.MQTT).done());
        alarm = new Desk.Alarm(AlarmState.ALERT, true);
        assertTrue(one.ask("acknowledge", "", Asker.page("192.0.2.7")).done());
        assertTrue(one.ask("acknowledge", "{\"by\": \" panel\\u0007 \"}", Asker.MQTT)
                .done());
        assertTrue(
                one.ask("acknowledge", "{\"by\": \"" + "x".repeat(500) + "\"}").done());
        assertTrue(one.ask("quiet", "{\"quiet\": \"on\", \"by\": \"panel\"}", Asker.MQTT)
                .done());
        Answer refused = one.ask("acknowledge", "{\"by\": 7}", Asker.MQTT);
        assertEquals("by is 7; give a name, or leave it out", refused.text());
        assertEquals(
                List.of(
                        new Asker("page", "192.0.2.7", ""),
                        new Asker("mqtt", "", "panel."),
                        new Asker("", "", "x".repeat(40))),
                askers);
    }

    /** Two printers: an ask is for the named one, or for the only one that allows it. */
    private Desk deskOfTwo(List<Desk.Alarm> alarms, List<String> acknowledged) {
        return new Desk(
                DeskSettings.USUAL,
                FITTING,
                only("idle"),
                new Desk.Clocks(() -> 0, () -> Instant.EPOCH),
                () -> alarms,
                slot::set,
                (asker, printer) -> acknowledged.add(printer));
    }

    @Test
    void theFaultOfEachPrinterIsAcknowledgedByItsName() {
        List<String> acknowledged = new ArrayList<>();
        List<Desk.Alarm> alarms = new ArrayList<>(List.of(
                new Desk.Alarm("alder", AlarmState.ALERT, true), new Desk.Alarm("birch", AlarmState.ALERT, true)));
        Desk two = deskOfTwo(alarms, acknowledged);
        assertEquals(
                "several printers have a fault; give the name of one: alder, birch",
                two.ask("acknowledge", "").text());
        assertEquals(
                "there is no printer \"oak\"; choose one of: alder, birch",
                two.ask("acknowledge", "oak").text());
        assertEquals(
                "fault of birch acknowledged", two.ask("acknowledge", "birch").text());
        assertEquals(Map.of("birch", 1L), slot.get().counts(Wish.ACKNOWLEDGEMENTS_OF));
        assertEquals(0, slot.get().count(Wish.ACKNOWLEDGEMENTS), "of nobody without a name");
        alarms.set(1, new Desk.Alarm("birch", AlarmState.ACKNOWLEDGED, false));
        assertEquals("fault of alder acknowledged", two.ask("acknowledge", "{}").text(), "there is only one left");
        assertEquals(
                "there is no fault to acknowledge",
                two.ask("acknowledge", "birch").text());
        assertEquals(List.of("birch", "alder"), acknowledged);
        assertEquals("fault of birch reset", two.ask("reset", "").text());
        assertEquals(Map.of("birch", 1L), slot.get().counts(Wish.RESETS_OF));
        assertEquals(
                "the fault has not been acknowledged; acknowledge it first",
                two.ask("reset", "{\"reset\": \"alder\"}").text());
    }
}
