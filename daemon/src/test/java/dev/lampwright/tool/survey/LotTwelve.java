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
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Function;

/**
 * A twelfth lot, by an author who does not know the survey's rules: Dutch, Polish, Japanese, Arabic, Norwegian, Serbian, Kazakh; a gateway's
 * envelope, a table with a header, flags that overlap, a word of bits, tenths on change only; much diagnostics, and neighbours of other kinds.
 */
final class LotTwelve {
    /** Two small jobs, one after the other; the second one has a fault. */
    static final Job.Course TWO_JOBS = new Job.Course(
            50,
            200,
            35,
            64,
            420,
            0,
            List.of(
                    new Job.Phase(PrinterState.IDLE, 30, false),
                    new Job.Phase(PrinterState.WARMING, 190, true),
                    new Job.Phase(PrinterState.PRINTING, 260, true),
                    new Job.Phase(PrinterState.HELD, 30, true),
                    new Job.Phase(PrinterState.PRINTING, 160, true),
                    new Job.Phase(PrinterState.DONE, 60, false),
                    new Job.Phase(PrinterState.IDLE, 40, false),
                    new Job.Phase(PrinterState.WARMING, 130, true),
                    new Job.Phase(PrinterState.PRINTING, 200, true),
                    new Job.Phase(PrinterState.FAULT, 25, true),
                    new Job.Phase(PrinterState.PRINTING, 220, true),
                    new Job.Phase(PrinterState.DONE, 50, false),
                    new Job.Phase(PrinterState.IDLE, 30, false)));

    /** A material that needs much heat; two pauses. */
    static final Job.Course TOUGH = new Job.Course(
            110,
            275,
            65,
            150,
            List.of(
                    new Job.Phase(PrinterState.IDLE, 20, false),
                    new Job.Phase(PrinterState.WARMING, 290, true),
                    new Job.Phase(PrinterState.PRINTING, 310, true),
                    new Job.Phase(PrinterState.HELD, 45, true),
                    new Job.Phase(PrinterState.PRINTING, 250, true),
                    new Job.Phase(PrinterState.HELD, 25, true),
                    new Job.Phase(PrinterState.FAULT, 30, true),
                    new Job.Phase(PrinterState.PRINTING, 340, true),
                    new Job.Phase(PrinterState.DONE, 80, false),
                    new Job.Phase(PrinterState.IDLE, 40, false)));

    private LotTwelve() {}

    /** All of them. */
    static List<Printer> all() {
        return List.of(
                bobbin(),
                treadle(),
                crumb(),
                proofer(),
                saggar(),
                poolish(),
                kiln(),
                banneton(),
                levain(),
                glaze(),
                reed(),
                slip(),
                batten(),
                bisque());
    }

    /** Only what differs from what was published a second ago. */
    static List<Message> onChange(List<Job.Moment> job, Job.Moment m, Function<Job.Moment, List<Message>> speaker) {
        List<Message> now = speaker.apply(m);
        if (m.second() == 0) {
            return now;
        }
        List<Message> before = speaker.apply(job.get(m.second() - 1));
        return now.stream().filter(message -> !before.contains(message)).toList();
    }

    /** What goes up and down on its own. */
    static double wave(Job.Moment m, double middle, double swing, double seconds) {
        return middle + swing * Math.sin(m.second() / seconds);
    }

    static double fahrenheit(double celsius) {
        return 1.8 * celsius + 32;
    }

    static double percent(Job.Moment m) {
        return 100 * m.value(JOB_PROGRESS);
    }

    static boolean is(Job.Moment m, PrinterState... states) {
        return Set.of(states).contains(m.state());
    }

    /** Where the head is while it prints, by axis; it is parked otherwise. */
    static double axis(Job.Moment m, int axis) {
        if (!is(m, PrinterState.PRINTING)) {
            return axis == 2 ? 0.2 * m.value(JOB_DONE) + 0.2 : 5;
        }
        return axis == 2 ? 0.2 * m.value(JOB_DONE) + 0.2 : 110 + 60 * Math.sin(m.second() * (1.3 + axis));
    }

