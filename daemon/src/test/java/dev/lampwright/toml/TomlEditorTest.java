package dev.lampwright.toml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;

/** What each change does to a text, to the byte. The texts are our own; TOML 1.0 says what is valid (toml.io/en/v1.0.0). */
class TomlEditorTest {
    private static final String FILE = """
        # The light over the bench.
        frames_per_s = 50   # calm

        [strip]
          pixels = 37       # counted twice
          order = 'GRB'

        # Dimmers
        [dimmers]
        work = { channel = 0, full_mA = 800 }   # the white one

        [printer.readings]
        bed.actual_C = { topic = "shop/alder/heat", at = "/bed" }
        # the nozzle's is missing

        [[cues]]
        look = "flames"

        # then
        [[cues]]
        look = "still"
        """;

    private static String edited(String text, Consumer<TomlEditor> change) {
        TomlEditor editor = TomlEditor.of(text);
        change.accept(editor);
        return editor.text();
    }

    private static void becomes(String expected, String text, Consumer<TomlEditor> change) {
        assertEquals(expected, edited(text, change));
        if (text.indexOf('\n') < 0) {
            return;
        }
        String crlf = edited(text.replace("\n", "\r\n"), change);
        assertEquals(expected.replace("\n", "\r\n"), crlf, "with CR LF");
    }

    private static void set(String expected, String text, Object value, String... path) {
        becomes(expected, text, editor -> editor.set(List.of(path), value));
    }

    private static void remove(String expected, String text, String... path) {
        becomes(expected, text, editor -> editor.remove(List.of(path)));
    }

    private static Map<String, Object> table(Object... keysAndValues) {
        Map<String, Object> table = new LinkedHashMap<>();
        for (int i = 0; i < keysAndValues.length; i += 2) {
            table.put((String) keysAndValues[i], keysAndValues[i + 1]);
        }
        return table;
    }

    @Test
    void aValueIsReplacedAlone() {
        set(FILE.replace("= 50   # calm", "= 100  # calm"), FILE, 100, "frames_per_s");
        set(FILE.replace("37       # counted", "144      # counted"), FILE, 144, "strip", "pixels");
        set(FILE.replace("'GRB'", "'RGBW'"), FILE, "RGBW", "strip", "order");
        set(FILE.replace("= 800", "= 900"), FILE, 900, "dimmers", "work", "full_mA");
    }

    @Test
    void theSameValueChangesNothing() {
        set(FILE, FILE, new BigDecimal("37.0"), "strip", "pixels");
        set(FILE, FILE, "GRB", "strip", "order");
        set(FILE, FILE, table("full_mA", 800, "channel", 0), "dimmers", "work");
    }

    @Test
    void aNewKeyGoesBelowTheOthersOfItsTable() {
        set(FILE.replace("  order = 'GRB'\n", "  order = 'GRB'\n  idle_mA = 1\n"), FILE, 1, "strip", "idle_mA");
        set(FILE.replace("calm\n", "calm\nname = \"a \\\"b\\\" = 'c'\"\n"), FILE, "a \"b\" = 'c'", "name");
        set(
                FILE.replace("the white one\n", "the white one\nshelf = { channel = 3, full_mA = 90 }\n"),
                FILE,
                table("channel", 3, "full_mA", 90),
                "dimmers",
                "shelf");
        set(FILE.replace("= 800 }", "= 800, volts = 24 }"), FILE, 24, "dimmers", "work", "volts");
    }

    @Test
    void aNewKeyGoesBehindDottedKeysOfTheSameBeginning() {
        set(
                FILE.replace("/bed\" }\n", "/bed\" }\nbed.setpoint_C = { topic = \"t\" }\n"),
                FILE,
                table("topic", "t"),
                "printer",
                "readings",
                "bed",
                "setpoint_C");
        set(
                FILE.replace("/bed\" }\n", "/bed\" }\nnozzle.actual_C = { topic = \"t\" }\n"),
                FILE,
                table("topic", "t"),
                "printer",
                "readings",
                "nozzle",
                "actual_C");
        set("x = { a.b = 1, a.c = 2, d = 3 }", "x = { a.b = 1, d = 3 }", 2, "x", "a", "c");
    }

