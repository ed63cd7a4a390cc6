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
import static dev.lampwright.tool.survey.Printers.f;
import static dev.lampwright.tool.survey.Printers.message;
import static dev.lampwright.tool.survey.Printers.word;

import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.tool.survey.Printer.Message;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * A fourth lot: Lithuanian, Catalan, Indonesian, Romanian, Greek, Irish, Slovenian, Vietnamese; decimal commas, hexadecimal codes, markup,
 * two nozzles, three identical ones at once, values that are reported when they change.
 */
final class LotEight {
    private LotEight() {}

    /** All of them. */
    static List<Printer> all() {
        return List.of(
                anvil(),
                gimlet(),
                mallet(),
                chisel(),
                rasp(),
                vise(),
                awl(),
                trammel(),
                dowel(),
                tenon(),
                mitre(),
                adze(),
                plane(),
                burnisher(),
                bradawl());
    }

    private static boolean is(Job.Moment m, PrinterState... states) {
        return Set.of(states).contains(m.state());
    }

    private static String comma(String format, double value) {
        return String.format(Locale.ROOT, format, value).replace('.', ',');
    }

    /** A list of points; each has a name, a value as text and a unit. */
    private static Printer anvil() {
        return new Printer(
                "anvil",
                "a list of named points, values as text",
                heatAnd(CHAMBER_ACTUAL, JOB_PROGRESS, JOB_LEFT),
                ALL,
                Job.BED_FIRST,
                m -> List.of(message(
                        "works/anvil/points",
                        "{\"seq\":%d,\"points\":[%s,%s,%s,%s,%s,%s,%s,%s,%s]}",
                        m.second() + 70100,
                        point("Bed temperature", String.format(Locale.ROOT, "%.1f", m.value(BED_ACTUAL)), "degC"),
                        point("Bed setpoint", String.format(Locale.ROOT, "%.0f", m.value(BED_SETPOINT)), "degC"),
                        point("Nozzle temperature", String.format(Locale.ROOT, "%.1f", m.value(NOZZLE_ACTUAL)), "degC"),
                        point("Nozzle setpoint", String.format(Locale.ROOT, "%.0f", m.value(NOZZLE_SETPOINT)), "degC"),
                        point(
                                "Chamber temperature",
                                String.format(Locale.ROOT, "%.1f", m.value(CHAMBER_ACTUAL)),
                                "degC"),
                        point("Job progress", String.format(Locale.ROOT, "%.1f", 100 * m.value(JOB_PROGRESS)), "%"),
                        point("Time remaining", String.format(Locale.ROOT, "%.0f", m.value(JOB_LEFT)), "s"),
                        point("Fan", m.value(NOZZLE_ACTUAL) > 50 ? "60" : "0", "%"),
                        point(
                                "Machine state",
                                word(m, "Ready", "Heating", "Printing", "Paused", "Finished", "Fault"),
                                ""))));
    }

    private static String point(String name, String value, String unit) {
        return String.format(Locale.ROOT, "{\"n\":\"%s\",\"v\":\"%s\",\"u\":\"%s\"}", name, value, unit);
    }

    /** Lithuanian; a topic for each value. */
    private static Printer gimlet() {
        return new Printer("gimlet", "Lithuanian, a topic a value", heatAnd(JOB_PROGRESS, JOB_LEFT), ALL, m -> {
            long left = Math.round(m.value(JOB_LEFT));
            return List.of(
                    message("dirbtuvė/grąžtas/lova/dabar", "%.1f", m.value(BED_ACTUAL)),
                    message("dirbtuvė/grąžtas/lova/tikslas", "%.0f", m.value(BED_SETPOINT)),
                    message("dirbtuvė/grąžtas/antgalis/dabar", "%.1f", m.value(NOZZLE_ACTUAL)),
                    message("dirbtuvė/grąžtas/antgalis/tikslas", "%.0f", m.value(NOZZLE_SETPOINT)),
                    message("dirbtuvė/grąžtas/eiga", "%.1f", 100 * m.value(JOB_PROGRESS)),
                    message("dirbtuvė/grąžtas/liko", "%d min %02d s", left / 60, left % 60),
                    message(
                            "dirbtuvė/grąžtas/būsena",
                            word(
                                    m,
                                    "laukia",
                                    "kaista",
                                    "spausdina",
                                    "pristabdyta",
                                    "baigta",
                                    "klaida: antgalis užsikimšęs")));
        });
    }

