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

import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.tool.survey.Job.Moment;
import dev.lampwright.tool.survey.Printer.Message;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;

/** Invented printers, with messages of very different shapes. */
final class Printers {
    static final Set<PrinterState> ALL = EnumSet.of(
            PrinterState.IDLE,
            PrinterState.WARMING,
            PrinterState.PRINTING,
            PrinterState.HELD,
            PrinterState.DONE,
            PrinterState.FAULT);

    private Printers() {}

    /** All of them. */
    static List<Printer> all() {
        return List.of(
                alder(), birch(), rowan(), hazel(), aspen(), linden(), larch(), elm(), willow(), maple(), cedar(),
                oak(), spruce(), poplar(), juniper(), yew());
    }

    static String word(Moment moment, String... words) {
        List<PrinterState> order = List.copyOf(ALL);
        return words[order.indexOf(moment.state())];
    }

    static Message message(String topic, String format, Object... values) {
        return new Message(topic, String.format(Locale.ROOT, format, values));
    }

    /** One topic for each value. */
    private static Printer alder() {
        return new Printer(
                "alder",
                "one topic per value",
                EnumSet.of(BED_ACTUAL, BED_SETPOINT, NOZZLE_ACTUAL, NOZZLE_SETPOINT, JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> List.of(
                        message("shop/alder/plate/now", "%.1f", m.value(BED_ACTUAL)),
                        message("shop/alder/plate/set", "%.0f", m.value(BED_SETPOINT)),
                        message("shop/alder/tip/now", "%.1f", m.value(NOZZLE_ACTUAL)),
                        message("shop/alder/tip/set", "%.0f", m.value(NOZZLE_SETPOINT)),
                        message("shop/alder/job/progress", "%.3f", m.value(JOB_PROGRESS)),
                        message("shop/alder/job/remaining", "%.0f", m.value(JOB_LEFT)),
                        message("shop/alder/fan/speed", "%.0f", m.value(NOZZLE_ACTUAL) > 50 ? 80.0 : 0.0),
                        message(
                                "shop/alder/phase",
                                word(m, "READY", "PREHEAT", "RUN", "WAIT", "ENDED", "ALARM tip blocked"))));
    }

    /** One big document. */
    private static Printer birch() {
        return new Printer(
                "birch",
                "one big JSON",
                EnumSet.of(
                        BED_ACTUAL,
                        BED_SETPOINT,
                        NOZZLE_ACTUAL,
                        NOZZLE_SETPOINT,
                        CHAMBER_ACTUAL,
                        JOB_PROGRESS,
                        JOB_LEFT,
                        JOB_ELAPSED),
                ALL,
                m -> List.of(message(
                        "birch/report",
                        "{\"device\":{\"serial\":\"B-17\",\"uptime\":%d,\"wifi\":-%d},\"thermal\":{\"bed\":{\"measured\":%.2f,\"wanted\":%.0f},"
                                + "\"hotend\":{\"measured\":%.2f,\"wanted\":%.0f},\"enclosure\":{\"measured\":%.2f}},"
                                + "\"task\":{\"status\":\"%s\",\"complete\":%.1f,\"elapsed\":%.0f,\"togo\":%.0f,\"file\":\"vase-3.g\"},\"fans\":[%d,30]}",
                        m.second() + 4000,
                        50 + m.second() % 7,
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        m.value(CHAMBER_ACTUAL),
                        word(m, "idle", "heating", "printing", "paused", "completed", "error"),
                        100 * m.value(JOB_PROGRESS),
                        m.value(JOB_ELAPSED),
                        m.value(JOB_LEFT),
                        m.second() % 50)));
    }

    /** Only what has changed. */
    private static Printer rowan() {
        return new Printer(
                "rowan",
                "partial updates",
                EnumSet.of(BED_ACTUAL, BED_SETPOINT, NOZZLE_ACTUAL, NOZZLE_SETPOINT, JOB_PROGRESS),
                ALL,
                m -> switch (m.second() % 4) {
                    case 0 ->
                        List.of(
                                message("fab/rowan", "{\"heaters\":{\"plate\":{\"is\":%.1f}}}", m.value(BED_ACTUAL)),
                                message(
                                        "fab/rowan",
                                        "{\"heaters\":{\"plate\":{\"should\":%.1f}}}",
                                        m.value(BED_SETPOINT)));
                    case 1 ->
                        List.of(
                                message("fab/rowan", "{\"heaters\":{\"head\":{\"is\":%.1f}}}", m.value(NOZZLE_ACTUAL)),
                                message(
                                        "fab/rowan",
                                        "{\"heaters\":{\"head\":{\"should\":%.1f}}}",
                                        m.value(NOZZLE_SETPOINT)));
                    case 2 -> List.of(message("fab/rowan", "{\"print\":{\"done\":%.0f}}", 100 * m.value(JOB_PROGRESS)));
                    default ->
                        List.of(message(
                                "fab/rowan",
                                "{\"activity\":\"%s\"}",
                                word(m, "standby", "warmup", "busy", "hold", "ended", "jammed")));
                });
    }

    /** Arrays in arrays; numbers as text, with their unit. */
    private static Printer hazel() {
        return new Printer(
                "hazel",
                "nested arrays, numbers as text",
                EnumSet.of(
                        BED_ACTUAL,
                        BED_SETPOINT,
                        NOZZLE_ACTUAL,
                        NOZZLE_SETPOINT,
                        CHAMBER_ACTUAL,
                        CHAMBER_SETPOINT,
                        JOB_PROGRESS),
                ALL,
                m -> List.of(
                        message(
                                "lab/hazel/heat",
                                "[[\"%.1f °C\",\"%.0f °C\"],[\"%.1f °C\",\"%.0f °C\"],[\"%.1f °C\",\"%.0f °C\"]]",
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT),
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                m.value(CHAMBER_ACTUAL),
                                m.value(CHAMBER_SETPOINT)),
                        message(
                                "lab/hazel/work",
                                "[\"%s\",\"%.0f %%\"]",
                                word(m, "Ready", "Heating up", "Working", "On hold", "Finished", "Failure: tip"),
                                100 * m.value(JOB_PROGRESS))));
    }