    @Test
    void aNewTableGetsAHeaderWhereItsNeighboursHaveOne() {
        set(FILE + "\n[desk]\nbrightness = 0.5\n", FILE, new BigDecimal("0.5"), "desk", "brightness");
        set(
                FILE.replace("\n[[cues]]\nlook = \"flames\"", """

                    [printer.state]
                    topic = "t"
                    printing = ["RUN"]

                    [[cues]]
                    look = "flames\"\
                    """),
                FILE,
                table("topic", "t", "printing", List.of("RUN")),
                "printer",
                "state");
        set(
                FILE.replace("[printer.readings]", "[printer]\nsilent_after_s = 5\n\n[printer.readings]"),
                FILE,
                5,
                "printer",
                "silent_after_s");
        set(
                "[looks.a]\nlayers = [\n  { paint = \"ramp\" },\n  { paint = \"ember\" },\n]\n",
                "",
                table("layers", List.of(table("paint", "ramp"), table("paint", "ember"))),
                "looks",
                "a");
        set("[[cues]]\na = 1\n\n[[cues]]\na = 2\n", "", List.of(table("a", 1), table("a", 2)), "cues");
    }

    @Test
    void aKeyOfTheOutermostTableGoesBeforeAllHeaders() {
        set("# file\n\na = 1\n\n# about b\n[b]\n", "# file\n\n# about b\n[b]\n", 1, "a");
    }

    @Test
    void whatIsTakenOutTakesItsLineAlong() {
        remove(FILE.replace("  pixels = 37       # counted twice\n", ""), FILE, "strip", "pixels");
        remove(FILE.replace(", full_mA = 800", ""), FILE, "dimmers", "work", "full_mA");
        remove(FILE.replace("channel = 0, ", ""), FILE, "dimmers", "work", "channel");
        remove("x = {}", "x = { a = 1 }", "x", "a");
    }

    @Test
    void aTableGoesWithItsCommentsAndNoneOfOthers() {
        remove(
                FILE.replace("[dimmers]\nwork = { channel = 0, full_mA = 800 }   # the white one\n", ""),
                FILE,
                "dimmers");
        remove(FILE.replace("""
            [printer.readings]
            bed.actual_C = { topic = "shop/alder/heat", at = "/bed" }
            # the nozzle's is missing

            """, ""), FILE, "printer");
        remove(FILE.replace("[[cues]]\nlook = \"flames\"\n\n", ""), FILE, "cues", "0");
        remove("[b]\n# about c\n[c]\nx = 1\n", "[a]\ny = 1\n[b]\n# about c\n[c]\nx = 1\n[a.d]\n", "a");
    }

    @Test
    void elementsComeAndGoWithTheirComments() {
        String some = "a = [\n  1, # one\n  2, # two\n  # three is missing\n  4 # four\n]\n";
        set(some.replace("4 # four", "4, # four\n  5"), some, List.of(1, 2, 4, 5), "a");
        set(some.replace("  2, # two\n", ""), some, List.of(1, 4), "a");
        set(
                some.replace("  # three", "  3,\n  # three")
                        .replace("  3,\n  # three is missing\n", "  # three is missing\n  3,\n"),
                some,
                List.of(1, 2, 3, 4),
                "a");
        set("a = [ 1, 3, 2 ]", "a = [ 1, 2 ]", List.of(1, 3, 2), "a");
        set("a = [ 2 ]", "a = [ 1, 2 ]", List.of(2), "a");
        set("a = [ 1 ]", "a = [ 1, 2 ]", List.of(1), "a");
        set("a = []", "a = [1]", List.of(), "a");
        set("a = [7]", "a = [ ]", List.of(7), "a");
        set("a = [\n  # none\n  7,\n]", "a = [\n  # none\n]", List.of(7), "a");
        becomes(
                FILE.replace("# then\n", "[[cues]]\nlook = \"new\"\n\n# then\n"),
                FILE,
                editor -> editor.insert(List.of("cues"), 1, table("look", "new")));
        becomes(
                FILE + "\n[[cues]]\nlook = \"new\"\n",
                FILE,
                editor -> editor.insert(List.of("cues"), 2, table("look", "new")));
    }

    @Test
    void aValueMayBecomeATableAndBack() {
        set("a = { b = 1 }\nc = 2", "a = 3\nc = 2", table("b", 1), "a");
        set("c = 2\na = 3\n", "c = 2\n\n[a]\nb = 1\n", 3, "a");
        set("a = []\n", "[[a]]\nb = 1\n\n[[a]]\n", List.of(), "a");
    }

    @Test
    void commentsCanBePutAboveAndTakenAway() {
        String noted = FILE.replace("bed.actual_C", "# bed: it rises\n# and falls\nbed.actual_C");
        List<String> path = List.of("printer", "readings", "bed", "actual_C");
        becomes(noted, FILE, editor -> editor.comment(path, List.of("bed: it rises", "and falls")));
        becomes(noted.replace("# bed: it rises\n", ""), noted, editor -> editor.uncomment(path, "bed: "));
        becomes(
                FILE.replace("[dimmers]", "# lights\n[dimmers]"),
                FILE,
                editor -> editor.comment(List.of("dimmers"), List.of("lights")));
        becomes(FILE, FILE, editor -> editor.comment(List.of("dimmers", "work", "channel"), List.of("no")));
    }

