package dev.lampwright.tool.survey;

import static dev.lampwright.payload.Quantity.BED_ACTUAL;
import static dev.lampwright.payload.Quantity.BED_SETPOINT;
import static dev.lampwright.payload.Quantity.CHAMBER_ACTUAL;
import static dev.lampwright.payload.Quantity.JOB_DONE;
import static dev.lampwright.payload.Quantity.JOB_ELAPSED;
import static dev.lampwright.payload.Quantity.JOB_LEFT;
import static dev.lampwright.payload.Quantity.JOB_PROGRESS;
import static dev.lampwright.payload.Quantity.JOB_TOTAL;
import static dev.lampwright.payload.Quantity.NOZZLE_ACTUAL;
import static dev.lampwright.payload.Quantity.NOZZLE_SETPOINT;
import static dev.lampwright.tool.survey.Printers.ALL;
import static dev.lampwright.tool.survey.Printers.f;
import static dev.lampwright.tool.survey.Printers.message;
import static dev.lampwright.tool.survey.Printers.word;

import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.tool.survey.Printer.Message;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;

/** Other languages, codes, flags, tenths, kelvin, lists in changing order, several on one topic. */
final class LotFive {
    private static final Set<Quantity> HEAT = EnumSet.of(BED_ACTUAL, BED_SETPOINT, NOZZLE_ACTUAL, NOZZLE_SETPOINT);
    private static final Set<PrinterState> NO_FAULT = EnumSet.of(
            PrinterState.IDLE, PrinterState.WARMING, PrinterState.PRINTING, PrinterState.HELD, PrinterState.DONE);

    private LotFive() {}

    /** All of them. */
    static List<Printer> all() {
        return List.of(
                kuusi(),
                rigel(),
                vega(),
                mira(),
                deneb(),
                altair(),
                capella(),
                castor(),
                pollux(),
                spica(),
                regulus(),
                bellatrix());
    }

    /** The heaters' quantities and others. */
    static Set<Quantity> heatAnd(Quantity... others) {
        Set<Quantity> all = EnumSet.copyOf(HEAT);
        all.addAll(List.of(others));
        return all;
    }