    /** Dutch; what is measured and the job on two topics. */
    private static Printer bobbin() {
        return new Printer(
                "bobbin",
                "Dutch, two topics",
                heatAnd(CHAMBER_ACTUAL, JOB_PROGRESS, JOB_LEFT, JOB_DONE, JOB_TOTAL),
                ALL,
                m -> List.of(
                        message(
                                "werkplaats/klos/metingen",
                                "{\"printbed\":{\"gemeten\":%.1f,\"ingesteld\":%.0f},\"spuitmond\":{\"gemeten\":%.1f,\"ingesteld\":%.0f},"
                                        + "\"omkasting\":{\"gemeten\":%.1f},\"ventilator_rpm\":%.0f,\"voeding_V\":%.2f}",
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT),
                                m.value(CHAMBER_ACTUAL),
                                wave(m, 3400, 60, 9),
                                wave(m, 24.02, 0.05, 31)),
                        message(
                                "werkplaats/klos/opdracht",
                                "{\"bestand\":\"lampenkap_v3\",\"toestand\":\"%s\",\"laag\":%.0f,\"lagen\":%.0f,\"voortgang_pct\":%.1f,"
                                        + "\"resttijd\":\"%s\"}",
                                word(
                                        m,
                                        "stand-by",
                                        "opwarmen",
                                        "bezig met printen",
                                        "gepauzeerd",
                                        "klaar",
                                        "storing: spuitmond verstopt"),
                                m.value(JOB_DONE),
                                m.value(JOB_TOTAL),
                                percent(m),
                                clock(m.value(JOB_LEFT)))));
    }

    /** Fahrenheit, one topic for each value under a serial number; a material dryer on the same plant's topics. */
    private static Printer treadle() {
        return new Printer(
                "treadle",
                "Fahrenheit, a dryer beside it",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                Job.HOT,
                m -> List.of(
                        message("plant/mx-40718/bed/pv_f", "%.1f", fahrenheit(m.value(BED_ACTUAL))),
                        message("plant/mx-40718/bed/sv_f", "%.0f", fahrenheit(m.value(BED_SETPOINT))),
                        message("plant/mx-40718/nozzle/pv_f", "%.1f", fahrenheit(m.value(NOZZLE_ACTUAL))),
                        message("plant/mx-40718/nozzle/sv_f", "%.0f", fahrenheit(m.value(NOZZLE_SETPOINT))),
                        message("plant/mx-40718/job/permille", "%.0f", 1000 * m.value(JOB_PROGRESS)),
                        message("plant/mx-40718/job/min_to_go", "%.1f", m.value(JOB_LEFT) / 60),
                        message("plant/mx-40718/mode", word(m, "STBY", "HEAT", "RUN", "HOLD", "END", "ALARM")),
                        message("plant/mx-40718/sys/uptime_s", "%d", 181_220 + m.second()),
                        message("plant/mx-40718/sys/wifi_dbm", "%.0f", wave(m, -58, 4, 13)),
                        message("plant/mx-40718/sys/vin_mv", "%.0f", wave(m, 23_950, 60, 5)),
                        message("plant/dry-02/air/pv_f", "%.1f", wave(m, 150, 1.5, 40)),
                        message("plant/dry-02/air/sv_f", "150"),
                        message("plant/dry-02/mode", "RUN"),
                        message("plant/dry-02/sys/uptime_s", "%d", 40_771 + m.second())));
    }

    /** Polish; pairs with a decimal comma, in one line. */
    private static Printer crumb() {
        return new Printer(
                "crumb",
                "Polish, pairs with a decimal comma",
                heatAnd(JOB_PROGRESS, JOB_LEFT, JOB_DONE, JOB_TOTAL),
                ALL,
                Job.BED_FIRST,
                m -> List.of(message(
                        "warsztat/okruszek",
                        "stan=%s; stół=%s/%.0f; dysza=%s/%.0f; postęp=%s%%; warstwa=%.0f/%.0f; pozostało=%.0f s",
                        word(
                                m,
                                "bezczynna",
                                "nagrzewanie",
                                "drukowanie",
                                "wstrzymana",
                                "zakończono",
                                "awaria - zatkana dysza"),
                        comma(m.value(BED_ACTUAL)),
                        m.value(BED_SETPOINT),
                        comma(m.value(NOZZLE_ACTUAL)),
                        m.value(NOZZLE_SETPOINT),
                        comma(percent(m)),
                        m.value(JOB_DONE),
                        m.value(JOB_TOTAL),
                        m.value(JOB_LEFT))));
    }

    private static String comma(double value) {
        return String.format(Locale.ROOT, "%.1f", value).replace('.', ',');
    }

    /** A list of heaters that say what they are for; flags that overlap: a paused job is still a job. */
    private static Printer proofer() {
        return new Printer(
                "proofer",
                "a list of heaters, flags that overlap",
                heatAnd(CHAMBER_ACTUAL, CHAMBER_SETPOINT, JOB_PROGRESS, JOB_ELAPSED),
                ALL,
                TOUGH,
                m -> List.of(
                        message(
                                "proofer/heaters",
                                "[{\"id\":\"H0\",\"use\":\"nozzle\",\"temp\":%.1f,\"setpoint\":%.0f,\"duty\":%.2f},"
                                        + "{\"id\":\"H1\",\"use\":\"bed\",\"temp\":%.1f,\"setpoint\":%.0f,\"duty\":%.2f},"
                                        + "{\"id\":\"H2\",\"use\":\"chamber\",\"temp\":%.1f,\"setpoint\":%.0f,\"duty\":%.2f}]",
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT),
                                duty(m, 0.42),
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                duty(m, 0.61),
                                m.value(CHAMBER_ACTUAL),
                                m.value(CHAMBER_SETPOINT),
                                duty(m, 0.35)),
                        message(
                                "proofer/machine",
                                "{\"job_active\":%b,\"preheating\":%b,\"paused\":%b,\"finished\":%b,\"alarm\":%b,\"door_open\":false,"
                                        + "\"light\":true}",
                                is(
                                        m,
                                        PrinterState.WARMING,
                                        PrinterState.PRINTING,
                                        PrinterState.HELD,
                                        PrinterState.FAULT),
                                is(m, PrinterState.WARMING),
                                is(m, PrinterState.HELD),
                                is(m, PrinterState.DONE),
                                is(m, PrinterState.FAULT)),
                        message(
                                "proofer/job",
                                "{\"name\":\"bracket-left\",\"complete_pct\":%.1f,\"elapsed_s\":%.0f,\"filament_mm\":%.0f}",
                                percent(m),
                                m.value(JOB_ELAPSED),
                                4180 * m.value(JOB_PROGRESS))));
    }

    private static double duty(Job.Moment m, double middle) {
        return m.value(BED_SETPOINT) == 0 ? 0 : wave(m, middle, 0.08, 3);
    }

    /** Japanese; one flat object. */
    private static Printer saggar() {
        return new Printer(
                "saggar",
                "Japanese, flat",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> List.of(message(
                        "工房/造形機1号/状況",
                        "{\"稼働状態\":\"%s\",\"ファイル名\":\"花瓶\",\"ノズル温度\":%.1f,\"ノズル設定温度\":%.0f,\"ベッド温度\":%.1f,"
                                + "\"ベッド設定温度\":%.0f,\"進捗率\":%.1f,\"残り時間\":\"%s\",\"ファン回転数\":%.0f}",
                        word(m, "待機中", "予熱中", "印刷中", "一時停止中", "印刷完了", "異常停止(ノズル詰まり)"),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        percent(m),
                        clock(m.value(JOB_LEFT)),
                        wave(m, 2800, 40, 7))));
    }

    /** A table: its header once, and a row each second; after a job it is ready at once. */
    private static Printer poolish() {
        return new Printer(
                "poolish",
                "a table, its header once",
                heatAnd(CHAMBER_ACTUAL, JOB_PROGRESS, JOB_DONE, JOB_TOTAL),
                EnumSet.of(
                        PrinterState.IDLE,
                        PrinterState.WARMING,
                        PrinterState.PRINTING,
                        PrinterState.HELD,
                        PrinterState.FAULT),
                Job.BED_FIRST,
                m -> {
                    List<Message> all = new ArrayList<>();
                    if (m.second() == 0) {
                        all.add(message(
                                "bench3/table/header",
                                "uptime_s,rssi_dbm,hotend_c,hotend_target_c,plate_c,plate_target_c,enclosure_c,x_mm,y_mm,z_mm,fan_rpm,"
                                        + "layer,layer_count,percent,status"));
                    }
                    all.add(message(
                            "bench3/table/row",
                            "%d,%.0f,%.1f,%.0f,%.1f,%.0f,%.1f,%.2f,%.2f,%.2f,%.0f,%.0f,%.0f,%.1f,%s",
                            7_344 + m.second(),
                            wave(m, -66, 3, 11),
                            m.value(NOZZLE_ACTUAL),
                            m.value(NOZZLE_SETPOINT),
                            m.value(BED_ACTUAL),
                            m.value(BED_SETPOINT),
                            m.value(CHAMBER_ACTUAL),
                            axis(m, 0),
                            axis(m, 1),
                            axis(m, 2),
                            wave(m, 4100, 80, 6),
                            m.value(JOB_DONE),
                            m.value(JOB_TOTAL),
                            percent(m),
                            word(m, "ready", "heating", "printing", "paused", "ready", "fault")));
                    return all;
                });
    }

    /** Arabic; two jobs. */
    private static Printer kiln() {
        return new Printer(
                "kiln",
                "Arabic, two jobs",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                TWO_JOBS,
                m -> List.of(
                        message(
                                "الورشة/الطابعة/القراءات",
                                "{\"حرارة_السرير\":%.1f,\"هدف_السرير\":%.0f,\"حرارة_الفوهة\":%.1f,\"هدف_الفوهة\":%.0f,\"جهد_التغذية\":%.2f}",
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT),
                                wave(m, 24.1, 0.1, 17)),
                        message(
                                "الورشة/الطابعة/المهمة",
                                "{\"الحالة\":\"%s\",\"نسبة_الإنجاز\":%.1f,\"الوقت_المتبقي_بالثواني\":%.0f}",
                                word(m, "جاهزة", "تسخين", "طباعة", "متوقفة مؤقتًا", "اكتملت", "خطأ: انسداد الفوهة"),
                                percent(m),
                                m.value(JOB_LEFT))));
    }

    /** Tenths under short names, every two seconds; the state, the progress and the time only on change. */
    private static Printer banneton() {
        List<Job.Moment> job = Job.moments(Job.HOT);
        return new Printer(
                "banneton", "tenths, codes on change only", heatAnd(JOB_PROGRESS, JOB_LEFT), ALL, Job.HOT, m -> {
                    List<Message> all = new ArrayList<>(onChange(job, m, LotTwelve::bannetonsChanges));
                    if (m.second() % 2 == 0) {
                        all.add(message(
                                "b/7f3a/t",
                                "{\"n\":%.0f,\"nset\":%.0f,\"b\":%.0f,\"bset\":%.0f}",
                                10 * m.value(NOZZLE_ACTUAL),
                                10 * m.value(NOZZLE_SETPOINT),
                                10 * m.value(BED_ACTUAL),
                                10 * m.value(BED_SETPOINT)));
                    }
                    if (m.second() % 15 == 3) {
                        all.add(message(
                                "b/7f3a/hb",
                                "{\"up\":%d,\"mv\":%.0f,\"dbm\":%.0f,\"errs\":0,\"rpm\":%.0f,\"heap\":%.0f}",
                                12_345 + m.second(),
                                wave(m, 23_870, 40, 21),
                                wave(m, -61, 3, 17),
                                wave(m, 3120, 30, 9),
                                wave(m, 118_400, 900, 50)));
                    }
                    return all;
                });
    }

    private static List<Message> bannetonsChanges(Job.Moment m) {
        return List.of(
                message("b/7f3a/st", word(m, "1", "2", "3", "4", "5", "9")),
                message("b/7f3a/prog", "%.0f", 1000 * m.value(JOB_PROGRESS)),
                message("b/7f3a/left", "%.0f", m.value(JOB_LEFT)));
    }

    /** Norwegian; a topic for each value, with its unit; a coffee machine beside it. */
    private static Printer levain() {
        return new Printer(
                "levain",
                "Norwegian, a coffee machine beside it",
                heatAnd(JOB_PROGRESS, JOB_LEFT, JOB_ELAPSED),
                ALL,
                m -> List.of(
                        message("verksted/surdeig/byggeplate/målt", "%.1f °C", m.value(BED_ACTUAL)),
                        message("verksted/surdeig/byggeplate/ønsket", "%.0f °C", m.value(BED_SETPOINT)),
                        message("verksted/surdeig/dyse/målt", "%.1f °C", m.value(NOZZLE_ACTUAL)),
                        message("verksted/surdeig/dyse/ønsket", "%.0f °C", m.value(NOZZLE_SETPOINT)),
                        message("verksted/surdeig/utskrift/ferdig", "%.0f %%", percent(m)),
                        message("verksted/surdeig/utskrift/gjenstår", clock(m.value(JOB_LEFT))),
                        message("verksted/surdeig/utskrift/brukt", clock(m.value(JOB_ELAPSED))),
                        message(
                                "verksted/surdeig/tilstand",
                                word(
                                        m,
                                        "ledig",
                                        "varmer opp",
                                        "skriver ut",
                                        "satt på pause",
                                        "ferdig",
                                        "feil: tett dyse")),
                        message("verksted/kaffemaskin/kjele/målt", "%.1f °C", wave(m, 92.6, 1.2, 25)),
                        message("verksted/kaffemaskin/kjele/ønsket", "93 °C"),
                        message(
                                "verksted/kaffemaskin/tilstand",
                                m.second() % 400 > 350 ? "brygger" : m.second() % 400 > 330 ? "varmer opp" : "ledig")));
    }

    /** A gateway's envelope, deep; two nozzles, and the second one stays cold. */
    private static Printer glaze() {
        return new Printer(
                "glaze",
                "a gateway's envelope, two nozzles",
                heatAnd(CHAMBER_ACTUAL, JOB_PROGRESS, JOB_LEFT, JOB_ELAPSED),
                ALL,
                TOUGH,
                m -> List.of(message(
                        "gw/site-b/line-2/asset/0042",
                        "{\"seq\":%d,\"asset\":{\"sn\":\"GLZ-0042\",\"kind\":\"additive\"},\"data\":{\"thermal\":{"
                                + "\"tools\":[{\"idx\":0,\"deg\":{\"is\":%.1f,\"want\":%.0f}},{\"idx\":1,\"deg\":{\"is\":%.1f,\"want\":0}}],"
                                + "\"buildplate\":{\"deg\":{\"is\":%.1f,\"want\":%.0f}},\"enclosure\":{\"deg\":{\"is\":%.1f}}},"
                                + "\"process\":{\"code\":%s,\"text\":\"%s\",\"pct\":%.1f,"
                                + "\"seconds\":{\"spent\":%.0f,\"togo\":%.0f,\"planned\":900}},"
                                + "\"motion\":{\"x\":%.2f,\"y\":%.2f,\"z\":%.2f},"
                                + "\"diag\":{\"uptime\":%d,\"rssi\":%.0f,\"psu_v\":%.2f,\"fan_rpm\":%.0f}}}",
                        50_210 + m.second(),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        wave(m, 24.5, 0.6, 60),
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(CHAMBER_ACTUAL),
                        word(m, "10", "15", "20", "25", "30", "90"),
                        word(m, "READY", "PREHEAT", "BUILDING", "ON HOLD", "BUILD COMPLETE", "FAULTED"),
                        percent(m),
                        m.value(JOB_ELAPSED),
                        m.value(JOB_LEFT),
                        axis(m, 0),
                        axis(m, 1),
                        axis(m, 2),
                        94_001 + m.second(),
                        wave(m, -49, 2, 8),
                        wave(m, 47.9, 0.1, 19),
                        wave(m, 5200, 90, 4))));
    }

    /** Serbian, in Cyrillic; a job that is given up. */
    private static Printer reed() {
        return new Printer(
                "reed",
                "Serbian, a job given up",
                heatAnd(CHAMBER_ACTUAL, JOB_PROGRESS, JOB_DONE, JOB_TOTAL),
                EnumSet.of(
                        PrinterState.IDLE,
                        PrinterState.WARMING,
                        PrinterState.PRINTING,
                        PrinterState.HELD,
                        PrinterState.STOPPED,
                        PrinterState.FAULT),
                Job.GIVEN_UP,
                m -> List.of(message(
                        "радионица/трска/извештај",
                        "{\"стање\":\"%s\",\"подлога\":{\"тренутно\":%.1f,\"задато\":%.0f},\"млазница\":{\"тренутно\":%.1f,\"задато\":%.0f},"
                                + "\"комора\":{\"тренутно\":%.1f},\"урађено_посто\":%.1f,\"слој\":%.0f,\"укупно_слојева\":%.0f}",
                        is(m, PrinterState.STOPPED)
                                ? "отказано"
                                : word(
                                        m,
                                        "спреман",
                                        "загревање",
                                        "штампање",
                                        "паузирано",
                                        "завршено",
                                        "квар: запушена млазница"),
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        m.value(CHAMBER_ACTUAL),
                        percent(m),
                        m.value(JOB_DONE),
                        m.value(JOB_TOTAL))));
    }

    /** At rest; a few lines that a person can read. */
    private static Printer slip() {
        return new Printer(
                "slip",
                "lines to be read, at rest",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                EnumSet.of(PrinterState.IDLE),
                Job.REST,
                m -> List.of(message(
                        "shed/slip/report",
                        "Status: Ready to print\nNozzle: %.1f C, target %.0f C\nBed: %.1f C, target %.0f C\nProgress: %.0f %%\n"
                                + "Time left: %s\nUp since: %d s\nSignal: %.0f dBm",
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        percent(m),
                        clock(m.value(JOB_LEFT)),
                        611 + m.second(),
                        wave(m, -70, 2, 14))));
    }

    /** Kazakh; flat. */
    private static Printer batten() {
        return new Printer(
                "batten",
                "Kazakh, flat",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                Job.HOT,
                m -> List.of(message(
                        "шеберхана/принтер-2",
                        "{\"күйі\":\"%s\",\"үстел_температурасы\":%.1f,\"үстел_мақсаты\":%.0f,\"саптама_температурасы\":%.1f,"
                                + "\"саптама_мақсаты\":%.0f,\"орындалды_пайыз\":%.1f,\"қалған_уақыт_с\":%.0f,\"кернеу_В\":%.1f}",
                        word(
                                m,
                                "күтуде",
                                "қыздыруда",
                                "басып шығаруда",
                                "кідіртілді",
                                "аяқталды",
                                "қате: саптама бітеліп қалды"),
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        percent(m),
                        m.value(JOB_LEFT),
                        wave(m, 23.9, 0.2, 12))));
    }

    /** Kelvin, a word of bits for the state; what a printer that is gone once left on the broker; a compressor. */
    private static Printer bisque() {
        return new Printer(
                "bisque",
                "kelvin, a word of bits, leftovers",
                heatAnd(JOB_PROGRESS, JOB_ELAPSED),
                ALL,
                Job.BED_FIRST,
                m -> {
                    List<Message> all = new ArrayList<>(m.second() == 0 ? bisquesLeftovers() : List.of());
                    all.addAll(List.of(
                            message("bench/9/hotend_K", "%.1f", m.value(NOZZLE_ACTUAL) + 273.15),
                            message("bench/9/hotend_ref_K", "%.2f", m.value(NOZZLE_SETPOINT) + 273.15),
                            message("bench/9/bed_K", "%.1f", m.value(BED_ACTUAL) + 273.15),
                            message("bench/9/bed_ref_K", "%.2f", m.value(BED_SETPOINT) + 273.15),
                            message("bench/9/progress", "%.3f", m.value(JOB_PROGRESS)),
                            message("bench/9/runtime_s", "%.0f", m.value(JOB_ELAPSED)),
                            message("bench/9/status_word", word(m, "1", "7", "5", "13", "17", "37")),
                            message("bench/compressor/pressure_kPa", "%.0f", wave(m, 690, 70, 55)),
                            message("bench/compressor/status_word", Math.cos(m.second() / 55.0) > 0 ? "3" : "1")));
                    return all;
                });
    }

    private static List<Message> bisquesLeftovers() {
        return List.of(
                message("bench/4/hotend_K", "488.2"),
                message("bench/4/hotend_ref_K", "488.15"),
                message("bench/4/bed_K", "333.0"),
                message("bench/4/bed_ref_K", "333.15"),
                message("bench/4/progress", "0.871"),
                message("bench/4/runtime_s", "20114"),
                message("bench/4/status_word", "5"));
    }
}