    /** Catalan; one flat document. */
    private static Printer mallet() {
        return new Printer(
                "mallet",
                "Catalan, one flat document",
                heatAnd(CHAMBER_ACTUAL, CHAMBER_SETPOINT, JOB_PROGRESS, JOB_DONE, JOB_TOTAL),
                ALL,
                Job.HOT,
                m -> List.of(message(
                        "obrador/maça",
                        "{\"llit\":%.1f,\"llit_objectiu\":%.0f,\"broquet\":%.1f,\"broquet_objectiu\":%.0f,\"cambra\":%.1f,"
                                + "\"cambra_objectiu\":%.0f,\"progrés\":%.1f,\"capa\":%.0f,\"capes\":%.0f,\"estat\":\"%s\",\"ventilador\":%d}",
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        m.value(CHAMBER_ACTUAL),
                        m.value(CHAMBER_SETPOINT),
                        100 * m.value(JOB_PROGRESS),
                        m.value(JOB_DONE),
                        m.value(JOB_TOTAL),
                        word(m, "a punt", "escalfant", "imprimint", "en pausa", "acabat", "avaria: broquet"),
                        m.value(NOZZLE_ACTUAL) > 60 ? 75 : 0)));
    }

    /** Indonesian; lines with decimal commas. */
    private static Printer chisel() {
        return new Printer(
                "chisel",
                "Indonesian, lines, decimal commas",
                heatAnd(JOB_PROGRESS, JOB_ELAPSED),
                ALL,
                m -> List.of(message(
                        "bengkel/pahat",
                        "status: %s\nalas: %s\nalas target: %s\nnosel: %s\nnosel target: %s\nkemajuan: %s %%\nberjalan: %s",
                        word(m, "siap", "memanas", "mencetak", "jeda", "selesai", "galat nosel"),
                        comma("%.1f", m.value(BED_ACTUAL)),
                        comma("%.1f", m.value(BED_SETPOINT)),
                        comma("%.1f", m.value(NOZZLE_ACTUAL)),
                        comma("%.1f", m.value(NOZZLE_SETPOINT)),
                        comma("%.1f", 100 * m.value(JOB_PROGRESS)),
                        clock(m.value(JOB_ELAPSED)))));
    }

    /** Hexadecimal codes for state and fault; tenths, permille. */
    private static Printer rasp() {
        return new Printer(
                "rasp",
                "hexadecimal codes, tenths, permille",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                Job.HOT,
                m -> List.of(
                        message(
                                "line2/rasp/th",
                                "{\"bed\":[%.0f,%.0f],\"noz\":[%.0f,%.0f]}",
                                10 * m.value(BED_ACTUAL),
                                10 * m.value(BED_SETPOINT),
                                10 * m.value(NOZZLE_ACTUAL),
                                10 * m.value(NOZZLE_SETPOINT)),
                        message(
                                "line2/rasp/run",
                                "{\"code\":\"%s\",\"alarm\":\"%s\",\"pm\":%.0f,\"rem\":%.0f}",
                                word(m, "0x01", "0x02", "0x04", "0x0C", "0x10", "0x24"),
                                is(m, PrinterState.FAULT) ? "0x3A" : "0x00",
                                1000 * m.value(JOB_PROGRESS),
                                m.value(JOB_LEFT))));
    }

