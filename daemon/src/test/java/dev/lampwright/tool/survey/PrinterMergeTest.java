package dev.lampwright.tool.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.toml.TomlEditor;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is merged into a configuration, to the byte. */
class PrinterMergeTest {
    private static final String FOUND = """
        [printer.state]
        # state: it has words for 3 states
        topic = "shop/alder/job"
        at = "/phase"
        printing = ["RUN"]
        warming = ["PREHEAT"]
        fault = ["*ERROR*"]    # not heard: a guess
        # heard too, and bound to no state: HM

        [printer.readings]
        # bed.actual_C: it rises
        bed.actual_C = { topic = "shop/alder/heat", at = "/bed" }
        # job.progress: it goes from 0 to 100
        job.progress = { topic = "shop/alder/job", at = "/percent", unit = "percent" }

        """;

    private static final String BARE = """
        # mine
        [broker]
        url = "mqtt://127.0.0.1"

        [strip]
        pixels = 9
        """;

    private static void becomes(String expected, String text) {
        assertEquals(expected, PrinterMerge.into(text, FOUND));
        assertEquals(expected, PrinterMerge.into(expected, FOUND), "a second time changes nothing");
        String crlf = text.replace("\n", "\r\n");
        assertEquals(expected.replace("\n", "\r\n"), PrinterMerge.into(crlf, FOUND));
    }

    @Test
    void aFileWithoutAPrinterGetsAllOfItWithItsComments() {
        becomes(BARE + "\n" + FOUND.strip() + "\n", BARE);
    }

    @Test
    void oneOfSeveralPrintersGetsItAndTheOthersStayAsTheyAre() {
        String birch = """
            [printers.birch.state]
            topic = "shop/birch/job"
            printing = ["GO"]

            [printers.birch.readings]
            bed.actual_C = { topic = "shop/birch/heat" }
            """;
        String mine = BARE + "\n" + birch + """

            [printers.alder.state]
            topic = "shop/alder/job"
            at = "/phase"
            printing = ["GO"]
            """;
        String merged = PrinterMerge.into(mine, FOUND, "alder");
        assertTrue(merged.startsWith(BARE + "\n" + birch), merged);
        assertFalse(merged.contains("[printer."), merged);
        TomlEditor after = TomlEditor.of(merged);
        assertEquals(Optional.of(List.of("PREHEAT")), after.get(List.of("printers", "alder", "state", "warming")));
        assertEquals(Optional.of(List.of("GO", "RUN")), after.get(List.of("printers", "alder", "state", "printing")));
        assertEquals(
                Optional.of("shop/alder/heat"),
                after.get(List.of("printers", "alder", "readings", "bed", "actual_C", "topic")));
        assertEquals(merged, PrinterMerge.into(merged, FOUND, "alder"), "a second time changes nothing");
    }

    @Test
    void bindingsAndWordsOfTheUsersStay() {
        String mine = """
            [printer.state]
            topic = "shop/alder/job"   # the small one
            at = "/phase"
            printing = ["GO"]
            fault = ["TROUBLE"]
            held = ["preheat"]         # it is

            [printer.readings]
            bed.actual_C = { topic = "old/topic" }   # by the wall
            job.left_s = { topic = "shop/alder/job", at = "/left" }
            # the end
            """;
        becomes(
                mine.replace("[\"GO\"]", "[\"GO\", \"RUN\"]")
                        .replace("{ topic = \"old/topic\" }", "{ topic = \"shop/alder/heat\", at = \"/bed\" }")
                        .replace("bed.actual_C", "# bed.actual_C: it rises\nbed.actual_C")
                        .replace(
                                "# the end",
                                "# job.progress: it goes from 0 to 100\n"
                                        + "job.progress = { topic = \"shop/alder/job\", at = \"/percent\", unit ="
                                        + " \"percent\" }\n"
                                        + "# the end"),
                mine);
    }

    @Test
    void aStateThatIsElsewhereIsFollowedAndKeepsTheUsersWords() {
        String mine = """
            [printer.state]
            topic = "shop/alder/old"   # it moved
            field = 3
            fault = ["TROUBLE"]        # of mine

            [printer.readings]
            bed.actual_C = { topic = "shop/alder/heat", at = "/bed" }
            job.progress = { topic = "shop/alder/job", at = "/percent" , scale = 1 }
            """;
        becomes(
                mine.replace("/old\"   #", "/job\"   #")
                        .replace("field = 3\n", "")
                        .replace(
                                "# of mine\n",
                                "# of mine\nat = \"/phase\"\nprinting = [\"RUN\"]\nwarming = [\"PREHEAT\"]\n"),
                mine);
    }

    @Test
    void whatTheUserSaidOfANumberStays() {
        String mine = """
            [printer.state]
            topic = "shop/alder/job"
            at = "/phase"
            printing = ["RUN"]
            warming = ["PREHEAT"]
            fault = ["X"]
            [printer.readings]
            bed.actual_C = { topic = "shop/alder/heat", at = "/bed", offset = -2 }
            job.progress = { topic = "shop/alder/job", at = "/percent", scale = 0.01 }
            """;
        becomes(mine, mine);
    }

    @Test
    void aStateChosenByHandKeepsItsRank() {
        String mine = """
            [[printer.state]]
            topic = "shop/alder/flags"
            at = "/alarm"
            fault = ["true"]

            [printer.readings]
            bed.actual_C = { topic = "shop/alder/heat", at = "/bed" }
            job.progress = [ { topic = "a" }, { topic = "b" } ]
            """;
        becomes("""
            [[printer.state]]
            topic = "shop/alder/job"
            at = "/phase"
            printing = ["RUN"]
            warming = ["PREHEAT"]
            fault = ["*ERROR*"]

            """ + mine, mine);
    }

    @Test
    void theStandInOfTheFittingGoes() {
        String fitted = BARE + """

            # TO DO: nothing was found about the printer yet; this fills the gap. Let lampwright survey listen while it heats up and
            # prints, and put in what it finds. The example file has all there is.
            [printer.state]
            topic = "shop/alder/job"
            printing = ["RUN"]

            [desk]
            brightness = 1
            """;
        becomes(BARE + "\n[desk]\nbrightness = 1\n\n" + FOUND.strip() + "\n", fitted);
    }

    private static final String CONDITIONS = """
        [[printer.condition]]
        # fault: it was on while the job stood still
        state = "fault"
        topic = "shop/alder/flags"
        at = "/jam"
        is = ["true"]

        [[printer.condition]]
        # printing: it was on while the job went on
        state = "printing"
        topic = "shop/alder/flags"
        at = "/run"
        is = ["true"]

        """;

    @Test
    void conditionsAreAddedWithTheirCommentsAndOnlyOnce() {
        String merged = PrinterMerge.into(BARE, CONDITIONS);
        assertEquals(BARE + "\n" + CONDITIONS.strip() + "\n", merged);
        assertEquals(merged, PrinterMerge.into(merged, CONDITIONS));
    }

    @Test
    void aConditionOfTheUsersStaysAndComesFirst() {
        String mine = """
            [[printer.condition]]   # mine
            state = "held"
            topic = "shop/alder/flags"
            at = "/door"
            is = ["open"]

            [[printer.condition]]
            state = "fault"
            topic = "shop/alder/flags"
            at = "/jam"
            is = ["true"]
            """;
        String printing = CONDITIONS.substring(CONDITIONS.lastIndexOf("[[")).strip() + "\n";
        assertEquals(mine + "\n" + printing, PrinterMerge.into(mine, CONDITIONS));
    }
}
