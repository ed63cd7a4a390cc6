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
import static dev.lampwright.tool.survey.LotTwelve.axis;
import static dev.lampwright.tool.survey.LotTwelve.fahrenheit;
import static dev.lampwright.tool.survey.LotTwelve.is;
import static dev.lampwright.tool.survey.LotTwelve.onChange;
import static dev.lampwright.tool.survey.LotTwelve.percent;
import static dev.lampwright.tool.survey.LotTwelve.wave;
import static dev.lampwright.tool.survey.Printers.ALL;
import static dev.lampwright.tool.survey.Printers.clock;
import static dev.lampwright.tool.survey.Printers.message;
import static dev.lampwright.tool.survey.Printers.word;

import dev.lampwright.printer.PrinterState;
import dev.lampwright.tool.survey.Printer.Message;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;

/**
 * A thirteenth lot, by the author of the twelfth, and like it without knowledge of the survey's rules: Portuguese, Swedish, Hebrew, Bulgarian,
 * Slovak, Mongolian, Bengali; registers, events, a list of flags, targets that are absent when off, a fleet, values in small objects.
 */
final class LotThirteen {
    private LotThirteen() {}

    /** All of them. */
    static List<Printer> all() {
        return List.of(
                skein(),
                twill(),
                brioche(),
                raku(),
                engobe(),
                damask(),
                couche(),
                strudel(),
                trivet(),
                celadon(),
                peel(),
                crock(),
                carder(),
                majolica());
    }