    /** Markup with attributes. */
    private static Printer vise() {
        return new Printer(
                "vise",
                "markup with attributes",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> List.of(message(
                        "bench/vise",
                        "<report><bed now=\"%.1f\" set=\"%.0f\"/><nozzle now=\"%.1f\" set=\"%.0f\"/>"
                                + "<job percent=\"%.1f\" left=\"%.0f\" state=\"%s\"/></report>",
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        100 * m.value(JOB_PROGRESS),
                        m.value(JOB_LEFT),
                        word(m, "idle", "heating", "printing", "paused", "done", "error"))));
    }

    /** Romanian; everything is retained, and reported when it changes. */
    private static Printer awl() {
        List<Job.Moment> moments = Job.moments(Job.USUAL);
        return new Printer("awl", "Romanian, reported on change", heatAnd(JOB_PROGRESS, JOB_LEFT), ALL, m -> {
            List<Message> all = new ArrayList<>();
            List<Message> before = m.second() == 0 ? List.of() : awlSays(moments.get(m.second() - 1));
            List<Message> now = awlSays(m);
            for (int i = 0; i < now.size(); i++) {
                if (before.isEmpty() || !before.get(i).equals(now.get(i))) {
                    all.add(now.get(i));
                }
            }
            return all;
        });
    }

    private static List<Message> awlSays(Job.Moment m) {
        return List.of(
                message("atelier/sula/pat/acum", "%.0f", m.value(BED_ACTUAL)),
                message("atelier/sula/pat/dorit", "%.0f", m.value(BED_SETPOINT)),
                message("atelier/sula/duza/acum", "%.0f", m.value(NOZZLE_ACTUAL)),
                message("atelier/sula/duza/dorit", "%.0f", m.value(NOZZLE_SETPOINT)),
                message("atelier/sula/lucrare/procent", "%.0f", 100 * m.value(JOB_PROGRESS)),
                message("atelier/sula/lucrare/ramas", "%.0f", m.value(JOB_LEFT)),
                message(
                        "atelier/sula/stare",
                        word(m, "pregătit", "încălzire", "imprimare", "pauză", "gata", "eroare duză")));
    }

    /** All values are texts; the unit is next to it; flags are Y and N. */
    private static Printer trammel() {
        return new Printer(
                "trammel",
                "texts, °F beside, flags Y and N",
                heatAnd(JOB_PROGRESS, JOB_ELAPSED),
                ALL,
                Job.BED_FIRST,
                m -> List.of(message(
                        "den/trammel/values",
                        "{\"scale\":\"F\",\"plate_temperature\":\"%.1f\",\"plate_target\":\"%.1f\",\"tip_temperature\":\"%.1f\","
                                + "\"tip_target\":\"%.1f\",\"job_pct\":\"%.1f\",\"job_seconds\":\"%.0f\",\"is_heating\":\"%s\","
                                + "\"is_printing\":\"%s\",\"is_paused\":\"%s\",\"is_finished\":\"%s\",\"has_error\":\"%s\"}",
                        f(m.value(BED_ACTUAL)),
                        f(m.value(BED_SETPOINT)),
                        f(m.value(NOZZLE_ACTUAL)),
                        f(m.value(NOZZLE_SETPOINT)),
                        100 * m.value(JOB_PROGRESS),
                        m.value(JOB_ELAPSED),
                        yes(m, PrinterState.WARMING),
                        yes(m, PrinterState.PRINTING),
                        yes(m, PrinterState.HELD),
                        yes(m, PrinterState.DONE),
                        yes(m, PrinterState.FAULT))));
    }

    private static String yes(Job.Moment m, PrinterState state) {
        return m.state() == state ? "Y" : "N";
    }

