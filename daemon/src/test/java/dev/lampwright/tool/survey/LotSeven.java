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
import static dev.lampwright.tool.survey.Printers.f;
import static dev.lampwright.tool.survey.Printers.message;
import static dev.lampwright.tool.survey.Printers.word;

import dev.lampwright.printer.PrinterState;
import dev.lampwright.tool.survey.Printer.Message;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;

/** A third lot: Estonian, Icelandic, Latvian; rows in any order, hundredths, milliseconds, flags next to a word, a slow broker. */
final class LotSeven {
    private LotSeven() {}

    /** All of them. */
    static List<Printer> all() {
        return List.of(
                tamm(), birki(), ozols(), pera(), sosna(), acero(), corona(), halo(), nimbus(), cirrus(), stratus());
    }

    private static boolean is(Job.Moment m, PrinterState... states) {
        return Set.of(states).contains(m.state());
    }

    /** Estonian, which is not in any list of words; a verbose state. */
    private static Printer tamm() {
        return new Printer(
                "tamm",
                "Estonian, a topic a value",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> List.of(
                        message("töökoda/tamm/laud", "%.1f", m.value(BED_ACTUAL)),
                        message("töökoda/tamm/laud_siht", "%.0f", m.value(BED_SETPOINT)),
                        message("töökoda/tamm/düüs", "%.1f", m.value(NOZZLE_ACTUAL)),
                        message("töökoda/tamm/düüs_siht", "%.0f", m.value(NOZZLE_SETPOINT)),
                        message("töökoda/tamm/valmis", "%.2f", 100 * m.value(JOB_PROGRESS)),
                        message("töökoda/tamm/jäänud", "%.0f", m.value(JOB_LEFT)),
                        message(
                                "töökoda/tamm/olek",
                                word(
                                        m,
                                        "ootel",
                                        "soojeneb",
                                        "prindib",
                                        "peatatud",
                                        "lõpetatud",
                                        "rike: düüs ummistunud"))));
    }

    /** Icelandic; rows in any order. */
    private static Printer birki() {
        return new Printer(
                "birki",
                "Icelandic, rows in any order",
                heatAnd(CHAMBER_ACTUAL, CHAMBER_SETPOINT, JOB_DONE, JOB_TOTAL),
                ALL,
                Job.HOT,
                m -> {
                    List<String> rows = new ArrayList<>(List.of(
                            row("plata", m.value(BED_ACTUAL), m.value(BED_SETPOINT)),
                            row("stútur", m.value(NOZZLE_ACTUAL), m.value(NOZZLE_SETPOINT)),
                            row("hólf", m.value(CHAMBER_ACTUAL), m.value(CHAMBER_SETPOINT))));
                    Collections.shuffle(rows, new Random(m.second() * 3L));
                    return List.of(
                            message("verk/birki/hiti", "{\"hitarar\":%s}", rows),
                            message(
                                    "verk/birki/prentun",
                                    "{\"lag\":%.0f,\"lög\":%.0f,\"staða\":\"%s\"}",
                                    m.value(JOB_DONE),
                                    m.value(JOB_TOTAL),
                                    word(m, "laus", "hitar", "prentar", "hlé", "búið", "bilun")));
                });
    }

    private static String row(String name, double actual, double target) {
        return String.format(Locale.ROOT, "[\"%s\",%.1f,%.0f]", name, actual, target);
    }

    /** Latvian; a code for the state, and a code for the fault. */
    private static Printer ozols() {
        return new Printer(
                "ozols",
                "Latvian, two codes",
                heatAnd(JOB_PROGRESS, JOB_ELAPSED),
                ALL,
                m -> List.of(message(
                        "darbnīca/ozols",
                        "{\"galds\":[%.1f,%.0f],\"sprausla\":[%.1f,%.0f],\"izpilde\":%.3f,\"ilgums\":%.0f,\"režīms\":%s,\"alarm\":%s}",
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        m.value(JOB_PROGRESS),
                        m.value(JOB_ELAPSED),
                        word(m, "0", "1", "2", "3", "0", "2"),
                        is(m, PrinterState.FAULT) ? "\"E17\"" : "null")));
    }

