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

import dev.lampwright.printer.PrinterState;
import dev.lampwright.tool.survey.Printer.Message;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * A tenth lot: Georgian, Ukrainian, Malay, Croatian, Thai, Azerbaijani; kelvin with its letter, a line of values with the state in it, a
 * list of words for the state, two units in turn on one topic, a job that is over and still reported, a job without trouble.
 */
final class LotTen {
    /** A job in which nothing goes wrong. */
    static final Job.Course PLAIN = new Job.Course(
            50,
            200,
            35,
            64,
            List.of(
                    new Job.Phase(PrinterState.IDLE, 30, false),
                    new Job.Phase(PrinterState.WARMING, 200, true),
                    new Job.Phase(PrinterState.PRINTING, 820, true),
                    new Job.Phase(PrinterState.DONE, 70, false),
                    new Job.Phase(PrinterState.IDLE, 50, false)));

    static final Set<PrinterState> UNTROUBLED =
            EnumSet.of(PrinterState.IDLE, PrinterState.WARMING, PrinterState.PRINTING, PrinterState.DONE);

    private LotTen() {}

    /** All of them. */
    static List<Printer> all() {
        return List.of(
                pulley(),
                cam(),
                sprocket(),
                ratchet(),
                pawl(),
                bellows(),
                crank(),
                flywheel(),
                governor(),
                escapement());
    }

    private static boolean is(Job.Moment m, PrinterState... states) {
        return Set.of(states).contains(m.state());
    }

    /** Georgian; a topic for each value. */
    private static Printer pulley() {
        return new Printer(
                "pulley",
                "Georgian, a topic a value",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> List.of(
                        message("სახელოსნო/ბორბალი/მაგიდა/ახლა", "%.1f", m.value(BED_ACTUAL)),
                        message("სახელოსნო/ბორბალი/მაგიდა/მიზანი", "%.0f", m.value(BED_SETPOINT)),
                        message("სახელოსნო/ბორბალი/საქშენი/ახლა", "%.1f", m.value(NOZZLE_ACTUAL)),
                        message("სახელოსნო/ბორბალი/საქშენი/მიზანი", "%.0f", m.value(NOZZLE_SETPOINT)),
                        message("სახელოსნო/ბორბალი/პროცენტი", "%.1f", 100 * m.value(JOB_PROGRESS)),
                        message("სახელოსნო/ბორბალი/დარჩა", "%.0f", m.value(JOB_LEFT)),
                        message(
                                "სახელოსნო/ბორბალი/მდგომარეობა",
                                word(
                                        m,
                                        "მზადაა",
                                        "ცხელდება",
                                        "ბეჭდავს",
                                        "შეჩერებულია",
                                        "დასრულდა",
                                        "შეცდომა: საქშენი გაჭედილია"))));
    }

    /** Ukrainian; key=value in one line, kelvin with its letter, the time left in words. */
    private static Printer cam() {
        return new Printer("cam", "Ukrainian, key=value, kelvin", heatAnd(JOB_PROGRESS, JOB_LEFT), ALL, Job.HOT, m -> {
            long left = Math.round(m.value(JOB_LEFT));
            return List.of(message(
                    "майстерня/кулачок",
                    "стіл=%.1fK стіл_ціль=%.1fK сопло=%.1fK сопло_ціль=%.1fK частка=%.0f‰ лишилось=%dхв%02dс стан=%s",
                    m.value(BED_ACTUAL) + 273.15,
                    kelvin(m.value(BED_SETPOINT)),
                    m.value(NOZZLE_ACTUAL) + 273.15,
                    kelvin(m.value(NOZZLE_SETPOINT)),
                    1000 * m.value(JOB_PROGRESS),
                    left / 60,
                    left % 60,
                    word(m, "очікує", "нагріває", "друкує", "пауза", "готово", "аварія")));
        });
    }

    private static double kelvin(double celsius) {
        return celsius == 0 ? 0 : celsius + 273.15;
    }

    /** Malay; one line of values, the state among them. */
    private static Printer sprocket() {
        return new Printer(
                "sprocket",
                "Malay, a line of values with the state",
                heatAnd(JOB_PROGRESS, JOB_ELAPSED),
                ALL,
                m -> List.of(message(
                        "bengkel/gegancu/baris",
                        "%d,%s,%.1f,%.0f,%.1f,%.0f,%.1f,%.0f",
                        m.second() + 9120,
                        word(m, "sedia", "memanas", "mencetak", "dijeda", "siap", "ralat"),
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        100 * m.value(JOB_PROGRESS),
                        m.value(JOB_ELAPSED))));
    }