    /** Greek, in its own letters. */
    private static Printer dowel() {
        return new Printer(
                "dowel",
                "Greek, nested",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> List.of(message(
                        "εργαστήριο/καβίλια",
                        "{\"θερμοκρασίες\":{\"κλίνη\":{\"τώρα\":%.1f,\"στόχος\":%.0f},\"ακροφύσιο\":{\"τώρα\":%.1f,\"στόχος\":%.0f}},"
                                + "\"εργασία\":{\"πρόοδος\":%.3f,\"απομένει\":%.0f,\"κατάσταση\":\"%s\"}}",
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        m.value(JOB_PROGRESS),
                        m.value(JOB_LEFT),
                        word(m, "έτοιμο", "θερμαίνεται", "εκτυπώνει", "παύση", "τέλος", "σφάλμα: ακροφύσιο"))));
    }

    /** Three that report in the same way; one works, one rests, one has just finished. */
    private static Printer tenon() {
        List<Job.Moment> others = Job.moments(Job.HOT);
        return new Printer("tenon", "three alike, one at work", heatAnd(JOB_PROGRESS, JOB_LEFT), ALL, m -> {
            Job.Moment ended = others.get(Math.min(others.size() - 1, 1350 + m.second()));
            List<Message> all = new ArrayList<>();
            all.addAll(tenonSays("cell/a/dado", others.get(m.second() % 40)));
            all.addAll(tenonSays("cell/b/tenon", m));
            all.addAll(tenonSays("cell/c/rabbet", ended));
            return all;
        });
    }

