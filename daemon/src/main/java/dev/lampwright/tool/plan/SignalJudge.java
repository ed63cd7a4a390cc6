package dev.lampwright.tool.plan;

import dev.lampwright.board.BoardKind;
import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Setup;
import dev.lampwright.tool.plan.Verdict.Figure;
import dev.lampwright.wiring.Wiring;
import java.util.ArrayList;
import java.util.List;

/** Judges everything that does not concern power: the data's level, the frame rate, the frequencies of PWM, and what feeds the computer. */
final class SignalJudge {
    private static final String PIXELS = "the strip's pixels";

    private final PlannedLights rig;
    private final FrameRate rate;

    SignalJudge(PlannedLights rig, FrameRate rate) {
        this.rig = rig;
        this.rate = rate;
    }

    /** The verdicts. */
    List<Verdict> verdicts() {
        List<Verdict> verdicts = new ArrayList<>();
        verdicts.add(onData().assumedIf(levelIsAssumed()));
        verdicts.addAll(onDataLines());
        verdicts.add(onRate());
        verdicts.add(onPwm(PIXELS, rig.wiring().strip().pwmHz(), "pixels with a faster PWM")
                .assumedIf(rig.wiring().defaults().containsKey("wiring.strip.pwm_Hz")));
        rig.wiring().lights().forEach(light -> {
            verdicts.add(onPwm(light.name(), light.pwmHz(), "a faster timer for this output"));
            onPower(light, verdicts);
        });
        if (rig.wiring().computer().supply().isPresent()) {
            verdicts.add(onComputer(rig.wiring().computer().supply().getAsInt()));
        }
        return verdicts;
    }

    private Verdict onData() {
        DataLevel level = DataLevel.of(rig);
        Figure figure = Figure.atLeast(level.volts(), level.needed(), "V", "WS2812B datasheet");
        BoardKind kind = rig.wiring().board().kind();
        boolean named = kind == BoardKind.RP2040 && !level.enough();
        String what = (named ? "high of the " + kind.chip() + "'s pins is " : "high is ")
                + FigureText.volts(level.volts()) + (levelIsAssumed() ? " for this board, 3.3 V for an RP2040" : "")
                + ", and the first pixel is sure of it from "
                + FigureText.volts(level.needed()) + " on (0.7 × VDD, WS2812B datasheet)";
        return level.enough()
                ? new Verdict(Verdict.Severity.GOOD, Phrase.of("plan_data", "data level"), what, "", figure)
                : new Verdict(
                        Verdict.Severity.OVER,
                        Phrase.of("plan_data", "data level"),
                        what,
                        "put a 5 V level shifter with TTL inputs in between (74AHCT125 or the like" + gates()
                                + "), and set wiring.board.data = \"shifted\"",
                        figure);
    }

    /** Whether the file says nothing about the level: then a board of 5 V is assumed, and an RP2040 would be judged too well. */
    private boolean levelIsAssumed() {
        return rig.wiring().board().kind() == BoardKind.ATMEGA328P
                && !rig.wiring().board().shifter()
                && rig.wiring().defaults().containsKey("wiring.board.logic_V");
    }

    /** Several data lines need a gate each; the usual part has four. */
    private String gates() {
        int lines = rig.setup().runs().size();
        return lines > 1 ? ", four gates a part: " + lines + " are needed" : "";
    }

    /** Which pin carries which pixels, compared with what one data line can carry at the requested rate. */
    private List<Verdict> onDataLines() {
        BoardKind kind = rig.wiring().board().kind();
        double seconds = Math.max(0, 1.0 / rig.framesPerSecond() - FrameRate.STRIP_REST_S);
        double most = Math.floor(seconds / (rig.setup().channels() * FrameRate.STRIP_BYTE_S));
        List<Verdict> verdicts = new ArrayList<>();
        int first = 0;
        for (Setup.Run run : rig.setup().runs()) {
            int last = first + run.pixels() - 1;
            String what = "pin " + kind.dataPin(run.output()) + " carries pixels " + first + " to " + last;
            String enough = ", and at " + rig.framesPerSecond() + " frames a second one line carries "
                    + FigureText.fixed(most, 0);
            boolean fits = run.pixels() <= most;
            verdicts.add(new Verdict(
                    fits ? Verdict.Severity.GOOD : Verdict.Severity.CARE,
                    Phrase.of("plan_line", "data line " + run.output(), "number", run.output()),
                    what + enough,
                    fits ? "" : "put fewer pixels on it in strip.outputs",
                    Figure.atMost(run.pixels(), Math.max(1, most), "pixels", "WS2812B datasheet")));
            first = last + 1;
        }
        return verdicts;
    }