    /** Italian; hundredths of a degree; milliseconds. */
    private static Printer pera() {
        return new Printer(
                "pera",
                "Italian, hundredths, milliseconds",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> List.of(
                        message("laboratorio/pera/piatto/attuale", "%.0f", 100 * m.value(BED_ACTUAL)),
                        message("laboratorio/pera/piatto/obiettivo", "%.0f", 100 * m.value(BED_SETPOINT)),
                        message("laboratorio/pera/ugello/attuale", "%.0f", 100 * m.value(NOZZLE_ACTUAL)),
                        message("laboratorio/pera/ugello/obiettivo", "%.0f", 100 * m.value(NOZZLE_SETPOINT)),
                        message("laboratorio/pera/avanzamento", "%.4f", m.value(JOB_PROGRESS)),
                        message("laboratorio/pera/manca_ms", "%.0f", 1000 * m.value(JOB_LEFT)),
                        message(
                                "laboratorio/pera/stato",
                                word(m, "pronto", "riscaldamento", "stampa", "pausa", "finito", "errore estrusore"))));
    }

    /** Polish; a word for the state without a pause, and flags next to it. */
    private static Printer sosna() {
        return new Printer(
                "sosna",
                "Polish, flags beside a word",
                heatAnd(JOB_PROGRESS),
                ALL,
                Job.HOT,
                m -> List.of(message(
                        "hala/sosna/raport",
                        "{\"stol\":{\"jest\":%.1f,\"cel\":%.0f},\"dysza\":{\"jest\":%.1f,\"cel\":%.0f},\"postep\":%.0f,"
                                + "\"stan\":\"%s\",\"paused\":%s,\"blad\":%s}",
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        100 * m.value(JOB_PROGRESS),
                        word(m, "gotowy", "nagrzewanie", "drukowanie", "drukowanie", "gotowe", "drukowanie"),
                        is(m, PrinterState.HELD),
                        is(m, PrinterState.FAULT))));
    }

    /** Spanish; key: value lines; Fahrenheit named in a key. */
    private static Printer acero() {
        return new Printer(
                "acero",
                "Spanish, lines of key: value, °F",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> List.of(message(
                        "taller/acero/linea",
                        "estado: %s\ncama_f: %.0f\ncama_objetivo_f: %.0f\nboquilla_f: %.0f\nboquilla_objetivo_f: %.0f\navance: %.0f\nrestante: %.0f",
                        word(m, "libre", "calentando", "imprimiendo", "pausado", "terminado", "fallo"),
                        f(m.value(BED_ACTUAL)),
                        m.value(BED_SETPOINT) == 0 ? 32 : f(m.value(BED_SETPOINT)),
                        f(m.value(NOZZLE_ACTUAL)),
                        m.value(NOZZLE_SETPOINT) == 0 ? 32 : f(m.value(NOZZLE_SETPOINT)),
                        100 * m.value(JOB_PROGRESS),
                        m.value(JOB_LEFT))));
    }

    /** Nothing but short names; the state is one letter. */
    private static Printer corona() {
        return new Printer(
                "corona",
                "letters for names and state",
                heatAnd(CHAMBER_ACTUAL, CHAMBER_SETPOINT, JOB_PROGRESS),
                ALL,
                m -> List.of(message(
                        "z9",
                        "{\"a\":[%.1f,%.1f,%.1f],\"s\":[%.0f,%.0f,%.0f],\"q\":%.1f,\"m\":\"%s\"}",
                        m.value(CHAMBER_ACTUAL),
                        m.value(NOZZLE_ACTUAL),
                        m.value(BED_ACTUAL),
                        m.value(CHAMBER_SETPOINT),
                        m.value(NOZZLE_SETPOINT),
                        m.value(BED_SETPOINT),
                        100 * m.value(JOB_PROGRESS),
                        word(m, "i", "h", "p", "w", "d", "x"))));
    }

