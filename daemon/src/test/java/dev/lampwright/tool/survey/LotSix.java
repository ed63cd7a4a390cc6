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
import static dev.lampwright.tool.survey.Printers.clock;
import static dev.lampwright.tool.survey.Printers.message;
import static dev.lampwright.tool.survey.Printers.word;

import dev.lampwright.printer.PrinterState;
import dev.lampwright.tool.survey.Printer.Message;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;

/** A second lot of this kind: Welsh, Swahili, Basque, Swedish; bits, meaningless names, two working at once, one heater per message. */
final class LotSix {
    private static final Set<PrinterState> WITHOUT_PAUSE_AND_FAULT =
            EnumSet.of(PrinterState.IDLE, PrinterState.WARMING, PrinterState.PRINTING, PrinterState.DONE);

    private LotSix() {}

    /** All of them. */
    static List<Printer> all() {
        return List.of(
                derw(), mwembe(), haritza(), bjork(), quartz(), basalt(), gneiss(), slate(), chalk(), flint(), marl());
    }

    private static boolean is(Job.Moment m, PrinterState... states) {
        return Set.of(states).contains(m.state());
    }

    /** Welsh, which is not in any list of words; a fault has its own code, with an English name. */
    private static Printer derw() {
        return new Printer(
                "derw",
                "Welsh, a fault code beside",
                heatAnd(JOB_PROGRESS, JOB_ELAPSED),
                ALL,
                Job.HOT,
                m -> List.of(
                        message(
                                "gweithdy/derw/gwres",
                                "{\"gwely\":{\"nawr\":%.1f,\"nod\":%.0f},\"ffroenell\":{\"nawr\":%.1f,\"nod\":%.0f}}",
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT)),
                        message(
                                "gweithdy/derw/gwaith",
                                "{\"cyflwr\":\"%s\",\"canran\":%.1f,\"eiliadau\":%.0f,\"error_code\":%d}",
                                word(m, "segur", "cynhesu", "argraffu", "wedi oedi", "gorffen", "argraffu"),
                                100 * m.value(JOB_PROGRESS),
                                m.value(JOB_ELAPSED),
                                is(m, PrinterState.FAULT) ? 412 : 0)));
    }

    /** Swahili, which is not in any list of words; no word for a pause or a fault. */
    private static Printer mwembe() {
        return new Printer(
                "mwembe",
                "Swahili, a topic a value",
                heatAnd(CHAMBER_ACTUAL, CHAMBER_SETPOINT, JOB_PROGRESS, JOB_LEFT),
                WITHOUT_PAUSE_AND_FAULT,
                m -> List.of(
                        message("karakana/mwembe/kitanda/sasa", "%.2f", m.value(BED_ACTUAL)),
                        message("karakana/mwembe/kitanda/lengo", "%.0f", m.value(BED_SETPOINT)),
                        message("karakana/mwembe/pua/sasa", "%.2f", m.value(NOZZLE_ACTUAL)),
                        message("karakana/mwembe/pua/lengo", "%.0f", m.value(NOZZLE_SETPOINT)),
                        message("karakana/mwembe/chumba/sasa", "%.2f", m.value(CHAMBER_ACTUAL)),
                        message("karakana/mwembe/chumba/lengo", "%.0f", m.value(CHAMBER_SETPOINT)),
                        message("karakana/mwembe/kazi/asilimia", "%.0f", 100 * m.value(JOB_PROGRESS)),
                        message("karakana/mwembe/kazi/bado", "%s", clock(m.value(JOB_LEFT))),
                        message(
                                "karakana/mwembe/hali",
                                word(
                                        m,
                                        "imepumzika",
                                        "inapasha moto",
                                        "inachapisha",
                                        "inachapisha",
                                        "imemaliza",
                                        "inachapisha"))));
    }

    /** Basque, which is not in any list of words; codes for the state. */
    private static Printer haritza() {
        return new Printer(
                "haritza",
                "Basque, codes from 100 on",
                heatAnd(JOB_DONE, JOB_TOTAL),
                ALL,
                m -> List.of(message(
                        "tailerra/haritza",
                        "{\"ohea\":%.1f,\"ohea_helburu\":%.0f,\"muturra\":%.1f,\"muturra_helburu\":%.0f,\"geruza\":%.0f,\"geruzak\":%.0f,"
                                + "\"egoera\":%s,\"haizagailua\":%d}",
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        m.value(JOB_DONE),
                        m.value(JOB_TOTAL),
                        word(m, "100", "110", "120", "130", "140", "900"),
                        m.value(NOZZLE_ACTUAL) > 60 ? 80 : 0)));
    }

    /** Swedish; a semicolon line; the time left as text. */
    private static Printer bjork() {
        return new Printer("bjork", "Swedish, a line with names in it", heatAnd(JOB_PROGRESS, JOB_LEFT), ALL, m -> {
            long left = Math.round(m.value(JOB_LEFT));
            return List.of(message(
                    "verkstad/bjork/rad",
                    "läge=%s; bädd=%.1f; bädd_mål=%.0f; munstycke=%.1f; munstycke_mål=%.0f; klart=%.1f; kvar=%dm%02ds",
                    word(m, "vilar", "värmer", "skriver", "pausad", "klar", "fel"),
                    m.value(BED_ACTUAL),
                    m.value(BED_SETPOINT),
                    m.value(NOZZLE_ACTUAL),
                    m.value(NOZZLE_SETPOINT),
                    100 * m.value(JOB_PROGRESS),
                    left / 60,
                    left % 60));
        });
    }

    /** One heater per message, all on one topic; tenths of a kelvin. */
    private static Printer quartz() {
        return new Printer(
                "quartz",
                "one heater a message, tenths of a kelvin",
                heatAnd(JOB_PROGRESS),
                ALL,
                m -> List.of(
                        heater("bed", m.value(BED_ACTUAL), m.value(BED_SETPOINT)),
                        heater("nozzle", m.value(NOZZLE_ACTUAL), m.value(NOZZLE_SETPOINT)),
                        message(
                                "cell/4/job",
                                "{\"mode\":\"%s\",\"permille\":%.0f}",
                                word(m, "Standby", "Heat-up", "Production", "Feed hold", "Job complete", "Emergency"),
                                1000 * m.value(JOB_PROGRESS))));
    }

    private static Message heater(String name, double actual, double target) {
        return message(
                "cell/4/heater",
                "{\"heater\":\"%s\",\"actual\":%.0f,\"target\":%.0f}",
                name,
                10 * (actual + 273.15),
                target == 0 ? 0 : 10 * (target + 273.15));
    }

    /** A number whose bits are flags, and nothing else that shows what it does. */
    private static Printer basalt() {
        return new Printer(
                "basalt",
                "bits in a number",
                heatAnd(JOB_PROGRESS),
                ALL,
                Job.HOT,
                m -> List.of(message(
                        "unit7",
                        "{\"t1\":%.1f,\"s1\":%.0f,\"t2\":%.1f,\"s2\":%.0f,\"p\":%.2f,\"w\":%s}",
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(JOB_PROGRESS),
                        word(m, "1", "3", "5", "13", "33", "69"))));
    }

    /** A list in changing order, whose elements have a number for a name. */
    private static Printer gneiss() {
        return new Printer(
                "gneiss", "numbered heaters in any order, °F", heatAnd(JOB_PROGRESS, JOB_ELAPSED), ALL, m -> {
                    List<String> heaters = new ArrayList<>(List.of(
                            zone(0, Printers.f(m.value(NOZZLE_ACTUAL)), m.value(NOZZLE_SETPOINT)),
                            zone(1, Printers.f(m.value(BED_ACTUAL)), m.value(BED_SETPOINT))));
                    Collections.shuffle(heaters, new Random(m.second()));
                    return List.of(message(
                            "plant/gneiss/state",
                            "{\"unit\":\"F\",\"heaters\":%s,\"run\":{\"pct\":%.1f,\"sec\":%.0f,\"st\":\"%s\"}}",
                            heaters,
                            100 * m.value(JOB_PROGRESS),
                            m.value(JOB_ELAPSED),
                            word(m, "I", "H", "P", "S", "D", "E")));
                });
    }

    private static String zone(int id, double actual, double target) {
        return String.format(
                Locale.ROOT, "{\"id\":%d,\"cur\":%.1f,\"tgt\":%.1f}", id, actual, target == 0 ? 0 : Printers.f(target));
    }

    /** Two printers working at once, on separate topics; the other one is ahead. */
    private static Printer slate() {
        List<Job.Moment> others = Job.moments(Job.HOT);
        return new Printer("slate", "two at work at once", heatAnd(JOB_PROGRESS, JOB_LEFT), ALL, m -> {
            List<Message> all = new ArrayList<>(speak("fab/slate", m));
            Job.Moment other = others.get(Math.min(others.size() - 1, m.second() + 200));
            all.add(message("fab/shale/bed/temp", "%.1f", other.value(BED_ACTUAL)));
            all.add(message("fab/shale/bed/set", "%.0f", other.value(BED_SETPOINT)));
            all.add(message("fab/shale/mode", word(other, "ready", "heating", "printing", "paused", "done", "fault")));
            return all;
        });
    }

    private static List<Message> speak(String at, Job.Moment m) {
        return List.of(
                message(at + "/bed/temp", "%.1f", m.value(BED_ACTUAL)),
                message(at + "/bed/set", "%.0f", m.value(BED_SETPOINT)),
                message(at + "/nozzle/temp", "%.1f", m.value(NOZZLE_ACTUAL)),
                message(at + "/nozzle/set", "%.0f", m.value(NOZZLE_SETPOINT)),
                message(at + "/job/percent", "%.1f", 100 * m.value(JOB_PROGRESS)),
                message(at + "/job/remaining", "%.0f s", m.value(JOB_LEFT)),
                message(at + "/mode", word(m, "ready", "heating", "printing", "paused", "done", "fault")));
    }

    /** German flags in words, in one message; a heater's own switch among them. */
    private static Printer chalk() {
        return new Printer(
                "chalk",
                "German flags, ja and nein",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> List.of(message(
                        "halle/kreide",
                        "{\"bett\":{\"ist\":%.1f,\"soll\":%.0f,\"an\":\"%s\"},\"düse\":{\"ist\":%.1f,\"soll\":%.0f,\"an\":\"%s\"},"
                                + "\"fortschritt\":%.3f,\"restzeit_min\":%.2f,"
                                + "\"melder\":{\"druckt\":\"%s\",\"pause\":\"%s\",\"fertig\":\"%s\",\"störung\":\"%s\"}}",
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(BED_SETPOINT) > 0 ? "ja" : "nein",
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        m.value(NOZZLE_SETPOINT) > 0 ? "ja" : "nein",
                        m.value(JOB_PROGRESS),
                        m.value(JOB_LEFT) / 60,
                        is(m, PrinterState.PRINTING) ? "ja" : "nein",
                        is(m, PrinterState.HELD) ? "ja" : "nein",
                        is(m, PrinterState.DONE) ? "ja" : "nein",
                        is(m, PrinterState.FAULT) ? "ja" : "nein")));
    }

    /** Messages with a growing number at the end of the topic; among a house's messages. */
    private static Printer flint() {
        Random random = new Random(21);
        return new Printer(
                "flint",
                "a job's number in each topic, a house",
                heatAnd(JOB_PROGRESS, JOB_DONE, JOB_TOTAL),
                ALL,
                m -> {
                    List<Message> all = new ArrayList<>(Printers.noise(m, random));
                    int job = m.second() < 25 ? 88120 : 88121;
                    all.add(message(
                            "garage/flint/temps",
                            "bed:%.1f/%.0f,ext:%.1f/%.0f",
                            m.value(BED_ACTUAL),
                            m.value(BED_SETPOINT),
                            m.value(NOZZLE_ACTUAL),
                            m.value(NOZZLE_SETPOINT)));
                    all.add(message("garage/flint/job/" + job + "/progress", "%.1f", 100 * m.value(JOB_PROGRESS)));
                    all.add(message(
                            "garage/flint/job/" + job + "/layer", "%.0f/%.0f", m.value(JOB_DONE), m.value(JOB_TOTAL)));
                    all.add(message(
                            "garage/flint/status",
                            word(m, "Operational", "Heating", "Printing", "Paused", "Finished", "Error: thermal")));
                    return all;
                });
    }

    /** A printer at rest, in French, with a code for a fault that never came. */
    private static Printer marl() {
        return new Printer(
                "marl",
                "at rest, French",
                heatAnd(CHAMBER_ACTUAL, JOB_PROGRESS),
                EnumSet.of(PrinterState.IDLE),
                Job.REST,
                m -> List.of(message(
                        "cave/marne",
                        "{\"plateau\":{\"actuel\":%.1f,\"consigne\":%.0f},\"buse\":{\"actuel\":%.1f,\"consigne\":%.0f},\"caisson\":{\"actuel\":%.1f},"
                                + "\"etat\":\"prêt\",\"avancement_pct\":%.1f,\"code_erreur\":0}",
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        m.value(CHAMBER_ACTUAL),
                        100 * m.value(JOB_PROGRESS))));
    }
}
