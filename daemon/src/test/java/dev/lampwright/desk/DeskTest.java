package dev.lampwright.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.cue.Wishes;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Fitting.DimmerUse;
import dev.lampwright.look.Zone;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
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
    private AlarmState alarm = AlarmState.NORMAL;
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
        desk = desk(new DeskSettings(0.3, Optional.empty()));
        assertEquals(0.3f, slot.get().brightness());
        now("brightness", "0.8");
        desk.change(new DeskSettings(0.3, Optional.empty()), FITTING, only("idle"));
        assertEquals(0.8f, slot.get().brightness());
        desk.change(new DeskSettings(0.5, Optional.empty()), FITTING, only("idle"));
        assertEquals(0.5f, slot.get().brightness());
    }

    @Test
    void whiteLights() {
        assertEquals("white light 0.7", now("work", "0.7"));
        assertEquals(0.7f, slot.get().level(1));
        assertEquals("side 0", now("work", "{\"dimmer\": \"side\", \"work\": 0}"));
        assertEquals(0.7f, slot.get().level(0));
        assertEquals(0, slot.get().level(1));
        assertEquals("white light as the look says", now("work", "auto"));
        assertTrue(Float.isNaN(slot.get().level(0)));
    }

    @Test
    void aLookForATime() {
        assertEquals("look done for 60 s", now("look", "done"));
        assertEquals("done", slot.get().lookAt(TimeUnit.SECONDS.toNanos(59)));
        assertEquals("", slot.get().lookAt(TimeUnit.SECONDS.toNanos(60)));
        assertEquals("look idle for 2.5 s", now("look", "{\"look\": \"idle\", \"for_s\": 2.5}"));
        assertEquals("look as the cues say", now("look", "auto"));
        assertEquals("", slot.get().lookAt(nanos));
        alarm = AlarmState.ALERT;
        assertEquals("look idle for 60 s, once the fault is seen and over", now("look", "\"idle\""));
    }

    @Test
    void acknowledgeAndReset() {
        assertEquals("there is no fault to acknowledge", why("acknowledge", ""));
        assertEquals("there is no fault to reset", why("reset", ""));
        alarm = AlarmState.ALERT;
        assertEquals("the fault has not been acknowledged; acknowledge it first", why("reset", ""));
        assertEquals("fault acknowledged", now("acknowledge", ""));
        alarm = AlarmState.ACKNOWLEDGED;
        assertEquals("reset, if the fault is over", now("reset", "{}"));
    }

    @Test
    void quietByHoursAndByAsking() {
        desk = desk(new DeskSettings(1, Optional.of(NIGHT)));
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
        assertEquals("quiet auto, and there are no hours in [quiet]", now("quiet", "auto"));
    }

    @Test
    void severalPixelsAndZonesAtOnce() {
        String payload = "{\"pixels\": {\"bed\": \"red\", \"1\": \"#00f\", \"5-4\": \"lime\"}, \"for_s\": 5}";
        assertEquals("4 pixels for 5 s", now("pixels", payload));
        assertEquals("pixels as the look says", now("pixels", "auto"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "brightness | 1.1        | brightness is 1.1; give a number from 0 to 1",
                "brightness | bright     | brightness is \"bright\"; give a number from 0 to 1",
                "brightness | {}         | brightness is missing; give a number from 0 to 1",
                "brightness | null       | brightness is null; give a number from 0 to 1",
                "brightness | {\"brightness\": 1, \"colour\": 2} | colour is not known; give only brightness",
                "brightness | {\"brightness\": [1]} | brightness is [1]; give a number from 0 to 1",
                "work  | off             | work is \"off\"; give a number from 0 to 1, or \"auto\"",
                "work  | {\"dimmer\": \"top\", \"work\": 1} | there is no white light \"top\"; choose one of: work, side",
                "work  | {\"dimmer\": 5, \"work\": 1} | dimmer is 5; give a word, or leave it out",
                "look  | dune            | there is no look \"dune\"; choose one of: done, idle",
                "look  | 7               | look is 7; give the name of a look, or \"auto\"",
                "look  | {\"look\": \"done\", \"for_s\": -1} | for_s is -1; give a number from 0 to 604800",
                "quiet | maybe           | quiet is \"maybe\"; give \"on\", \"off\" or \"auto\"",
                "pixels | {\"pixels\": {\"6\": \"red\"}} | 6 is past the end of the strip; stay within 0-5",
                "pixels | {\"pixels\": {\"door\": \"red\"}} | there is no zone \"door\"; choose one of: strip, bed, or pixels such as 3 or 5-9",
                "pixels | {\"pixels\": {\"1\": 7}} | pixels 1 is 7; give a colour, for instance \"orange\"",
                "pixels | red            | pixels is \"red\"; give colours by zone or by pixel, for instance {\"pixels\": {\"bed\": \"green\","
                        + " \"3\": \"red\", \"5-9\": \"navy\"}}",
                "dance | 1               | \"dance\" is not something you can ask for; choose one of: brightness, work,"
                        + " look, pixels, acknowledge, reset, quiet",
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

    /** However long what was asked for is, there is room on the line for what would be right. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "look   | %s                                  | choose one of: done, idle",
                "quiet  | %s                                  | give \"on\", \"off\" or \"auto\"",
                "work   | %s                                  | give a number from 0 to 1, or \"auto\"",
                "work   | {\"dimmer\": \"%s\", \"work\": 1}     | choose one of: work, side",
                "pixels | %s                                  | \"5-9\": \"navy\"}}",
                "pixels | {\"pixels\": {\"%s\": \"red\"}}       | or pixels such as 3 or 5-9",
                "pixels | {\"pixels\": {\"%s\": 7}}           | give a colour, for instance \"orange\"",
                "pixels | {\"pixels\": {\"bed\": \"%s\"}}       | write it like",
                "look   | {\"%s\": 1, \"look\": \"done\"}       | give only for_s, look",
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
                "{\"ask\":\"look\",\"done\":false,\"why\":\"there is no look \\\"x\\\"; choose one of: done, idle\",\"id\":\"b\"}",
                desk.ask("look", "{\"look\": \"x\", \"id\": \"b\"}").json());
    }

    @Test
    void otherLightsGiveLevelsAndPixelsBack() {
        now("work", "1");
        desk.change(DeskSettings.USUAL, fitting(7), only("idle"));
        assertTrue(Float.isNaN(slot.get().level(0)));
        assertEquals("there is no look \"done\"; choose one of: idle", why("look", "done"));
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
}
