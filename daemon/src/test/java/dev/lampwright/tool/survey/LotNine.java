package dev.lampwright.tool.survey;

import static dev.lampwright.payload.Quantity.BED_ACTUAL;
import static dev.lampwright.payload.Quantity.BED_SETPOINT;
import static dev.lampwright.payload.Quantity.CHAMBER_ACTUAL;
import static dev.lampwright.payload.Quantity.CHAMBER_SETPOINT;
import static dev.lampwright.payload.Quantity.JOB_DONE;
import static dev.lampwright.payload.Quantity.JOB_ELAPSED;
import static dev.lampwright.payload.Quantity.JOB_LEFT;
import static dev.lampwright.payload.Quantity.JOB_PROGRESS;
import static dev.lampwright.payload.Quantity.JOB_TOTAL;
import static dev.lampwright.payload.Quantity.NOZZLE_ACTUAL;
import static dev.lampwright.payload.Quantity.NOZZLE_SETPOINT;
import static dev.lampwright.tool.survey.LotFive.heatAnd;
import static dev.lampwright.tool.survey.Printers.ALL;
import static dev.lampwright.tool.survey.Printers.message;
import static dev.lampwright.tool.survey.Printers.word;

import dev.lampwright.printer.PrinterState;
import dev.lampwright.tool.survey.Printer.Message;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * A fifth lot: Albanian, Esperanto, Afrikaans, Hindi, Filipino, Armenian; a cancelled job, two words for one state, a table of lines, an
 * entry per message, hundredths of a kelvin.
 */
final class LotNine {
    private static final Set<PrinterState> GIVEN_UP = EnumSet.of(
            PrinterState.IDLE,
            PrinterState.WARMING,
            PrinterState.PRINTING,
            PrinterState.HELD,
            PrinterState.STOPPED,
            PrinterState.FAULT);

    private LotNine() {}

    /** All of them. */
    static List<Printer> all() {
        return List.of(
                lathe(),
                spindle(),
                ferrule(),
                hasp(),
                grommet(),
                shim(),
                trunnion(),
                mandrel(),
                gusset(),
                bobbin(),
                treadle(),
                jointer(),
                whetstone());
    }

    private static boolean is(Job.Moment m, PrinterState... states) {
        return Set.of(states).contains(m.state());
    }

    private static String givenUp(Job.Moment m, String... words) {
        return words[List.copyOf(GIVEN_UP).indexOf(m.state())];
    }

