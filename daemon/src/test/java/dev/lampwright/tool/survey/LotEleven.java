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
import java.util.Random;
import java.util.Set;

/**
 * An eleventh lot: Korean, Turkish, Galician, Maltese, Czech; a topic for each flag, codes of a letter and a digit, a line of numbers with
 * the state among them, one at rest beside one at work.
 */
final class LotEleven {
    private LotEleven() {}

    /** All of them. */
    static List<Printer> all() {
        return List.of(loom(), heddle(), weft(), warp(), selvage(), shuttle(), tatting(), distaff());
    }

    private static int flag(Job.Moment m, PrinterState... states) {
        return Set.of(states).contains(m.state()) ? 1 : 0;
    }

    /** Korean; nested. */
    private static Printer loom() {
        return new Printer(
                "loom",
                "Korean, nested",
                heatAnd(CHAMBER_ACTUAL, JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> List.of(
                        message(
                                "작업실/베틀/온도",
                                "{\"베드\":{\"현재\":%.1f,\"목표\":%.0f},\"노즐\":{\"현재\":%.1f,\"목표\":%.0f},\"챔버\":{\"현재\":%.1f}}",
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT),
                                m.value(CHAMBER_ACTUAL)),
                        message(
                                "작업실/베틀/작업",
                                "{\"진행률\":%.1f,\"남은_초\":%.0f,\"상태\":\"%s\"}",
                                100 * m.value(JOB_PROGRESS),
                                m.value(JOB_LEFT),
                                word(m, "대기", "예열 중", "출력 중", "일시 정지", "완료", "오류: 노즐 막힘"))));
    }

    /** Kelvin; a topic for each flag. */
    private static Printer heddle() {
        return new Printer(
                "heddle",
                "kelvin, a topic for each flag",
                heatAnd(JOB_PROGRESS, JOB_ELAPSED),
                ALL,
                Job.HOT,
                m -> List.of(
                        message("hall4/heddle/bed/kelvin", "%.2f", m.value(BED_ACTUAL) + 273.15),
                        message("hall4/heddle/bed/kelvin_goal", "%.2f", kelvin(m.value(BED_SETPOINT))),
                        message("hall4/heddle/tip/kelvin", "%.2f", m.value(NOZZLE_ACTUAL) + 273.15),
                        message("hall4/heddle/tip/kelvin_goal", "%.2f", kelvin(m.value(NOZZLE_SETPOINT))),
                        message("hall4/heddle/job/fraction", "%.4f", m.value(JOB_PROGRESS)),
                        message("hall4/heddle/job/run_s", "%.0f", m.value(JOB_ELAPSED)),
                        message("hall4/heddle/flag/heatup", "%d", flag(m, PrinterState.WARMING)),
                        message("hall4/heddle/flag/printing", "%d", flag(m, PrinterState.PRINTING)),
                        message("hall4/heddle/flag/pause", "%d", flag(m, PrinterState.HELD)),
                        message("hall4/heddle/flag/complete", "%d", flag(m, PrinterState.DONE)),
                        message("hall4/heddle/flag/trouble", "%d", flag(m, PrinterState.FAULT))));
    }

    private static double kelvin(double celsius) {
        return celsius == 0 ? 0 : celsius + 273.15;
    }

    /** Turkish; key=value, a pair to a line; the time left in words. */
    private static Printer weft() {
        return new Printer(
                "weft", "Turkish, lines of key=value", heatAnd(JOB_PROGRESS, JOB_LEFT), ALL, Job.BED_FIRST, m -> {
                    long left = Math.round(m.value(JOB_LEFT));
                    return List.of(message(
                            "atölye/atkı",
                            "durum=%s\nyatak=%.1f/%.0f\nuç=%.1f/%.0f\nyüzde=%.1f\nkalan=%d dk %d sn",
                            word(m, "boşta", "ısıtıyor", "yazdırıyor", "duraklatıldı", "tamamlandı", "arıza 12"),
                            m.value(BED_ACTUAL),
                            m.value(BED_SETPOINT),
                            m.value(NOZZLE_ACTUAL),
                            m.value(NOZZLE_SETPOINT),
                            100 * m.value(JOB_PROGRESS),
                            left / 60,
                            left % 60));
                });
    }