    /** Finnish, which is not in any list of words. */
    private static Printer kuusi() {
        return new Printer(
                "kuusi",
                "Finnish, under a heat word",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> List.of(
                        message(
                                "verstas/kuusi/lämpö",
                                "{\"pöytä\":%.1f,\"pöytä_tavoite\":%.0f,\"suutin\":%.1f,\"suutin_tavoite\":%.0f}",
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT)),
                        message(
                                "verstas/kuusi/työ",
                                "{\"valmiina\":%.1f,\"jäljellä_min\":%.1f}",
                                100 * m.value(JOB_PROGRESS),
                                m.value(JOB_LEFT) / 60),
                        message(
                                "verstas/kuusi/vaihe",
                                word(m, "odottaa", "lämpenee", "tulostaa", "tauko", "valmis", "vika: lanka"))));
    }

    /** Tenths of a degree, permille, a code for the state. */
    private static Printer rigel() {
        return new Printer(
                "rigel",
                "tenths, permille, codes",
                heatAnd(JOB_PROGRESS, JOB_DONE, JOB_TOTAL),
                ALL,
                Job.HOT,
                m -> List.of(message(
                        "hall/3/rigel",
                        "{\"bed_x10\":%.0f,\"bed_set_x10\":%.0f,\"nozzle_x10\":%.0f,\"nozzle_set_x10\":%.0f,"
                                + "\"progress\":%.0f,\"layer\":%.0f,\"layers\":%.0f,\"status\":%s,\"fan\":%d}",
                        10 * m.value(BED_ACTUAL),
                        10 * m.value(BED_SETPOINT),
                        10 * m.value(NOZZLE_ACTUAL),
                        10 * m.value(NOZZLE_SETPOINT),
                        1000 * m.value(JOB_PROGRESS),
                        m.value(JOB_DONE),
                        m.value(JOB_TOTAL),
                        word(m, "0", "1", "2", "3", "4", "9"),
                        m.value(NOZZLE_ACTUAL) > 50 ? 255 : 0)));
    }

    private static double kelvin(double celsius) {
        return celsius + 273.15;
    }

    /** Kelvin; Dutch words. */
    private static Printer vega() {
        return new Printer(
                "vega",
                "kelvin, Dutch",
                heatAnd(CHAMBER_ACTUAL, JOB_PROGRESS, JOB_ELAPSED),
                ALL,
                m -> List.of(
                        message("garage/vega/bed", "%.1f", kelvin(m.value(BED_ACTUAL))),
                        message(
                                "garage/vega/bed/doel",
                                "%.1f",
                                m.value(BED_SETPOINT) == 0 ? 0 : kelvin(m.value(BED_SETPOINT))),
                        message("garage/vega/mondstuk", "%.1f", kelvin(m.value(NOZZLE_ACTUAL))),
                        message(
                                "garage/vega/mondstuk/doel",
                                "%.1f",
                                m.value(NOZZLE_SETPOINT) == 0 ? 0 : kelvin(m.value(NOZZLE_SETPOINT))),
                        message("garage/vega/kast", "%.1f", kelvin(m.value(CHAMBER_ACTUAL))),
                        message("garage/vega/voortgang", "%.3f", m.value(JOB_PROGRESS)),
                        message("garage/vega/verstreken", "%.0f", m.value(JOB_ELAPSED)),
                        message(
                                "garage/vega/toestand",
                                word(m, "gereed", "opwarmen", "bezig", "gepauzeerd", "klaar", "storing"))));
    }

    private static boolean is(Job.Moment m, PrinterState... states) {
        return Set.of(states).contains(m.state());
    }

    /** A flag for each state, a topic for each flag, reported on change and every ten seconds. */
    private static Printer mira() {
        return new Printer(
                "mira",
                "a flag on a topic each",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> List.of(
                        message("windmill/mira/plate/temp", "%.1f", m.value(BED_ACTUAL)),
                        message("windmill/mira/plate/target", "%.0f", m.value(BED_SETPOINT)),
                        message("windmill/mira/nozzle/temp", "%.1f", m.value(NOZZLE_ACTUAL)),
                        message("windmill/mira/nozzle/target", "%.0f", m.value(NOZZLE_SETPOINT)),
                        message("windmill/mira/job/percent", "%.1f", 100 * m.value(JOB_PROGRESS)),
                        message("windmill/mira/job/remaining", "%.0f", m.value(JOB_LEFT)),
                        message("windmill/mira/flag/heating", "%s", is(m, PrinterState.WARMING)),
                        message(
                                "windmill/mira/flag/printing",
                                "%s",
                                is(m, PrinterState.PRINTING, PrinterState.HELD, PrinterState.FAULT)),
                        message("windmill/mira/flag/paused", "%s", is(m, PrinterState.HELD)),
                        message("windmill/mira/flag/finished", "%s", is(m, PrinterState.DONE)),
                        message("windmill/mira/flag/error", "%s", is(m, PrinterState.FAULT))));
    }

    /** A list of heaters in a different order each time; Portuguese words. */
    private static Printer deneb() {
        return new Printer(
                "deneb",
                "a list in changing order, Portuguese",
                heatAnd(CHAMBER_ACTUAL, JOB_PROGRESS),
                ALL,
                Job.HOT,
                m -> {
                    List<String> zones = new ArrayList<>(List.of(
                            zone("mesa", m.value(BED_ACTUAL), m.value(BED_SETPOINT)),
                            zone("bico", m.value(NOZZLE_ACTUAL), m.value(NOZZLE_SETPOINT)),
                            String.format(Locale.ROOT, "{\"zona\":\"cabine\",\"pv\":%.1f}", m.value(CHAMBER_ACTUAL))));
                    Collections.shuffle(zones, new Random(m.second()));
                    return List.of(
                            message("oficina/deneb/zonas", "%s", zones.toString()),
                            message(
                                    "oficina/deneb/trabalho",
                                    "{\"progresso\":%.0f,\"estado\":\"%s\"}",
                                    100 * m.value(JOB_PROGRESS),
                                    word(m, "ocioso", "aquecendo", "imprimindo", "pausado", "concluído", "falha")));
                });
    }

    private static String zone(String name, double actual, double target) {
        return String.format(Locale.ROOT, "{\"zona\":\"%s\",\"pv\":%.1f,\"sp\":%.0f}", name, actual, target);
    }

    /** Two printers on one topic, distinguished by a field; the other one rests. */
    private static Printer altair() {
        return new Printer(
                "altair",
                "two on one topic",
                heatAnd(JOB_PROGRESS),
                ALL,
                m -> List.of(
                        message(
                                "shop/reports",
                                "{\"printer\":\"altair\",\"bed\":%.1f,\"bed_target\":%.0f,\"nozzle\":%.1f,\"nozzle_target\":%.0f,"
                                        + "\"progress\":%.1f,\"state\":\"%s\"}",
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT),
                                100 * m.value(JOB_PROGRESS),
                                word(m, "idle", "preheating", "printing", "paused", "finished", "error")),
                        message(
                                "shop/reports",
                                "{\"printer\":\"atria\",\"bed\":22.%d,\"bed_target\":0,\"nozzle\":21.%d,\"nozzle_target\":0,"
                                        + "\"progress\":0.0,\"state\":\"idle\"}",
                                m.second() % 4,
                                m.second() % 3)));
    }

    /** A line of key=value, including the state. */
    private static Printer capella() {
        return new Printer(
                "capella",
                "key=value with the state",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> List.of(message(
                        "capella/line",
                        "st=%s bed=%.1f/%.0f tip=%.1f/%.0f pct=%.0f left=%.0f",
                        word(m, "IDLE", "HEAT", "RUN", "PAUSE", "DONE", "ALARM"),
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        100 * m.value(JOB_PROGRESS),
                        m.value(JOB_LEFT))));
    }

    /** A line with commas, units in the fields, a code for the state at its end. */
    private static Printer castor() {
        return new Printer(
                "castor",
                "CSV with units, a code",
                heatAnd(JOB_PROGRESS, JOB_ELAPSED),
                ALL,
                Job.HOT,
                m -> List.of(message(
                        "site/castor",
                        "%.0fF,%.0fF,%.0fF,%.0fF,%.1f%%,%.0fs,%s",
                        f(m.value(NOZZLE_ACTUAL)),
                        m.value(NOZZLE_SETPOINT) == 0 ? 32 : f(m.value(NOZZLE_SETPOINT)),
                        f(m.value(BED_ACTUAL)),
                        m.value(BED_SETPOINT) == 0 ? 32 : f(m.value(BED_SETPOINT)),
                        100 * m.value(JOB_PROGRESS),
                        m.value(JOB_ELAPSED),
                        word(m, "10", "20", "30", "40", "50", "99"))));
    }

    /** The job's id at the end of the topic; values of a job long over are retained; time left as text. */
    private static Printer pollux() {
        return new Printer("pollux", "job ids in topics, retained ones", heatAnd(JOB_PROGRESS, JOB_LEFT), ALL, m -> {
            List<Message> all = new ArrayList<>();
            if (m.second() == 0) {
                all.add(message("fab/pollux/job/1045", "{\"done\":\"100 %%\",\"left\":\"0m\"}"));
                all.add(message("fab/pollux/job/1046", "{\"done\":\"37 %%\",\"left\":\"2h 10m\"}"));
            }
            long left = Math.round(m.value(JOB_LEFT));
            all.add(message(
                    "fab/pollux/job/1047",
                    "{\"done\":\"%.1f %%\",\"left\":\"%dm %02ds\"}",
                    100 * m.value(JOB_PROGRESS),
                    left / 60,
                    left % 60));
            all.add(message(
                    "fab/pollux/temps",
                    "{\"bed\":{\"act\":%.1f,\"set\":%.0f},\"hotend\":{\"act\":%.1f,\"set\":%.0f}}",
                    m.value(BED_ACTUAL),
                    m.value(BED_SETPOINT),
                    m.value(NOZZLE_ACTUAL),
                    m.value(NOZZLE_SETPOINT)));
            all.add(message(
                    "fab/pollux/mode",
                    word(m, "standby", "warming up", "running", "on hold", "complete", "failed: jam")));
            return all;
        });
    }

    /**
     * Turkish, which is not in any list of words; a fault is a text that is not empty, and the state continues as if nothing were wrong.
     */
    private static Printer spica() {
        return new Printer(
                "spica",
                "Turkish, a fault only as text",
                heatAnd(JOB_PROGRESS),
                ALL,
                m -> List.of(
                        message(
                                "atölye/spica/ısı",
                                "{\"tabla\":{\"şimdi\":%.1f,\"hedef\":%.0f},\"meme\":{\"şimdi\":%.1f,\"hedef\":%.0f}}",
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT)),
                        message("atölye/spica/yüzde", "%.1f", 100 * m.value(JOB_PROGRESS)),
                        message("atölye/spica/error", "%s", m.faultText()),
                        message(
                                "atölye/spica/durum",
                                word(m, "boşta", "ısınıyor", "basıyor", "bekletildi", "bitti", "basıyor"))));
    }

    /** Hungarian flags of 1 and 0 in one message. */
    private static Printer regulus() {
        return new Printer(
                "regulus",
                "Hungarian flags of 1 and 0",
                heatAnd(JOB_PROGRESS),
                NO_FAULT,
                m -> List.of(message(
                        "műhely/regulus",
                        "{\"ágy\":%.1f,\"ágy_cél\":%.0f,\"fej\":%.1f,\"fej_cél\":%.0f,\"kész_szazalek\":%.1f,"
                                + "\"jelek\":{\"fűt\":%d,\"nyomtat\":%d,\"szünet\":%d,\"vége\":%d,\"hiba\":%d}}",
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        100 * m.value(JOB_PROGRESS),
                        is(m, PrinterState.WARMING) ? 1 : 0,
                        is(m, PrinterState.PRINTING) ? 1 : 0,
                        is(m, PrinterState.HELD) ? 1 : 0,
                        is(m, PrinterState.DONE) ? 1 : 0,
                        is(m, PrinterState.FAULT) ? 1 : 0)));
    }

    /** A printer that rests, with plain names. */
    private static Printer bellatrix() {
        return new Printer(
                "bellatrix",
                "at rest",
                heatAnd(JOB_PROGRESS),
                EnumSet.of(PrinterState.IDLE),
                Job.REST,
                m -> List.of(
                        message(
                                "hostel/bellatrix/heat",
                                "{\"bed\":{\"current\":%.1f,\"target\":%.0f},\"nozzle\":{\"current\":%.1f,\"target\":%.0f}}",
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT)),
                        message(
                                "hostel/bellatrix/job",
                                "{\"progress\":%.2f,\"state\":\"ready\"}",
                                m.value(JOB_PROGRESS))));
    }
}