    /** Codes for the state and for errors; tenths; the serial number in each topic. */
    private static Printer ratchet() {
        return new Printer(
                "ratchet",
                "codes, tenths, a serial number in topics",
                heatAnd(CHAMBER_ACTUAL, JOB_PROGRESS, JOB_LEFT),
                ALL,
                Job.BED_FIRST,
                m -> List.of(
                        message(
                                "dev/7f3a91c2/heat",
                                "{\"ch\":[{\"pv\":%.0f,\"sv\":%.0f},{\"pv\":%.0f,\"sv\":%.0f},{\"pv\":%.0f}]}",
                                10 * m.value(NOZZLE_ACTUAL),
                                10 * m.value(NOZZLE_SETPOINT),
                                10 * m.value(BED_ACTUAL),
                                10 * m.value(BED_SETPOINT),
                                10 * m.value(CHAMBER_ACTUAL)),
                        message(
                                "dev/7f3a91c2/job",
                                "{\"st\":%s,\"err\":\"%s\",\"done\":%.0f,\"rest\":%.0f,\"id\":4471}",
                                word(m, "10", "20", "30", "40", "50", "60"),
                                is(m, PrinterState.FAULT) ? "E214" : "E000",
                                1000 * m.value(JOB_PROGRESS),
                                m.value(JOB_LEFT)),
                        message(
                                "dev/7f3a91c2/net",
                                "{\"rssi\":-%d,\"up\":%d}",
                                48 + m.second() % 9,
                                88210 + m.second())));
    }

    /** A list of the words that hold. */
    private static Printer pawl() {
        return new Printer(
                "pawl",
                "a list of the words that hold",
                heatAnd(JOB_PROGRESS, JOB_DONE, JOB_TOTAL),
                ALL,
                m -> List.of(message(
                        "yard/pawl/now",
                        "{\"is\":[%s],\"bed\":{\"c\":%.1f,\"want\":%.0f},\"nozzle\":{\"c\":%.1f,\"want\":%.0f},"
                                + "\"layer\":{\"at\":%.0f,\"of\":%.0f},\"share\":%.4f}",
                        word(
                                m,
                                "\"online\"",
                                "\"online\",\"job\",\"heating\"",
                                "\"online\",\"job\",\"printing\"",
                                "\"online\",\"job\",\"paused\"",
                                "\"online\",\"finished\"",
                                "\"online\",\"job\",\"fault\""),
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        m.value(JOB_DONE),
                        m.value(JOB_TOTAL),
                        m.value(JOB_PROGRESS))));
    }

    /** Croatian; two units publish in turn on one topic, one of them at rest. */
    private static Printer bellows() {
        List<Job.Moment> rest = Job.moments(Job.REST);
        return new Printer(
                "bellows",
                "Croatian, two units on one topic",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                Job.HOT,
                m -> List.of(unit(4, rest.get(m.second() % rest.size())), unit(3, m)));
    }

    private static Message unit(int number, Job.Moment m) {
        return message(
                "radionica/pisači",
                "{\"jedinica\":%d,\"krevet\":%.1f,\"krevet_cilj\":%.0f,\"mlaznica\":%.1f,\"mlaznica_cilj\":%.0f,"
                        + "\"napredak\":%.1f,\"preostalo_min\":%.2f,\"stanje\":\"%s\"}",
                number,
                m.value(BED_ACTUAL),
                m.value(BED_SETPOINT),
                m.value(NOZZLE_ACTUAL),
                m.value(NOZZLE_SETPOINT),
                100 * m.value(JOB_PROGRESS),
                m.value(JOB_LEFT) / 60,
                word(m, "spreman", "grijanje", "ispis", "stanka", "gotovo", "kvar"));
    }