    /** Codes of a letter and a digit; zones with a number, in any order; tenths, permille, minutes. */
    private static Printer warp() {
        Random random = new Random(11);
        return new Printer("warp", "codes, zones in any order, tenths", heatAnd(JOB_PROGRESS, JOB_LEFT), ALL, m -> {
            String bed = zone(2, m.value(BED_ACTUAL), m.value(BED_SETPOINT));
            String nozzle = zone(1, m.value(NOZZLE_ACTUAL), m.value(NOZZLE_SETPOINT));
            return List.of(
                    message("ln/77/zones", "[%s]", random.nextBoolean() ? bed + "," + nozzle : nozzle + "," + bed),
                    message(
                            "ln/77/cycle",
                            "{\"step\":\"%s\",\"permille\":%.0f,\"min_left\":%.1f,\"operator\":\"B\"}",
                            word(m, "S0", "S1", "S2", "S3", "S4", "S9"),
                            1000 * m.value(JOB_PROGRESS),
                            m.value(JOB_LEFT) / 60));
        });
    }

    private static String zone(int number, double actual, double target) {
        return String.format(Locale.ROOT, "{\"zone\":%d,\"act\":%.0f,\"nom\":%.0f}", number, 10 * actual, 10 * target);
    }

    /** Galician; one at rest beside it, both under a number. */
    private static Printer selvage() {
        List<Job.Moment> rest = Job.moments(Job.REST);
        return new Printer(
                "selvage", "Galician, one at rest beside it", heatAnd(JOB_PROGRESS, JOB_LEFT), ALL, Job.HOT, m -> {
                    List<Message> all = new ArrayList<>(selvage("03", rest.get(m.second() % rest.size())));
                    all.addAll(selvage("11", m));
                    return all;
                });
    }

    private static List<Message> selvage(String number, Job.Moment m) {
        return List.of(
                message(
                        "obradoiro/" + number + "/calor",
                        "{\"leito\":{\"agora\":%.1f,\"meta\":%.0f},\"bico\":{\"agora\":%.1f,\"meta\":%.0f}}",
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT)),
                message(
                        "obradoiro/" + number + "/traballo",
                        "{\"feito\":%.1f,\"resta\":%.0f,\"estado\":\"%s\"}",
                        100 * m.value(JOB_PROGRESS),
                        m.value(JOB_LEFT),
                        word(m, "libre", "quentando", "imprimindo", "detido", "rematado", "avaría no bico")));
    }

    /** A line of numbers; one of them is the state. */
    private static Printer shuttle() {
        return new Printer(
                "shuttle",
                "a line of numbers, the state among them",
                heatAnd(JOB_PROGRESS, JOB_DONE, JOB_TOTAL),
                ALL,
                Job.BED_FIRST,
                m -> List.of(message(
                        "box/shuttle",
                        "T;%.1f;%.0f;%.1f;%.0f;%.3f;%.0f;%.0f;%s",
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(JOB_PROGRESS),
                        m.value(JOB_DONE),
                        m.value(JOB_TOTAL),
                        word(m, "0", "1", "2", "3", "4", "8"))));
    }

    /** Maltese; lists of two; a job without trouble. */
    private static Printer tatting() {
        return new Printer(
                "tatting",
                "Maltese, no trouble",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                LotTen.UNTROUBLED,
                LotTen.PLAIN,
                m -> List.of(
                        message(
                                "ħanut/bizzilla/sħana",
                                "{\"sodda\":[%.1f,%.0f],\"żennuna\":[%.1f,%.0f]}",
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT)),
                        message(
                                "ħanut/bizzilla/xogħol",
                                "{\"mija\":%.1f,\"fadal\":\"%.1f min\",\"stat\":\"%s\"}",
                                100 * m.value(JOB_PROGRESS),
                                m.value(JOB_LEFT) / 60,
                                word(m, "liebes", "jisħon", "jistampa", "imwaqqaf", "lest", "ħsara"))));
    }

    /** Czech, at rest. */
    private static Printer distaff() {
        return new Printer(
                "distaff",
                "Czech, at rest",
                heatAnd(JOB_PROGRESS),
                EnumSet.of(PrinterState.IDLE),
                Job.REST,
                m -> List.of(message(
                        "dílna/přeslice",
                        "{\"stav\":\"připraven\",\"podložka\":{\"teplota\":%.1f,\"cíl\":%.0f},\"tryska\":{\"teplota\":%.1f,\"cíl\":%.0f},"
                                + "\"hotovo\":%.1f}",
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        100 * m.value(JOB_PROGRESS))));
    }
}