    /** Portuguese; a list of named measures, each with its unit. */
    private static Printer skein() {
        return new Printer(
                "skein",
                "Portuguese, a list of measures",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> List.of(
                        message(
                                "oficina/meada/medidas",
                                "[{\"grandeza\":\"temperatura do bico\",\"valor\":%.1f,\"unidade\":\"°C\"},"
                                        + "{\"grandeza\":\"temperatura alvo do bico\",\"valor\":%.0f,\"unidade\":\"°C\"},"
                                        + "{\"grandeza\":\"temperatura da mesa\",\"valor\":%.1f,\"unidade\":\"°C\"},"
                                        + "{\"grandeza\":\"temperatura alvo da mesa\",\"valor\":%.0f,\"unidade\":\"°C\"},"
                                        + "{\"grandeza\":\"progresso\",\"valor\":%.1f,\"unidade\":\"%%\"},"
                                        + "{\"grandeza\":\"tempo restante\",\"valor\":%.2f,\"unidade\":\"min\"},"
                                        + "{\"grandeza\":\"sinal\",\"valor\":%.0f,\"unidade\":\"dBm\"}]",
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT),
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                percent(m),
                                m.value(JOB_LEFT) / 60,
                                wave(m, -63, 3, 10)),
                        message(
                                "oficina/meada/estado",
                                word(
                                        m,
                                        "disponível",
                                        "aquecendo",
                                        "imprimindo",
                                        "em pausa",
                                        "concluído",
                                        "falha: bico entupido"))));
    }

    /** A list of the flags that are up, in one text; Fahrenheit, and 0 when a heater is off. */
    private static Printer twill() {
        return new Printer(
                "twill",
                "a list of flags, Fahrenheit",
                heatAnd(CHAMBER_ACTUAL, JOB_PROGRESS, JOB_LEFT),
                ALL,
                LotTwelve.TOUGH,
                m -> List.of(
                        message(
                                "hall-c/twill/heat",
                                "{\"nozzle\":{\"degF\":%.1f,\"targetF\":%.0f},\"bed\":{\"degF\":%.1f,\"targetF\":%.0f},\"cabinet\":{\"degF\":%.1f}}",
                                fahrenheit(m.value(NOZZLE_ACTUAL)),
                                fahrenheitOrOff(m.value(NOZZLE_SETPOINT)),
                                fahrenheit(m.value(BED_ACTUAL)),
                                fahrenheitOrOff(m.value(BED_SETPOINT)),
                                fahrenheit(m.value(CHAMBER_ACTUAL))),
                        message(
                                "hall-c/twill/flags",
                                word(
                                        m,
                                        "online",
                                        "online,job,preheat",
                                        "online,job",
                                        "online,job,pause",
                                        "online,complete",
                                        "online,job,error")),
                        message("hall-c/twill/pct", "%.1f", percent(m)),
                        message("hall-c/twill/time_left", clock(m.value(JOB_LEFT))),
                        message("hall-c/twill/z_mm", "%.2f", axis(m, 2)),
                        message("hall-c/twill/volts", "%.2f", wave(m, 36, 0.1, 18))));
    }

    private static double fahrenheitOrOff(double celsius) {
        return celsius == 0 ? 0 : fahrenheit(celsius);
    }

    /** Swedish; a topic for each value, on change only; the room's thermostat on the same topics. */
    private static Printer brioche() {
        List<Job.Moment> job = Job.moments(Job.USUAL);
        return new Printer(
                "brioche",
                "Swedish, on change, a thermostat",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> onChange(job, m, LotThirteen::briochesValues));
    }

    private static List<Message> briochesValues(Job.Moment m) {
        return List.of(
                message("verkstan/brioche/bädd/ärvärde", "%.1f", m.value(BED_ACTUAL)),
                message("verkstan/brioche/bädd/börvärde", "%.0f", m.value(BED_SETPOINT)),
                message("verkstan/brioche/munstycke/ärvärde", "%.1f", m.value(NOZZLE_ACTUAL)),
                message("verkstan/brioche/munstycke/börvärde", "%.0f", m.value(NOZZLE_SETPOINT)),
                message("verkstan/brioche/utskrift/procent", "%.0f", percent(m)),
                message("verkstan/brioche/utskrift/minuter_kvar", "%.1f", m.value(JOB_LEFT) / 60),
                message(
                        "verkstan/brioche/läge",
                        word(m, "vilar", "värmer upp", "skriver ut", "pausad", "klar", "fel: igensatt munstycke")),
                message("verkstan/rum/ärvärde", "%.1f", wave(m, 20.4, 0.4, 130)),
                message("verkstan/rum/börvärde", m.second() < 900 ? "21" : "19"),
                message("verkstan/rum/läge", wave(m, 0, 1, 130) < 0 ? "värmer" : "vilar"));
    }

    /** Registers of a gateway, by number: tenths, permille, a code. */
    private static Printer raku() {
        return new Printer(
                "raku",
                "registers by number, tenths",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                Job.HOT,
                m -> List.of(message(
                        "gw1/unit/17/registers",
                        "{\"100\":%s,\"110\":%.0f,\"111\":%.0f,\"120\":%.0f,\"121\":%.0f,\"130\":%.0f,\"131\":%.0f,"
                                + "\"140\":%.0f,\"141\":%.0f,\"199\":%d}",
                        word(m, "0", "2", "4", "6", "8", "16"),
                        10 * m.value(NOZZLE_ACTUAL),
                        10 * m.value(NOZZLE_SETPOINT),
                        10 * m.value(BED_ACTUAL),
                        10 * m.value(BED_SETPOINT),
                        1000 * m.value(JOB_PROGRESS),
                        m.value(JOB_LEFT),
                        wave(m, 2398, 6, 15),
                        wave(m, 3650, 45, 5),
                        m.second() % 65_536)));
    }

    /** Hebrew; nested. */
    private static Printer engobe() {
        return new Printer(
                "engobe",
                "Hebrew, nested",
                heatAnd(CHAMBER_ACTUAL, CHAMBER_SETPOINT, JOB_PROGRESS, JOB_LEFT),
                ALL,
                Job.BED_FIRST,
                m -> List.of(message(
                        "סדנה/מדפסת-2/דיווח",
                        "{\"מצב\":\"%s\",\"מיטה\":{\"נוכחי\":%.1f,\"יעד\":%.0f},\"פיה\":{\"נוכחי\":%.1f,\"יעד\":%.0f},"
                                + "\"תא\":{\"נוכחי\":%.1f,\"יעד\":%.0f},\"אחוז_ביצוע\":%.1f,\"זמן_נותר\":\"%s\"}",
                        word(m, "פנויה", "מתחממת", "מדפיסה", "מושהית", "הסתיים", "תקלה: פיה סתומה"),
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        m.value(CHAMBER_ACTUAL),
                        m.value(CHAMBER_SETPOINT),
                        percent(m),
                        clock(m.value(JOB_LEFT)))));
    }

    /** The state in events, when they happen; a line of words and numbers for the heat, two nozzles. */
    private static Printer damask() {
        List<Job.Moment> job = Job.moments(LotTwelve.TWO_JOBS);
        return new Printer(
                "damask",
                "events, a line with two nozzles",
                heatAnd(JOB_PROGRESS, JOB_ELAPSED),
                ALL,
                LotTwelve.TWO_JOBS,
                m -> {
                    List<Message> all = new ArrayList<>();
                    Job.Moment before = job.get(Math.max(0, m.second() - 1));
                    if (m.second() == 0 || before.state() != m.state()) {
                        all.add(message(
                                "damask/event",
                                word(
                                        m,
                                        m.second() == 0 ? "powered up" : "bed cleared",
                                        "heat-up begun",
                                        before.state() == PrinterState.WARMING ? "print begun" : "print resumed",
                                        "print paused",
                                        "print finished",
                                        "alarm: left nozzle blocked")));
                    }
                    all.add(message(
                            "damask/heat",
                            "LEFT %.1f of %.0f  RIGHT %.1f of 0  BED %.1f of %.0f",
                            m.value(NOZZLE_ACTUAL),
                            m.value(NOZZLE_SETPOINT),
                            wave(m, 24.2, 0.5, 70),
                            m.value(BED_ACTUAL),
                            m.value(BED_SETPOINT)));
                    all.add(message(
                            "damask/job", "%.3f done, %.0f s so far", m.value(JOB_PROGRESS), m.value(JOB_ELAPSED)));
                    return all;
                });
    }

    /** Bulgarian; a pair to a line. */
    private static Printer couche() {
        return new Printer(
                "couche",
                "Bulgarian, lines of key=value",
                heatAnd(JOB_PROGRESS, JOB_LEFT, JOB_DONE, JOB_TOTAL),
                ALL,
                Job.BED_FIRST,
                m -> List.of(message(
                        "работилница/принтер",
                        """
                        състояние=%s
                        легло=%.1f
                        легло_зададено=%.0f
                        дюза=%.1f
                        дюза_зададено=%.0f
                        напредък=%.1f%%
                        оставащо_време=%s
                        слой=%.0f
                        слоеве_общо=%.0f
                        вентилатор=%.0f
                        """,
                        word(m, "готов", "загрява", "печата", "на пауза", "завършено", "грешка: запушена дюза"),
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        percent(m),
                        clock(m.value(JOB_LEFT)),
                        m.value(JOB_DONE),
                        m.value(JOB_TOTAL),
                        wave(m, 2900, 50, 8))));
    }

    /** Texts with units, and null for a target that is off; it does not tell heating up from printing; an espresso machine. */
    private static Printer strudel() {
        return new Printer(
                "strudel",
                "null when off, an espresso machine",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                EnumSet.of(
                        PrinterState.IDLE,
                        PrinterState.PRINTING,
                        PrinterState.HELD,
                        PrinterState.DONE,
                        PrinterState.FAULT),
                m -> List.of(
                        message(
                                "den/strudel/now",
                                "{\"hotend\":{\"temp\":\"%.1f C\",\"target\":%s},\"bed\":{\"temp\":\"%.1f C\",\"target\":%s},"
                                        + "\"work\":{\"state\":\"%s\",\"percent\":%.0f,\"minutes_left\":%.1f},\"mains_v\":%.0f}",
                                m.value(NOZZLE_ACTUAL),
                                textOrNull(m.value(NOZZLE_SETPOINT)),
                                m.value(BED_ACTUAL),
                                textOrNull(m.value(BED_SETPOINT)),
                                word(m, "idle", "busy", "busy", "paused", "finished", "needs help: jam"),
                                percent(m),
                                m.value(JOB_LEFT) / 60,
                                wave(m, 231, 2, 33)),
                        message(
                                "den/espresso/now",
                                "{\"boiler\":{\"temp\":\"%.1f C\",\"target\":\"93 C\"},\"work\":{\"state\":\"%s\",\"cups\":%d}}",
                                wave(m, 92.8, 1.1, 22),
                                m.second() % 500 > 460 ? "brewing" : "idle",
                                m.second() / 500)));
    }

    private static String textOrNull(double celsius) {
        return celsius == 0 ? "null" : "\"" + Math.round(celsius) + " C\"";
    }

    /** Slovak; flat. */
    private static Printer trivet() {
        return new Printer(
                "trivet",
                "Slovak, flat",
                heatAnd(CHAMBER_ACTUAL, JOB_PROGRESS, JOB_LEFT, JOB_ELAPSED),
                ALL,
                Job.HOT,
                m -> List.of(message(
                        "dielňa/podstavec/hlásenie",
                        "{\"stav\":\"%s\",\"podložka_teplota\":%.1f,\"podložka_cieľ\":%.0f,\"dýza_teplota\":%.1f,\"dýza_cieľ\":%.0f,"
                                + "\"komora_teplota\":%.1f,\"hotovo_percent\":%.1f,\"zostáva_s\":%.0f,\"uplynulo_s\":%.0f,\"beží_od_zapnutia_s\":%d}",
                        word(m, "nečinná", "nahrieva", "tlačí", "pozastavená", "dokončené", "porucha: upchatá dýza"),
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        m.value(CHAMBER_ACTUAL),
                        percent(m),
                        m.value(JOB_LEFT),
                        m.value(JOB_ELAPSED),
                        5_230 + m.second())));
    }

    /** Mongolian; two topics. */
    private static Printer celadon() {
        return new Printer(
                "celadon",
                "Mongolian, two topics",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                LotTwelve.TWO_JOBS,
                m -> List.of(
                        message(
                                "цех/хэвлэгч/дулаан",
                                "{\"ширээ\":{\"одоо\":%.1f,\"зорилт\":%.0f},\"хошуу\":{\"одоо\":%.1f,\"зорилт\":%.0f}}",
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT)),
                        message(
                                "цех/хэвлэгч/ажил",
                                "{\"төлөв\":\"%s\",\"явц_хувь\":%.1f,\"үлдсэн_секунд\":%.0f}",
                                word(
                                        m,
                                        "бэлэн",
                                        "халааж байна",
                                        "хэвлэж байна",
                                        "түр зогссон",
                                        "дууссан",
                                        "алдаа: хошуу бөглөрсөн"),
                                percent(m),
                                m.value(JOB_LEFT))));
    }

    /** Bengali; flat. */
    private static Printer peel() {
        return new Printer(
                "peel",
                "Bengali, flat",
                heatAnd(JOB_PROGRESS, JOB_LEFT),
                ALL,
                m -> List.of(message(
                        "কর্মশালা/প্রিন্টার",
                        "{\"অবস্থা\":\"%s\",\"বেডের_তাপমাত্রা\":%.1f,\"বেডের_লক্ষ্য\":%.0f,\"নজলের_তাপমাত্রা\":%.1f,\"নজলের_লক্ষ্য\":%.0f,"
                                + "\"অগ্রগতি_শতাংশ\":%.1f,\"বাকি_সময়\":\"%s\"}",
                        word(m, "প্রস্তুত", "গরম হচ্ছে", "মুদ্রণ চলছে", "বিরতি", "সম্পন্ন", "ত্রুটি: নজল বন্ধ"),
                        m.value(BED_ACTUAL),
                        m.value(BED_SETPOINT),
                        m.value(NOZZLE_ACTUAL),
                        m.value(NOZZLE_SETPOINT),
                        percent(m),
                        clock(m.value(JOB_LEFT)))));
    }

    /** At rest; pairs of what is and what is wanted, under names; much about itself. */
    private static Printer crock() {
        return new Printer(
                "crock",
                "pairs under names, at rest",
                heatAnd(CHAMBER_ACTUAL, JOB_PROGRESS),
                EnumSet.of(PrinterState.IDLE),
                Job.REST,
                m -> List.of(
                        message(
                                "cellar/crock/temps",
                                "{\"nozzle\":[%.1f,%.0f],\"bed\":[%.1f,%.0f],\"chamber\":[%.1f],\"board\":[%.1f]}",
                                m.value(NOZZLE_ACTUAL),
                                m.value(NOZZLE_SETPOINT),
                                m.value(BED_ACTUAL),
                                m.value(BED_SETPOINT),
                                m.value(CHAMBER_ACTUAL),
                                wave(m, 34.5, 0.6, 90)),
                        message(
                                "cellar/crock/job",
                                "{\"state\":\"waiting for a job\",\"file\":\"\",\"progress\":%.3f}",
                                m.value(JOB_PROGRESS)),
                        message(
                                "cellar/crock/about",
                                "{\"uptime_min\":%.1f,\"jobs_ever\":412,\"metres_ever\":9120.4,\"wifi\":%.0f,\"version\":\"1.18.2\"}",
                                44 + m.second() / 60.0,
                                wave(m, -55, 2, 9))));
    }

    /** A fleet with a printer that rests; the times as a clock, among them the planned one; a job that is given up. */
    private static Printer carder() {
        return new Printer(
                "carder",
                "a fleet, clocks, a job given up",
                heatAnd(JOB_PROGRESS, JOB_LEFT, JOB_ELAPSED),
                EnumSet.of(
                        PrinterState.IDLE,
                        PrinterState.WARMING,
                        PrinterState.PRINTING,
                        PrinterState.HELD,
                        PrinterState.STOPPED,
                        PrinterState.FAULT),
                Job.GIVEN_UP,
                m -> List.of(
                        carder(
                                "4",
                                m,
                                is(m, PrinterState.STOPPED)
                                        ? "cancelled by operator"
                                        : word(
                                                m,
                                                "available",
                                                "warming up",
                                                "making",
                                                "interrupted",
                                                "made",
                                                "attention: feed jam"),
                                is(m, PrinterState.IDLE) ? "0:00:00" : "0:15:00"),
                        message(
                                "fleet/carder-1/snapshot",
                                "{\"t_nozzle\":%.1f,\"t_nozzle_goal\":0,\"t_bed\":%.1f,\"t_bed_goal\":0,\"phase\":\"available\",\"percent\":0.0,"
                                        + "\"clock\":{\"elapsed\":\"0:00:00\",\"left\":\"0:00:00\",\"planned\":\"0:00:00\"},\"fan_pct\":0}",
                                wave(m, 21.4, 0.2, 80),
                                wave(m, 21.1, 0.2, 95))));
    }

    private static Message carder(String number, Job.Moment m, String phase, String planned) {
        return message(
                "fleet/carder-" + number + "/snapshot",
                "{\"t_nozzle\":%.1f,\"t_nozzle_goal\":%.0f,\"t_bed\":%.1f,\"t_bed_goal\":%.0f,\"phase\":\"%s\",\"percent\":%.1f,"
                        + "\"clock\":{\"elapsed\":\"%s\",\"left\":\"%s\",\"planned\":\"%s\"},\"fan_pct\":%d}",
                m.value(NOZZLE_ACTUAL),
                m.value(NOZZLE_SETPOINT),
                m.value(BED_ACTUAL),
                m.value(BED_SETPOINT),
                phase,
                percent(m),
                clock(m.value(JOB_ELAPSED)),
                clock(m.value(JOB_LEFT)),
                planned,
                is(m, PrinterState.PRINTING) ? 80 : 0);
    }

    /** A small object for each value: the value and its unit. */
    private static Printer majolica() {
        return new Printer(
                "majolica",
                "a small object for each value",
                heatAnd(CHAMBER_ACTUAL, CHAMBER_SETPOINT, JOB_PROGRESS, JOB_LEFT, JOB_DONE),
                ALL,
                LotTwelve.TOUGH,
                m -> List.of(
                        majolica("nozzle-temperature", m, m.value(NOZZLE_ACTUAL), "degC"),
                        majolica("nozzle-temperature-demand", m, m.value(NOZZLE_SETPOINT), "degC"),
                        majolica("bed-temperature", m, m.value(BED_ACTUAL), "degC"),
                        majolica("bed-temperature-demand", m, m.value(BED_SETPOINT), "degC"),
                        majolica("chamber-temperature", m, m.value(CHAMBER_ACTUAL), "degC"),
                        majolica("chamber-temperature-demand", m, m.value(CHAMBER_SETPOINT), "degC"),
                        majolica("job-fraction", m, m.value(JOB_PROGRESS), "1"),
                        majolica("job-remaining", m, m.value(JOB_LEFT) / 60, "min"),
                        majolica("layer-number", m, m.value(JOB_DONE), "1"),
                        majolica("supply-voltage", m, wave(m, 24, 0.08, 27), "V"),
                        majolica("wifi-strength", m, wave(m, -60, 4, 12), "dBm"),
                        majolica("fan-speed", m, wave(m, 4400, 70, 6), "rpm"),
                        message(
                                "v2/majolica/lifecycle",
                                "{\"value\":\"%s\",\"at\":%d}",
                                word(m, "waiting", "preparing", "making", "suspended", "completed", "faulted"),
                                1_900_000_000L + m.second())));
    }

    private static Message majolica(String what, Job.Moment m, double value, String unit) {
        return message(
                "v2/majolica/observation/" + what,
                "{\"value\":%.3f,\"unit\":\"%s\",\"at\":%d}",
                value,
                unit,
                1_900_000_000L + m.second());
    }
}