    private Verdict onRate() {
        Figure figure =
                Figure.atLeast(rate.most(), rig.framesPerSecond(), "frames a second", "frames_per_s in the file");
        String what = (rig.baud() == 0 ? "USB" : rig.baud() + " baud") + " and the strip allow "
                + FigureText.fixed(rate.most(), 0) + " frames a second, and " + rig.framesPerSecond()
                + " are asked for";
        return figure.used() <= 1
                ? new Verdict(Verdict.Severity.GOOD, Phrase.of("plan_rate", "frame rate"), what, "", figure)
                : new Verdict(
                        Verdict.Severity.CARE,
                        Phrase.of("plan_rate", "frame rate"),
                        what,
                        "set frames_per_s to " + (int) Math.max(1, Math.floor(rate.most()))
                                + (rate.lineSeconds() > rate.stripSeconds() && rig.baud() > 0
                                        ? ", or a higher baud"
                                        : ", or fewer pixels")
                                + "; until then some frames are left out, but none is wrong",
                        figure);
    }

    private static Verdict onPwm(String name, double hz, String other) {
        Phrase subject = Phrase.of("plan_pwm", "PWM of " + name, "name", name);
        String frequency = FigureText.plain(hz) + " Hz: ";
        Figure figure = Figure.atLeast(hz, PwmFlicker.LEAST_LOW_RISK_HZ, "Hz", "IEEE 1789-2015, from memory");
        return switch (PwmFlicker.ofPwm(hz)) {
            case NO_EFFECT ->
                new Verdict(
                        Verdict.Severity.GOOD,
                        subject,
                        frequency + "over 3 kHz, no effect known (IEEE 1789-2015)",
                        "",
                        figure);
            case LOW_RISK ->
                new Verdict(Verdict.Severity.GOOD, subject, frequency + "low risk (IEEE 1789-2015)", "", figure);
            case BEYOND ->
                new Verdict(
                        Verdict.Severity.CARE,
                        subject,
                        frequency + "dims by going fully off, and IEEE 1789-2015 calls only "
                                + FigureText.percent(PwmFlicker.lowRiskPercent(hz) / 100)
                                + " of modulation low risk at that frequency; eyes that move, and cameras, may see it",
                        "take " + other + ", 1250 Hz or more",
                        figure);
        };
    }

    private void onPower(Wiring.Light light, List<Verdict> verdicts) {
        Loads loads = new Loads(rig);
        double told = light.outputs().stream()
                        .mapToDouble(i -> rig.setup().dimmers().get(i).fullMilliamps())
                        .sum()
                / 1000;
        double taken = loads.byPower(light);
        if (taken > told) {
            String what = FigureText.watts(light.watts().orElse(0)) + " take " + FigureText.amps(taken)
                    + ", but full_mA says " + FigureText.amps(told) + ": the ceiling counts it with too little";
            String remedy = "set full_mA of " + light.name() + " to "
                    + (int) Math.ceil(1000 * taken / light.outputs().size());
            verdicts.add(new Verdict(
                    Verdict.Severity.CARE,
                    Phrase.of("plan_current", "current of " + light.name(), "name", light.name()),
                    what,
                    remedy,
                    Figure.atMost(taken, told, "A", "full_mA in the file")));
        }
    }

    private Verdict onComputer(int supply) {
        Wiring.Computer computer = rig.wiring().computer();
        String name = rig.wiring().supplies().get(supply).name();
        return new Verdict(
                Verdict.Severity.CARE,
                Phrase.of("plan_computer", "computer"),
                "is fed by supply " + name + " with " + FigureText.amps(computer.amps())
                        + ": a fault of the lights takes it down, and the printer's eyes with it",
                "give it a supply of its own",
                Figure.atMost(computer.amps(), computer.amps(), "A", "common practice"));
    }

    /**
     * The level of the strip's data.
     *
     * @param volts high level as it is driven
     * @param needed lowest high level that the first pixel is certain to recognise
     */
    record DataLevel(double volts, double needed) {
        /** WS2812B datasheet: V_IH is 0.7 × VDD at least. */
        private static final double SHARE = 0.7;

        /** Strips of a higher voltage have internal logic of 5 V (common practice, no source). */
        private static final double LOGIC_VOLTS = 5;

        /** Above it a pixel has several LEDs and its own logic, as the file's defaults assume. */
        static final double HIGHEST_OWN_VOLTS = 5.5;

        /**
         * The level of a rig.
         *
         * @param rig the rig
         * @return its level
         */
        static DataLevel of(PlannedLights rig) {
            double supply = rig.stripSupply().volts();
            double logic = supply > HIGHEST_OWN_VOLTS ? LOGIC_VOLTS : supply;
            Wiring.Board board = rig.wiring().board();
            return new DataLevel(board.shifter() ? logic : board.logicVolts(), SHARE * logic);
        }

        /** Whether a pixel is certain to recognise it. */
        boolean enough() {
            return volts >= needed;
        }
    }
}