    private static List<Message> tenonSays(String at, Job.Moment m) {
        return List.of(
                message(
                        at + "/heat",
                        "{\"bed\":{\"t\":%.1f,\"goal\":%.0f},\"nozzle\":{\"t\":%.1f,\"goal\":%.0f}}",
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT)),
                message(
                        at + "/work",
                        "{\"fraction\":%.4f,\"eta_s\":%.0f,\"doing\":\"%s\"}",
                        m.value(JOB_PROGRESS),
                        m.value(JOB_LEFT),
                        word(m, "waiting", "warming", "printing", "held", "completed", "faulted")));
    }

    /** Two flags and a text for a fault; times of day that are not durations. */
    private static Printer mitre() {
        return new Printer(
                "mitre",
                "two flags, a fault text, times of day",
                heatAnd(JOB_PROGRESS, JOB_DONE, JOB_TOTAL),
                EnumSet.of(PrinterState.PRINTING, PrinterState.HELD, PrinterState.FAULT),
                m -> {
                    boolean active = !is(m, PrinterState.IDLE, PrinterState.DONE);
                    return List.of(message(
                            "annex/mitre/full",
                            "{\"time\":%d,\"uptime\":%d,\"heaters\":{\"bed\":{\"actual\":%.2f,\"target\":%.1f,\"duty\":%.2f},"
                                    + "\"nozzle\":{\"actual\":%.2f,\"target\":%.1f,\"duty\":%.2f}},\"job\":{\"active\":%s,\"paused\":%s,"
                                    + "\"name\":\"%s\",\"ends\":%d,\"percent\":%.1f,\"layer\":%.0f,\"layer_count\":%.0f},\"alarm_text\":\"%s\"}",
                            1790000000 + m.second(),
                            3100 + m.second(),
                            m.value(BED_ACTUAL),
                            m.value(BED_SETPOINT),
                            m.value(BED_SETPOINT) > 0 ? 0.4 + 0.1 * (m.second() % 3) : 0,
                            m.value(NOZZLE_ACTUAL),
                            m.value(NOZZLE_SETPOINT),
                            m.value(NOZZLE_SETPOINT) > 0 ? 0.5 + 0.1 * (m.second() % 4) : 0,
                            active,
                            is(m, PrinterState.HELD),
                            active ? "hook-4" : "",
                            active ? 1790001290 : 0,
                            100 * m.value(JOB_PROGRESS),
                            m.value(JOB_DONE),
                            m.value(JOB_TOTAL),
                            m.faultText()));
                });
    }

    /** Irish; a number for the state, and a text for what is wrong. */
    private static Printer adze() {
        return new Printer(
                "adze",
                "Irish, codes, a fault text",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                Job.HOT,
                m -> List.of(
                        message("ceardlann/tál/leaba", "%.1f;%.0f", m.value(BED_ACTUAL), m.value(BED_SETPOINT)),
                        message("ceardlann/tál/soc", "%.1f;%.0f", m.value(NOZZLE_ACTUAL), m.value(NOZZLE_SETPOINT)),
                        message("ceardlann/tál/dul_chun_cinn", "%.1f", 100 * m.value(JOB_PROGRESS)),
                        message("ceardlann/tál/fágtha", "%.0f", m.value(JOB_LEFT)),
                        message("ceardlann/tál/staid", word(m, "5", "15", "25", "35", "45", "25")),
                        message("ceardlann/tál/earráid", is(m, PrinterState.FAULT) ? "soc blocáilte" : "")));
    }

    /** Two nozzles, one of which is never used. */
    private static Printer plane() {
        return new Printer(
                "plane",
                "two nozzles, one unused",
                heatAnd(JOB_PROGRESS, JOB_ELAPSED, JOB_LEFT),
                ALL,
                Job.BED_FIRST,
                m -> List.of(
                        message(
                                "loft/plane/thermal",
                                "{\"tools\":[{\"temp\":%.1f,\"goal\":%.0f},{\"temp\":%.1f,\"goal\":0}],\"bed\":{\"temp\":%.1f,\"goal\":%.0f}}",
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT),
                                22 + 0.2 * Math.sin(m.second() * 0.9),
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT)),
                        message(
                                "loft/plane/task",
                                "{\"progress\":%.1f,\"elapsed\":%.0f,\"remaining\":%.0f,\"status\":\"%s\"}",
                                100 * m.value(JOB_PROGRESS),
                                m.value(JOB_ELAPSED),
                                m.value(JOB_LEFT),
                                word(
                                        m,
                                        "OFFLINE_READY",
                                        "PRE_HEAT",
                                        "PRINTING",
                                        "PAUSED",
                                        "COMPLETED",
                                        "ERROR_HALT"))));
    }

    /** Slovenian; layers in a sentence, a clock for the time. */
    private static Printer burnisher() {
        return new Printer(
                "burnisher",
                "Slovenian, layers in a sentence",
                heatAnd(JOB_DONE, JOB_TOTAL, JOB_ELAPSED),
                ALL,
                m -> List.of(
                        message(
                                "delavnica/gladilo/temperature",
                                "miza %.1f od %.0f, šoba %.1f od %.0f",
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT)),
                        message("delavnica/gladilo/sloj", "sloj %.0f od %.0f", m.value(JOB_DONE), m.value(JOB_TOTAL)),
                        message("delavnica/gladilo/trajanje", "%s", clock(m.value(JOB_ELAPSED))),
                        message(
                                "delavnica/gladilo/stanje",
                                word(m, "pripravljen", "segrevanje", "tiskanje", "premor", "končano", "napaka 31"))));
    }

    /** Vietnamese, at rest. */
    private static Printer bradawl() {
        Set<Quantity> tells = heatAnd(JOB_PROGRESS, JOB_LEFT);
        return new Printer(
                "bradawl",
                "Vietnamese, at rest",
                tells,
                EnumSet.of(PrinterState.IDLE),
                Job.REST,
                m -> List.of(
                        message(
                                "xưởng/dùi/nhiệt",
                                "{\"bàn\":{\"hiện tại\":%.1f,\"mục tiêu\":%.0f},\"đầu phun\":{\"hiện tại\":%.1f,\"mục tiêu\":%.0f}}",
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT)),
                        message(
                                "xưởng/dùi/việc",
                                "{\"tiến độ\":%.1f,\"còn lại\":%.0f,\"trạng thái\":\"sẵn sàng\"}",
                                100 * m.value(JOB_PROGRESS),
                                m.value(JOB_LEFT))));
    }
}