    @Test
    void everyKindOfValueIsWrittenAsItIsRead() {
        List<Object> all = List.of(
                1,
                -7L,
                new BigDecimal("0.25"),
                new BigDecimal("1E+30"),
                Double.POSITIVE_INFINITY,
                true,
                "text \t\u0001\n\u007F \u20AC",
                "C:\\no",
                "it's \\",
                LocalDate.of(2026, 11, 27),
                LocalTime.of(7, 30),
                LocalDate.of(2026, 11, 27).atTime(7, 0),
                OffsetDateTime.parse("2026-11-27T07:30:00+02:00"),
                List.of(),
                Map.of(),
                Map.of("a b", List.of(Map.of("", 1))));
        String text = edited("", editor -> editor.set(List.of("all"), all));
        assertEquals(all.toString(), Toml.read(text).values().get("all").toString());
        assertEquals(List.of(), Toml.read(text).mistakes());
    }

    @Test
    void whatThereIsNoPlaceForIsRefusedAndChangesNothing() {
        TomlEditor editor = TomlEditor.of(FILE);
        for (List<String> path : List.of(
                List.<String>of(), List.of("frames_per_s", "x"), List.of("cues", "3"), List.of("cues", "first"))) {
            assertThrows(IllegalArgumentException.class, () -> editor.set(path, table()), path.toString());
        }
        assertThrows(IllegalArgumentException.class, () -> editor.set(List.of("cues", "0"), 1));
        assertThrows(IllegalArgumentException.class, () -> editor.insert(List.of("cues"), 3, table()));
        assertThrows(IllegalArgumentException.class, () -> editor.insert(List.of("strip"), 0, table()));
        editor.remove(List.of("strip", "none", "such"));
        assertEquals(FILE, editor.text());
        assertThrows(IllegalArgumentException.class, () -> TomlEditor.of("a = \n"));
    }

    @Test
    void aNameIsReplacedWhereverItIsAndNothingElse() {
        for (String text : List.of(
                "looks = { x = { layers = [] }, y = 1 } # all\n",
                "# above\nlooks.x = { layers = [ { x = 1 }, # ground\n ] } # behind\nx = 2\n",
                "looks . x . layers = [] # in between\nlooks.x.dimmers.work = 1\n",
                "looks . x . layers = [] # in between\nlooks.x.dimmers.work = 1\n[cues]\nx = 2\n",
                "[looks]\n  x.layers = [ # one\n {} ]\n  y.x = 1\n  x.dimmers = {x = 1}\n",
                "[looks]\nx = {layers=[]}\n# x\n[x.x]\nx = 1\n",
                "[ looks . x ] # head\nx = 1\n\n[[looks.x.layers]]\nx = 1\n[y]\n[looks.x.dimmers] # x\n",
                "[looks.x.dimmers]\nwork = 1\n[[looks.x.layers]]\n")) {
            String wanted = text.replaceFirst("looks = \\{ x ", "looks = { new-one ")
                    .replaceAll("(looks ?\\. ?)x\\b", "$1new-one")
                    .replaceAll("(?m)(^\\[looks]\\n +)x\\.", "$1new-one.")
                    .replaceAll("(?m)^  x\\.", "  new-one.")
                    .replaceFirst("\\[looks]\\nx", "[looks]\nnew-one");
            becomes(wanted, text, editor -> editor.rename(List.of("looks", "x"), "new-one"));
        }
        becomes(
                "looks.\"a b\".\"c.d\" = 1\n",
                "looks.'x.y'.\"c.d\" = 1\n",
                editor -> editor.rename(List.of("looks", "x.y"), "a b"));
        TomlEditor editor = TomlEditor.of("looks = { x = 1, y = 2, z = [{}] }\n");
        for (List<String> path : List.of(List.<String>of(), List.of("looks", "w"), List.of("looks", "z", "0"))) {
            assertThrows(IllegalArgumentException.class, () -> editor.rename(path, "w"));
        }
        assertThrows(IllegalArgumentException.class, () -> editor.rename(List.of("looks", "x"), "y"));
    }

    @Test
    void aByteOrderMarkAndAMissingLineEndStay() {
        assertEquals("\uFEFFa = 2", edited("\uFEFFa = 1", editor -> editor.set(List.of("a"), 2)));
        assertEquals("a = 1\nb = 2\n", edited("a = 1", editor -> editor.set(List.of("b"), 2)));
        List<String> texts = new ArrayList<>();
        texts.add(edited("a = 1 # one", editor -> editor.set(List.of("t", "b"), 2)));
        assertEquals(List.of("a = 1 # one\n\n[t]\nb = 2\n"), texts);
    }
}