    /** All in one message; the layers as text. */
    private static Printer halo() {
        return new Printer(
                "halo",
                "layers as text",
                heatAnd(JOB_PROGRESS, JOB_LEFT, JOB_DONE, JOB_TOTAL),
                ALL,
                m -> List.of(message(
                        "kitchen/halo",
                        "{\"bed\":{\"temp\":%.1f,\"target\":%.0f},\"hotend\":{\"temp\":%.1f,\"target\":%.0f},"
                                + "\"job\":{\"layer\":\"%.0f / %.0f\",\"percent\":%.0f,\"eta\":\"%.1f min\"},\"state\":\"%s\"}",
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        m.value(JOB_DONE),
                        m.value(JOB_TOTAL),
                        100 * m.value(JOB_PROGRESS),
                        m.value(JOB_LEFT) / 60,
                        word(m, "idle", "heating", "printing", "paused", "finished", "error"))));
    }

    /** Flags in a list of two, in a separate message; no word at all. */
    private static Printer nimbus() {
        return new Printer(
                "nimbus",
                "flags in an object, 1 and 0",
                heatAnd(JOB_PROGRESS, JOB_ELAPSED),
                ALL,
                Job.HOT,
                m -> List.of(
                        message(
                                "bedroom/nimbus/t",
                                "%.1f,%.0f,%.1f,%.0f",
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT)),
                        message("bedroom/nimbus/progress", "%.1f", 100 * m.value(JOB_PROGRESS)),
                        message("bedroom/nimbus/elapsed", "%.0f", m.value(JOB_ELAPSED)),
                        message(
                                "bedroom/nimbus/flags",
                                "{\"operational\":1,\"printing\":%d,\"paused\":%d,\"error\":%d,\"ready\":%d}",
                                is(m, PrinterState.WARMING, PrinterState.PRINTING) ? 1 : 0,
                                is(m, PrinterState.HELD) ? 1 : 0,
                                is(m, PrinterState.FAULT) ? 1 : 0,
                                is(m, PrinterState.IDLE, PrinterState.DONE) ? 1 : 0)));
    }

    /** Two printers in one list, each with its own heaters; the other one rests. */
    private static Printer cirrus() {
        return new Printer(
                "cirrus",
                "two in one list",
                heatAnd(JOB_PROGRESS),
                ALL,
                m -> List.of(message(
                        "fleet/all",
                        "{\"printers\":[{\"id\":\"stilus\",\"bed\":21.%d,\"bed_set\":0,\"tip\":22.%d,\"tip_set\":0,\"pct\":0,\"mode\":\"idle\"},"
                                + "{\"id\":\"cirrus\",\"bed\":%.1f,\"bed_set\":%.0f,\"tip\":%.1f,\"tip_set\":%.0f,\"pct\":%.1f,\"mode\":\"%s\"}]}",
                        m.second() % 5,
                        m.second() % 3,
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        100 * m.value(JOB_PROGRESS),
                        word(m, "idle", "heating", "printing", "paused", "done", "fault"))));
    }

    /** An old retained state next to the live one; a weather station in between. */
    private static Printer stratus() {
        Random random = new Random(5);
        return new Printer("stratus", "old values kept, a house", heatAnd(JOB_PROGRESS, JOB_LEFT), ALL, m -> {
            List<Message> all = new ArrayList<>(Printers.noise(m, random));
            if (m.second() == 0) {
                all.add(message("garden/old/state", "printing"));
                all.add(message("garden/old/bed/temp", "58.2"));
                all.add(message("garden/old/nozzle/temp", "209.0"));
            }
            all.add(message("garden/stratus/bed/temp", "%.1f", m.value(BED_ACTUAL)));
            all.add(message("garden/stratus/bed/target", "%.0f", m.value(BED_SETPOINT)));
            all.add(message("garden/stratus/nozzle/temp", "%.1f", m.value(NOZZLE_ACTUAL)));
            all.add(message("garden/stratus/nozzle/target", "%.0f", m.value(NOZZLE_SETPOINT)));
            all.add(message("garden/stratus/progress", "%.1f %%", 100 * m.value(JOB_PROGRESS)));
            all.add(message("garden/stratus/left", "PT%.0fS", m.value(JOB_LEFT)));
            all.add(message(
                    "garden/stratus/state",
                    word(m, "Ready", "Preheating", "Printing", "Pause", "Complete", "ERROR 5")));
            return all;
        });
    }
}