    /** English; a cancelled job; words with a prefix. */
    private static Printer lathe() {
        return new Printer(
                "lathe",
                "a job given up, words with a prefix",
                heatAnd(JOB_PROGRESS, JOB_LEFT, JOB_DONE, JOB_TOTAL),
                GIVEN_UP,
                Job.GIVEN_UP,
                m -> List.of(
                        message(
                                "room2/lathe/temps",
                                "{\"plate\":%.1f,\"plateGoal\":%.0f,\"hotend\":%.1f,\"hotendGoal\":%.0f,\"board\":%.1f}",
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT),
                                38 + 0.1 * (m.second() % 9)),
                        message(
                                "room2/lathe/job",
                                "{\"state\":\"%s\",\"pct\":%.1f,\"secsLeft\":%.0f,\"layer\":%.0f,\"layerCount\":%.0f}",
                                givenUp(
                                        m,
                                        "JOB_NONE",
                                        "JOB_HEATUP",
                                        "JOB_RUNNING",
                                        "JOB_PAUSED",
                                        "JOB_CANCELLED",
                                        "JOB_FAILURE"),
                                100 * m.value(JOB_PROGRESS),
                                m.value(JOB_LEFT),
                                m.value(JOB_DONE),
                                m.value(JOB_TOTAL))));
    }

    /** Albanian; nested. */
    private static Printer spindle() {
        return new Printer(
                "spindle",
                "Albanian, nested",
                heatAnd(CHAMBER_ACTUAL, JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> List.of(message(
                        "punishte/bosht",
                        "{\"shtrati\":{\"tani\":%.1f,\"synimi\":%.0f},\"hunda\":{\"tani\":%.1f,\"synimi\":%.0f},\"dhoma\":{\"tani\":%.1f},"
                                + "\"puna\":{\"perqindja\":%.1f,\"mbetur_min\":%.2f,\"gjendja\":\"%s\"}}",
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        m.value(CHAMBER_ACTUAL),
                        100 * m.value(JOB_PROGRESS),
                        m.value(JOB_LEFT) / 60,
                        word(m, "gati", "ngrohje", "printim", "pushim", "mbaruar", "gabim: hunda"))));
    }

    /** Esperanto; lists of two; layers. */
    private static Printer ferrule() {
        return new Printer(
                "ferrule",
                "Esperanto, lists of two",
                heatAnd(JOB_PROGRESS, JOB_DONE, JOB_TOTAL, JOB_ELAPSED),
                ALL,
                Job.HOT,
                m -> List.of(
                        message(
                                "metiejo/ferulo/varmo",
                                "{\"lito\":[%.1f,%.0f],\"ajuto\":[%.1f,%.0f]}",
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT)),
                        message(
                                "metiejo/ferulo/laboro",
                                "{\"parto\":%.4f,\"tavoloj\":[%.0f,%.0f],\"sekundoj\":%.0f,\"stato\":\"%s\"}",
                                m.value(JOB_PROGRESS),
                                m.value(JOB_DONE),
                                m.value(JOB_TOTAL),
                                m.value(JOB_ELAPSED),
                                word(m, "preta", "varmiĝas", "presas", "paŭzo", "finita", "eraro"))));
    }

    /** Afrikaans; texts with units. */
    private static Printer hasp() {
        return new Printer(
                "hasp",
                "Afrikaans, texts with units",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                Job.BED_FIRST,
                m -> List.of(
                        message("werkswinkel/grendel/bed/nou", "%.1f °C", m.value(BED_ACTUAL)),
                        message("werkswinkel/grendel/bed/teiken", "%.0f °C", m.value(BED_SETPOINT)),
                        message("werkswinkel/grendel/spuitstuk/nou", "%.1f °C", m.value(NOZZLE_ACTUAL)),
                        message("werkswinkel/grendel/spuitstuk/teiken", "%.0f °C", m.value(NOZZLE_SETPOINT)),
                        message("werkswinkel/grendel/vordering", "%.1f %%", 100 * m.value(JOB_PROGRESS)),
                        message("werkswinkel/grendel/oor", "%.0f s", m.value(JOB_LEFT)),
                        message(
                                "werkswinkel/grendel/toestand",
                                word(m, "gereed", "verhit", "druk", "onderbreek", "klaar", "fout: spuitstuk"))));
    }

    /** One word for its activity, another for its progress. */
    private static Printer grommet() {
        return new Printer(
                "grommet",
                "a main word and a second one",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> List.of(message(
                        "hut/grommet",
                        "{\"main\":\"%s\",\"sub\":\"%s\",\"bed_c\":%.1f,\"bed_target_c\":%.0f,\"nozzle_c\":%.1f,\"nozzle_target_c\":%.0f,"
                                + "\"done_pct\":%.1f,\"left_s\":%.0f}",
                        word(m, "STANDBY", "JOB", "JOB", "JOB", "STANDBY", "JOB"),
                        word(m, "NONE", "PREHEATING", "EXTRUDING", "PAUSED", "JOB_ENDED", "ERROR"),
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        100 * m.value(JOB_PROGRESS),
                        m.value(JOB_LEFT))));
    }

    /** A table: one line per part, its name first. */
    private static Printer shim() {
        return new Printer(
                "shim",
                "a table of lines, names first",
                heatAnd(JOB_PROGRESS, JOB_ELAPSED),
                ALL,
                m -> List.of(message(
                        "depot/shim/table",
                        "bed;%.1f;%.0f\nnozzle;%.1f;%.0f\nprogress;%.1f\nelapsed;%.0f\nstate;%s",
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        100 * m.value(JOB_PROGRESS),
                        m.value(JOB_ELAPSED),
                        word(m, "ready", "heating", "printing", "paused", "finished", "fault"))));
    }

    /** Hindi, in its own letters. */
    private static Printer trunnion() {
        return new Printer(
                "trunnion",
                "Hindi, a topic a part",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> List.of(
                        message(
                                "कार्यशाला/धुरी/तख्ता",
                                "{\"अभी\":%.1f,\"लक्ष्य\":%.0f}",
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT)),
                        message(
                                "कार्यशाला/धुरी/नोज़ल",
                                "{\"अभी\":%.1f,\"लक्ष्य\":%.0f}",
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT)),
                        message(
                                "कार्यशाला/धुरी/काम",
                                "{\"प्रतिशत\":%.1f,\"शेष\":%.0f,\"स्थिति\":\"%s\"}",
                                100 * m.value(JOB_PROGRESS),
                                m.value(JOB_LEFT),
                                word(m, "तैयार", "गरम हो रहा है", "छपाई", "विराम", "पूर्ण", "त्रुटि"))));
    }

    /** Hundredths of a kelvin; a code of letter and digits; an alarm number that counts only while it is not zero. */
    private static Printer mandrel() {
        return new Printer(
                "mandrel",
                "hundredths of a kelvin, codes, an alarm",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                Job.HOT,
                m -> List.of(
                        message("rack/4/bed/pv", "%.0f", 100 * (m.value(BED_ACTUAL) + 273.15)),
                        message("rack/4/bed/sp", "%.0f", 100 * (m.value(BED_SETPOINT) + 273.15)),
                        message("rack/4/nozzle/pv", "%.0f", 100 * (m.value(NOZZLE_ACTUAL) + 273.15)),
                        message("rack/4/nozzle/sp", "%.0f", 100 * (m.value(NOZZLE_SETPOINT) + 273.15)),
                        message("rack/4/job/permille", "%.0f", 1000 * m.value(JOB_PROGRESS)),
                        message("rack/4/job/left_ms", "%.0f", 1000 * m.value(JOB_LEFT)),
                        message("rack/4/job/mode", word(m, "M00", "M10", "M20", "M30", "M40", "M20")),
                        message("rack/4/alarm", is(m, PrinterState.FAULT) ? "17" : "0")));
    }

    /** Filipino; a text of key=value with spaces around. */
    private static Printer gusset() {
        return new Printer(
                "gusset",
                "Filipino, key = value, chamber",
                heatAnd(CHAMBER_ACTUAL, CHAMBER_SETPOINT, JOB_PROGRESS),
                ALL,
                m -> List.of(message(
                        "talyer/kasangkapan",
                        "kama = %.1f / %.0f | nosel = %.1f / %.0f | silid = %.1f / %.0f | porsiyento = %.1f | lagay = %s",
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        m.value(CHAMBER_ACTUAL),
                        m.value(CHAMBER_SETPOINT),
                        100 * m.value(JOB_PROGRESS),
                        word(m, "handa", "nagpapainit", "nagpi-print", "nakahinto", "tapos", "mali"))));
    }

    /** One entry per message, all on one topic. */
    private static Printer bobbin() {
        return new Printer(
                "bobbin",
                "an entry a message on one topic",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> List.of(
                        entry("bed.actual", "%.1f", m.value(BED_ACTUAL)),
                        entry("bed.target", "%.0f", m.value(BED_SETPOINT)),
                        entry("nozzle.actual", "%.1f", m.value(NOZZLE_ACTUAL)),
                        entry("nozzle.target", "%.0f", m.value(NOZZLE_SETPOINT)),
                        entry("job.percent", "%.1f", 100 * m.value(JOB_PROGRESS)),
                        entry("job.seconds_left", "%.0f", m.value(JOB_LEFT)),
                        message(
                                "rig/bobbin/tags",
                                "{\"tag\":\"job.state\",\"val\":\"%s\"}",
                                word(m, "idle", "heating", "running", "paused", "complete", "alarm"))));
    }

    private static Message entry(String tag, String format, double value) {
        return message(
                "rig/bobbin/tags", "{\"tag\":\"%s\",\"val\":%s}", tag, String.format(Locale.ROOT, format, value));
    }

    /** German words in English names; sentences for the time left; decimal commas. */
    private static Printer treadle() {
        return new Printer("treadle", "German sentences, decimal commas", heatAnd(JOB_PROGRESS, JOB_LEFT), ALL, m -> {
            long left = Math.round(m.value(JOB_LEFT));
            return List.of(
                    message(
                            "keller/treadle/info",
                            "Heizbett %s Grad (Soll %s), Düse %s Grad (Soll %s)",
                            comma(m.value(BED_ACTUAL)),
                            comma(m.value(BED_SETPOINT)),
                            comma(m.value(NOZZLE_ACTUAL)),
                            comma(m.value(NOZZLE_SETPOINT))),
                    message("keller/treadle/progress", "%s %%", comma(100 * m.value(JOB_PROGRESS))),
                    message("keller/treadle/rest", "noch %d min %02d s", left / 60, left % 60),
                    message(
                            "keller/treadle/status",
                            word(
                                    m,
                                    "Bereit für Aufträge",
                                    "Wird aufgeheizt",
                                    "Druckt",
                                    "Pausiert vom Bediener",
                                    "Auftrag fertig",
                                    "Fehler: Düse verstopft")));
        });
    }

    private static String comma(double value) {
        return String.format(Locale.ROOT, "%.1f", value).replace('.', ',');
    }

    /** Unique words for the state; a fault is a number next to a word for a break. */
    private static Printer jointer() {
        return new Printer(
                "jointer",
                "words of its own, a number for trouble",
                heatAnd(CHAMBER_ACTUAL, JOB_PROGRESS, JOB_DONE, JOB_TOTAL),
                ALL,
                Job.BED_FIRST,
                m -> {
                    List<Message> all = new ArrayList<>();
                    all.add(message(
                            "shed/jointer/sensors",
                            "{\"temperature\":{\"bed\":%.1f,\"nozzle\":%.1f,\"enclosure\":%.1f,\"board\":41.%d}}",
                            m.value(BED_ACTUAL),
                            m.value(NOZZLE_ACTUAL),
                            m.value(CHAMBER_ACTUAL),
                            m.second() % 6));
                    all.add(message(
                            "shed/jointer/goals",
                            "{\"temperature\":{\"bed\":%.0f,\"nozzle\":%.0f}}",
                            m.value(BED_SETPOINT),
                            m.value(NOZZLE_SETPOINT)));
                    all.add(message(
                            "shed/jointer/print",
                            "{\"phase\":\"%s\",\"trouble_code\":%d,\"of_100\":%.1f,\"layers\":{\"now\":%.0f,\"all\":%.0f}}",
                            word(m, "off duty", "getting hot", "laying down", "on break", "all done", "on break"),
                            is(m, PrinterState.FAULT) ? 7 : 0,
                            100 * m.value(JOB_PROGRESS),
                            m.value(JOB_DONE),
                            m.value(JOB_TOTAL)));
                    return all;
                });
    }

    /** Armenian, at rest. */
    private static Printer whetstone() {
        return new Printer(
                "whetstone",
                "Armenian, at rest",
                heatAnd(JOB_PROGRESS),
                EnumSet.of(PrinterState.IDLE),
                Job.REST,
                m -> List.of(
                        message("արհեստանոց/հեսան/սեղան", "[%.1f,%.0f]", m.value(BED_ACTUAL), m.value(BED_SETPOINT)),
                        message(
                                "արհեստանոց/հեսան/ծայր",
                                "[%.1f,%.0f]",
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT)),
                        message("արհեստանոց/հեսան/առաջընթաց", "%.1f", 100 * m.value(JOB_PROGRESS)),
                        message("արհեստանոց/հեսան/վիճակ", "պատրաստ")));
    }
}