    /** Words, and no bare number. */
    private static Printer aspen() {
        return new Printer(
                "aspen",
                "only words",
                EnumSet.of(JOB_DONE, JOB_TOTAL),
                ALL,
                m -> List.of(
                        message(
                                "aspen/says",
                                word(
                                        m,
                                        "waiting for work, ready",
                                        "warming up",
                                        "printing layer %.0f of %.0f",
                                        "paused by hand",
                                        "finished",
                                        "trouble: error, tip blocked"),
                                m.value(JOB_DONE),
                                m.value(JOB_TOTAL)),
                        message("aspen/fault", "%s", m.faultText()),
                        message("aspen/camera", m.camera() ? "snap" : "idle")));
    }

    /** A line of values. */
    private static Printer linden() {
        return new Printer(
                "linden",
                "CSV",
                EnumSet.of(BED_ACTUAL, BED_SETPOINT, NOZZLE_ACTUAL, NOZZLE_SETPOINT, JOB_PROGRESS),
                ALL,
                m -> List.of(
                        message(
                                "linden/line",
                                "%d;%.1f;%.0f;%.1f;%.0f;%.0f",
                                m.second(),
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT),
                                100 * m.value(JOB_PROGRESS)),
                        message("linden/state", word(m, "IDLE", "HEAT", "PRINT", "PAUSE", "DONE", "ERROR"))));
    }

    /** Fahrenheit, percent, minutes. */
    private static Printer larch() {
        return new Printer(
                "larch",
                "°F, percent, minutes",
                EnumSet.of(
                        BED_ACTUAL, BED_SETPOINT, NOZZLE_ACTUAL, NOZZLE_SETPOINT, JOB_PROGRESS, JOB_LEFT, JOB_ELAPSED),
                ALL,
                m -> List.of(message(
                        "attic/larch",
                        "{\"bedTempF\":%.0f,\"bedTargetF\":%.0f,\"nozzleTempF\":%.0f,\"nozzleTargetF\":%.0f,\"pctDone\":%.0f,"
                                + "\"minutesLeft\":%.1f,\"minutesSpent\":%.1f,\"mode\":\"%s\"}",
                        f(m.value(BED_ACTUAL)),
                        target(m.value(BED_SETPOINT)),
                        f(m.value(NOZZLE_ACTUAL)),
                        target(m.value(NOZZLE_SETPOINT)),
                        100 * m.value(JOB_PROGRESS),
                        m.value(JOB_LEFT) / 60,
                        m.value(JOB_ELAPSED) / 60,
                        word(m, "ready", "preheating", "building", "paused", "done", "fault 12"))));
    }

    static double f(double celsius) {
        return celsius * 1.8 + 32;
    }

    private static double target(double celsius) {
        return celsius == 0 ? 32 : f(celsius);
    }

    /** German names. */
    private static Printer elm() {
        return new Printer(
                "elm",
                "German names",
                EnumSet.of(BED_ACTUAL, BED_SETPOINT, NOZZLE_ACTUAL, NOZZLE_SETPOINT, JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> List.of(
                        message("werkstatt/ulme/bett/ist", "%.1f", m.value(BED_ACTUAL)),
                        message("werkstatt/ulme/bett/soll", "%.0f", m.value(BED_SETPOINT)),
                        message("werkstatt/ulme/düse/ist", "%.1f", m.value(NOZZLE_ACTUAL)),
                        message("werkstatt/ulme/düse/soll", "%.0f", m.value(NOZZLE_SETPOINT)),
                        message(
                                "werkstatt/ulme/auftrag",
                                "{\"fortschritt\":%.1f,\"restzeit\":\"%s\"}",
                                100 * m.value(JOB_PROGRESS),
                                clock(m.value(JOB_LEFT))),
                        message(
                                "werkstatt/ulme/zustand",
                                word(m, "bereit", "heizt", "druckt", "angehalten", "fertig", "Störung"))));
    }

    static String clock(double seconds) {
        long s = Math.round(seconds);
        return String.format(Locale.ROOT, "%d:%02d:%02d", s / 3600, s / 60 % 60, s % 60);
    }

    /** French names, on a broker with much other traffic. */
    private static Printer willow() {
        Random random = new Random(7);
        return new Printer(
                "willow",
                "French names, a noisy broker",
                EnumSet.of(BED_ACTUAL, BED_SETPOINT, NOZZLE_ACTUAL, NOZZLE_SETPOINT, JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> {
                    List<Message> all = new ArrayList<>(noise(m, random));
                    all.add(message("atelier/saule/plateau/mesure", "%.1f", m.value(BED_ACTUAL)));
                    all.add(message("atelier/saule/plateau/consigne", "%.0f", m.value(BED_SETPOINT)));
                    all.add(message("atelier/saule/buse/mesure", "%.1f", m.value(NOZZLE_ACTUAL)));
                    all.add(message("atelier/saule/buse/consigne", "%.0f", m.value(NOZZLE_SETPOINT)));
                    all.add(message("atelier/saule/impression/avancement", "%.2f", m.value(JOB_PROGRESS)));
                    all.add(message("atelier/saule/impression/restant", "%.0f", m.value(JOB_LEFT)));
                    all.add(message(
                            "atelier/saule/etat",
                            word(m, "prêt", "préchauffage", "impression", "pause", "terminé", "erreur")));
                    return all;
                });
    }

    /** Spanish names; pairs of numbers in a text. */
    private static Printer maple() {
        Random random = new Random(8);
        return new Printer(
                "maple",
                "Spanish names, numbers in a text",
                EnumSet.of(BED_ACTUAL, BED_SETPOINT, NOZZLE_ACTUAL, NOZZLE_SETPOINT, JOB_PROGRESS),
                ALL,
                m -> {
                    List<Message> all = new ArrayList<>(noise(m, random));
                    all.add(message(
                            "taller/arce/calor",
                            "cama=%.1f/%.0f boquilla=%.1f/%.0f",
                            m.value(BED_ACTUAL),
                            m.value(BED_SETPOINT),
                            m.value(NOZZLE_ACTUAL),
                            m.value(NOZZLE_SETPOINT)));
                    all.add(message(
                            "taller/arce/trabajo",
                            "{\"avance\":\"%.0f%%\",\"estado\":\"%s\"}",
                            100 * m.value(JOB_PROGRESS),
                            word(
                                    m,
                                    "libre",
                                    "calentando",
                                    "imprimiendo",
                                    "en pausa",
                                    "terminado",
                                    "fallo de boquilla")));
                    return all;
                });
    }

    /** A list of parts that are named inside; ISO 8601 durations. */
    private static Printer cedar() {
        return new Printer(
                "cedar",
                "a list of named parts, ISO 8601",
                EnumSet.of(
                        BED_ACTUAL,
                        BED_SETPOINT,
                        NOZZLE_ACTUAL,
                        NOZZLE_SETPOINT,
                        CHAMBER_ACTUAL,
                        JOB_PROGRESS,
                        JOB_LEFT,
                        JOB_ELAPSED),
                ALL,
                m -> List.of(
                        message(
                                "site/7/cedar/parts",
                                "{\"parts\":[{\"name\":\"print head\",\"t\":{\"v\":%.1f,\"goal\":%.0f},\"fan\":0.7},"
                                        + "{\"name\":\"print bed\",\"t\":{\"v\":%.1f,\"goal\":%.0f}},{\"name\":\"hood\",\"t\":{\"v\":%.1f}}]}",
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT),
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                m.value(CHAMBER_ACTUAL)),
                        message(
                                "site/7/cedar/order",
                                "{\"ratio\":%.4f,\"remaining\":\"PT%dM%dS\",\"running\":\"PT%dS\",\"stage\":\"%s\"}",
                                m.value(JOB_PROGRESS),
                                Math.round(m.value(JOB_LEFT)) / 60,
                                Math.round(m.value(JOB_LEFT)) % 60,
                                Math.round(m.value(JOB_ELAPSED)),
                                word(
                                        m,
                                        "NONE_READY",
                                        "HEAT_UP",
                                        "IN_PROGRESS",
                                        "USER_PAUSE",
                                        "SUCCESS",
                                        "ABNORMAL_FAULT"))));
    }

    /** Short names. */
    private static Printer oak() {
        Random random = new Random(9);
        return new Printer(
                "oak",
                "short names, a noisy broker",
                EnumSet.of(BED_ACTUAL, BED_SETPOINT, NOZZLE_ACTUAL, NOZZLE_SETPOINT, JOB_PROGRESS, JOB_DONE, JOB_TOTAL),
                ALL,
                m -> {
                    List<Message> all = new ArrayList<>(noise(m, random));
                    all.add(message(
                            "oak",
                            "{\"b_t\":%.1f,\"b_s\":%.0f,\"n_t\":%.1f,\"n_s\":%.0f,\"pr\":%.0f,\"ly\":%.0f,\"ly_n\":%.0f,\"st\":\"%s\",\"q\":%d}",
                            m.value(BED_ACTUAL),
                            m.value(BED_SETPOINT),
                            m.value(NOZZLE_ACTUAL),
                            m.value(NOZZLE_SETPOINT),
                            100 * m.value(JOB_PROGRESS),
                            m.value(JOB_DONE),
                            m.value(JOB_TOTAL),
                            word(m, "rdy", "heat", "print", "pause", "done", "err"),
                            m.second() % 11));
                    return all;
                });
    }

    /** Czech names; the numbers that belong together in lists of their own; a broker with another, resting printer. */
    private static Printer spruce() {
        return new Printer(
                "spruce",
                "Czech names, a second printer",
                EnumSet.of(BED_ACTUAL, BED_SETPOINT, NOZZLE_ACTUAL, NOZZLE_SETPOINT, JOB_PROGRESS, JOB_ELAPSED),
                ALL,
                m -> List.of(
                        message(
                                "dilna/smrk/teploty",
                                "{\"skutecne\":[%.1f,%.1f],\"cilove\":[%.1f,%.1f]}",
                                m.value(NOZZLE_ACTUAL),
                                m.value(BED_ACTUAL),
                                m.value(NOZZLE_SETPOINT),
                                m.value(BED_SETPOINT)),
                        message("dilna/smrk/postup", "%.1f", 100 * m.value(JOB_PROGRESS)),
                        message("dilna/smrk/uplynulo", "%.0f s", m.value(JOB_ELAPSED)),
                        message(
                                "dilna/smrk/stav",
                                word(m, "připraven", "nahřívá", "tiskne", "pozastaveno", "hotovo", "chyba 7: tryska")),
                        message("dilna/jedle/teploty", "{\"skutecne\":[%.1f,%.1f],\"cilove\":[0,0]}", 22.3, 21.9),
                        message("dilna/jedle/stav", "připraven")));
    }

    /** One line of words and numbers; only counts, no share. */
    private static Printer poplar() {
        Random random = new Random(10);
        return new Printer(
                "poplar",
                "a tab-separated line, layers",
                EnumSet.of(BED_ACTUAL, BED_SETPOINT, NOZZLE_ACTUAL, NOZZLE_SETPOINT, JOB_DONE, JOB_TOTAL, JOB_LEFT),
                ALL,
                m -> {
                    List<Message> all = new ArrayList<>(noise(m, random));
                    all.add(message(
                            "yard/poplar/telemetry",
                            "%s\t%.1f\t%.1f\t%.0f\t%.0f\t%.0f\t%.0f\t%.0f",
                            word(m, "standing by", "warm-up", "deposit", "break", "complete", "emergency"),
                            m.value(NOZZLE_ACTUAL),
                            m.value(BED_ACTUAL),
                            m.value(NOZZLE_SETPOINT),
                            m.value(BED_SETPOINT),
                            m.value(JOB_DONE),
                            m.value(JOB_TOTAL),
                            m.value(JOB_LEFT)));
                    return all;
                });
    }

    /** Italian names; degrees as text; words that are not in any list; a broker with much other traffic. */
    private static Printer juniper() {
        Random random = new Random(11);
        return new Printer(
                "juniper",
                "Italian names, codes for states",
                EnumSet.of(
                        BED_ACTUAL,
                        BED_SETPOINT,
                        NOZZLE_ACTUAL,
                        NOZZLE_SETPOINT,
                        CHAMBER_ACTUAL,
                        JOB_PROGRESS,
                        JOB_LEFT),
                ALL,
                m -> {
                    List<Message> all = new ArrayList<>(noise(m, random));
                    all.add(message(
                            "officina/ginepro",
                            "{\"piatto\":{\"letta\":\"%.1fC\",\"voluta\":\"%.0fC\"},\"ugello\":{\"letta\":\"%.1fC\",\"voluta\":\"%.0fC\"},"
                                    + "\"vano\":{\"letta\":\"%.1fC\"},\"lavoro\":{\"fatto\":%.3f,\"manca_min\":%.1f,\"cosa\":\"%s\"}}",
                            m.value(BED_ACTUAL),
                            m.value(BED_SETPOINT),
                            m.value(NOZZLE_ACTUAL),
                            m.value(NOZZLE_SETPOINT),
                            m.value(CHAMBER_ACTUAL),
                            m.value(JOB_PROGRESS),
                            m.value(JOB_LEFT) / 60,
                            word(m, "A0", "A1", "A2", "A3", "A4", "E1")));
                    return all;
                });
    }

    /** Key and value in lines of a text; targets that are reported only when they change. */
    private static Printer yew() {
        return new Printer(
                "yew",
                "key=value, targets told on change",
                EnumSet.of(BED_ACTUAL, BED_SETPOINT, NOZZLE_ACTUAL, NOZZLE_SETPOINT, JOB_DONE, JOB_TOTAL, JOB_ELAPSED),
                ALL,
                m -> {
                    List<Message> all = new ArrayList<>();
                    all.add(message(
                            "f/yew/tele",
                            "platen=%.1f\njet=%.1f\nlayer=%.0f\nlayers_total=%.0f\nspent=%.0f",
                            m.value(BED_ACTUAL),
                            m.value(NOZZLE_ACTUAL),
                            m.value(JOB_DONE),
                            m.value(JOB_TOTAL),
                            m.value(JOB_ELAPSED)));
                    if (m.second() == 0 || m.second() == 25 || m.second() == 1255) {
                        all.add(message("f/yew/goal/platen", "%.0f", m.value(BED_SETPOINT)));
                        all.add(message("f/yew/goal/jet", "%.0f", m.value(NOZZLE_SETPOINT)));
                    }
                    all.add(message(
                            "f/yew/status",
                            word(m, "Idle.", "Preparing: heat", "Job runs", "Suspended", "Job ended", "Fault: tip")));
                    return all;
                });
    }

    /** A weather station, a heated room, a washing machine, a computer. */
    static List<Message> noise(Moment m, Random random) {
        double day = Math.sin(m.second() / 400.0);
        return List.of(
                message("house/weather/temperature", "%.1f", 8 + 3 * day + random.nextDouble()),
                message("house/weather/humidity", "%.0f", 70 - 5 * day),
                message("house/weather/pressure", "%.1f", 1013 + day),
                message("house/weather/rain", "{\"rate\":%.1f,\"total\":%.1f}", 0.2, m.second() * 0.01),
                message(
                        "house/living/climate",
                        "{\"current\":%.1f,\"setpoint\":%.1f,\"mode\":\"heat\",\"battery\":%d}",
                        20.5 + day / 2,
                        m.second() < 800 ? 21.0 : 19.0,
                        90 - m.second() / 300),
                message("house/boiler/flow", "{\"temp\":%.1f,\"target\":%.0f}", 45 + 5 * day, 55.0),
                message(
                        "house/washer/program",
                        "{\"state\":\"%s\",\"remaining\":%d}",
                        m.second() < 1200 ? "running" : "finished",
                        Math.max(0, 120 - m.second() / 10)),
                message("house/meter/power", "%d", 300 + random.nextInt(900)),
                message(
                        "computer/den/load",
                        "{\"cpu\":%.2f,\"memory\":%.2f,\"uptime\":%d}",
                        random.nextDouble(),
                        0.6,
                        9000 + m.second()));
    }

    /** Every quantity with the permitted error of its readings, to allow for printers' rounding. */
    static final Map<Quantity, Double> TOLERANCES = Map.ofEntries(
            Map.entry(BED_ACTUAL, 1.5),
            Map.entry(BED_SETPOINT, 1.0),
            Map.entry(NOZZLE_ACTUAL, 3.0),
            Map.entry(NOZZLE_SETPOINT, 1.0),
            Map.entry(CHAMBER_ACTUAL, 1.5),
            Map.entry(CHAMBER_SETPOINT, 1.0),
            Map.entry(JOB_PROGRESS, 0.011),
            Map.entry(JOB_LEFT, 7.0),
            Map.entry(JOB_ELAPSED, 7.0),
            Map.entry(JOB_DONE, 0.5),
            Map.entry(JOB_TOTAL, 0.5));
}