    /** Thai; nested. */
    private static Printer crank() {
        return new Printer(
                "crank",
                "Thai, nested",
                heatAnd(CHAMBER_ACTUAL, CHAMBER_SETPOINT, JOB_PROGRESS, JOB_LEFT),
                ALL,
                Job.BED_FIRST,
                m -> List.of(message(
                        "โรงงาน/ข้อเหวี่ยง",
                        "{\"อุณหภูมิ\":{\"แท่น\":{\"ปัจจุบัน\":%.1f,\"เป้าหมาย\":%.0f},\"หัวฉีด\":{\"ปัจจุบัน\":%.1f,\"เป้าหมาย\":%.0f},"
                                + "\"ห้อง\":{\"ปัจจุบัน\":%.1f,\"เป้าหมาย\":%.0f}},\"งาน\":{\"คืบหน้า\":%.1f,\"เหลือ\":\"%s\",\"สถานะ\":\"%s\"}}",
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        m.value(CHAMBER_ACTUAL),
                        m.value(CHAMBER_SETPOINT),
                        100 * m.value(JOB_PROGRESS),
                        clock(m.value(JOB_LEFT)),
                        word(m, "พร้อม", "กำลังอุ่น", "กำลังพิมพ์", "หยุดชั่วคราว", "เสร็จแล้ว", "ขัดข้อง"))));
    }

    /** English; what the job before was like is still reported. */
    private static Printer flywheel() {
        return new Printer("flywheel", "the job before is still reported", heatAnd(JOB_PROGRESS, JOB_LEFT), ALL, m -> {
            List<Message> all = new ArrayList<>();
            if (m.second() == 0) {
                all.add(message("barn/flywheel/last/outcome", "finished"));
                all.add(message("barn/flywheel/last/percent", "100"));
                all.add(message("barn/flywheel/last/seconds", "5214"));
                all.add(message("barn/flywheel/last/nozzle_max", "231.4"));
            }
            all.add(message("barn/flywheel/bed", "%.1f °C of %.0f °C", m.value(BED_ACTUAL), m.value(BED_SETPOINT)));
            all.add(message(
                    "barn/flywheel/nozzle", "%.1f °C of %.0f °C", m.value(NOZZLE_ACTUAL), m.value(NOZZLE_SETPOINT)));
            all.add(message("barn/flywheel/job/percent", "%.0f", 100 * m.value(JOB_PROGRESS)));
            all.add(message("barn/flywheel/job/seconds_to_go", "%.0f", m.value(JOB_LEFT)));
            all.add(message(
                    "barn/flywheel/doing",
                    word(m, "nothing", "heating up", "making", "dwelling", "through", "stuck: nozzle clogged")));
            return all;
        });
    }

    /** English, at rest; key=value with units. */
    private static Printer governor() {
        return new Printer(
                "governor",
                "at rest, key=value with units",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                EnumSet.of(PrinterState.IDLE),
                Job.REST,
                m -> List.of(
                        message(
                                "mill/governor/heat",
                                "bed=%.1fC bed_set=%.0fC nozzle=%.1fC nozzle_set=%.0fC",
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT)),
                        message(
                                "mill/governor/job",
                                "state=READY progress=%.1f%% left=%.0fs",
                                100 * m.value(JOB_PROGRESS),
                                m.value(JOB_LEFT))));
    }

    /** Azerbaijani; heaters in an order that changes, °F; a fault is a text; a job without trouble. */
    private static Printer escapement() {
        return new Printer(
                "escapement", "Azerbaijani, °F, no trouble", heatAnd(JOB_PROGRESS, JOB_LEFT), UNTROUBLED, PLAIN, m -> {
                    String bed = heater("masa", m.value(BED_ACTUAL), m.value(BED_SETPOINT));
                    String nozzle = heater("ucluq", m.value(NOZZLE_ACTUAL), m.value(NOZZLE_SETPOINT));
                    return List.of(
                            message(
                                    "emalatxana/lövbər/istilik",
                                    "{\"vahid\":\"°F\",\"siyahı\":[%s]}",
                                    m.second() % 3 == 0 ? bed + "," + nozzle : nozzle + "," + bed),
                            message(
                                    "emalatxana/lövbər/iş",
                                    "{\"faiz\":%.1f,\"qalıb_dəq\":%.1f,\"vəziyyət\":\"%s\",\"xəta\":\"%s\"}",
                                    100 * m.value(JOB_PROGRESS),
                                    m.value(JOB_LEFT) / 60,
                                    word(m, "gözləyir", "qızdırılır", "çap edir", "dayandırılıb", "bitdi", "çap edir"),
                                    is(m, PrinterState.FAULT) ? "ucluq tutulub" : ""));
                });
    }

    private static String heater(String name, double actual, double target) {
        return String.format(
                Locale.ROOT,
                "{\"ad\":\"%s\",\"indi\":%.1f,\"hədəf\":%.1f}",
                name,
                f(actual),
                target == 0 ? 0 : f(target));
    }
}
