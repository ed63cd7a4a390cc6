package dev.lampwright.tool.survey;

import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * A made-up print job, second by second: idle, heat-up, print, a pause, more print, a fault, the rest of the print, cooling while done, idle.
 * Heaters answer to first order.
 */
final class Job {
    private static final double ROOM_C = 22;

    /** The course of the printers that name none. */
    static final Course USUAL = new Course(
            60,
            215,
            40,
            84,
            List.of(
                    new Phase(PrinterState.IDLE, 25, false),
                    new Phase(PrinterState.WARMING, 260, true),
                    new Phase(PrinterState.PRINTING, 400, true),
                    new Phase(PrinterState.HELD, 40, true),
                    new Phase(PrinterState.PRINTING, 200, true),
                    new Phase(PrinterState.FAULT, 30, true),
                    new Phase(PrinterState.PRINTING, 300, true),
                    new Phase(PrinterState.DONE, 60, false),
                    new Phase(PrinterState.IDLE, 60, false)));

    /** A hotter one; the pause is long, and the fault comes first. */
    static final Course HOT = new Course(
            95,
            255,
            55,
            132,
            List.of(
                    new Phase(PrinterState.IDLE, 40, false),
                    new Phase(PrinterState.WARMING, 310, true),
                    new Phase(PrinterState.PRINTING, 300, true),
                    new Phase(PrinterState.FAULT, 25, true),
                    new Phase(PrinterState.PRINTING, 350, true),
                    new Phase(PrinterState.HELD, 35, true),
                    new Phase(PrinterState.PRINTING, 280, true),
                    new Phase(PrinterState.DONE, 90, false),
                    new Phase(PrinterState.IDLE, 45, false)));

    /** The bed is heated first, and the nozzle later; a fault ends in a pause. */
    static final Course BED_FIRST = new Course(
            70,
            240,
            45,
            96,
            800,
            90,
            List.of(
                    new Phase(PrinterState.IDLE, 20, false),
                    new Phase(PrinterState.WARMING, 250, true),
                    new Phase(PrinterState.PRINTING, 320, true),
                    new Phase(PrinterState.HELD, 55, true),
                    new Phase(PrinterState.PRINTING, 230, true),
                    new Phase(PrinterState.FAULT, 20, true),
                    new Phase(PrinterState.HELD, 30, true),
                    new Phase(PrinterState.PRINTING, 250, true),
                    new Phase(PrinterState.DONE, 100, false),
                    new Phase(PrinterState.IDLE, 50, false)));

    /** A job that is given up halfway. */
    static final Course GIVEN_UP = new Course(
            55,
            205,
            38,
            110,
            900,
            0,
            List.of(
                    new Phase(PrinterState.IDLE, 30, false),
                    new Phase(PrinterState.WARMING, 220, true),
                    new Phase(PrinterState.PRINTING, 330, true),
                    new Phase(PrinterState.FAULT, 30, true),
                    new Phase(PrinterState.PRINTING, 120, true),
                    new Phase(PrinterState.HELD, 40, true),
                    new Phase(PrinterState.STOPPED, 80, false),
                    new Phase(PrinterState.IDLE, 60, false)));

    /** Nothing is printed. */
    static final Course REST = new Course(60, 215, 40, 84, List.of(new Phase(PrinterState.IDLE, 500, false)));

    private static final double BED_TIME_CONSTANT_S = 70;
    private static final double NOZZLE_TIME_CONSTANT_S = 35;
    private static final double CHAMBER_TIME_CONSTANT_S = 110;

    /**
     * How a job goes.
     *
     * @param bedC what the bed is set to
     * @param nozzleC what the nozzle is set to
     * @param chamberC what the chamber is set to
     * @param layers how many layers there are
     * @param printSeconds for how long it would print if nobody stopped it
     * @param nozzleAfterSeconds how long after the bed the nozzle is heated
     * @param phases what the printer does, one after the other
     */
    record Course(
            double bedC,
            double nozzleC,
            double chamberC,
            int layers,
            int printSeconds,
            int nozzleAfterSeconds,
            List<Phase> phases) {
        /** One that is printed to its end, and whose heaters are all turned on at once. */
        Course(double bedC, double nozzleC, double chamberC, int layers, List<Phase> phases) {
            this(bedC, nozzleC, chamberC, layers, printSeconds(phases), 0, phases);
        }

        private static int printSeconds(List<Phase> phases) {
            return phases.stream()
                    .filter(phase -> phase.state == PrinterState.PRINTING)
                    .mapToInt(Phase::seconds)
                    .sum();
        }
    }

    /**
     * A part of a job.
     *
     * @param state what the printer does
     * @param seconds for how long
     * @param hot whether its heaters are on
     */
    record Phase(PrinterState state, int seconds, boolean hot) {}

    private Job() {}

    /**
     * The job at one second.
     *
     * @param second since the beginning
     * @param state what the printer is doing
     * @param values every quantity, in Lampwright's units
     * @param camera whether a picture is being taken
     */
    record Moment(int second, PrinterState state, Map<Quantity, Double> values, boolean camera) {
        double value(Quantity quantity) {
            return values.get(quantity);
        }

        /** What is wrong, in the printer's words; empty if nothing is. */
        String faultText() {
            return state == PrinterState.FAULT ? "tip blocked at layer " + Math.round(value(Quantity.JOB_DONE)) : "";
        }
    }

    /** The whole usual course, a moment for each second. */
    static List<Moment> moments() {
        return moments(USUAL);
    }

    /** The whole course, a moment for each second. */
    static List<Moment> moments(Course course) {
        int all = Math.max(1, course.printSeconds);
        List<Moment> moments = new ArrayList<>();
        double bed = ROOM_C;
        double nozzle = ROOM_C;
        double chamber = ROOM_C;
        int printed = 0;
        int begun = 0;
        int heatedSince = 0;
        for (Phase phase : course.phases) {
            for (int i = 0; i < phase.seconds; i++) {
                int second = moments.size();
                boolean resting = phase.state == PrinterState.IDLE;
                heatedSince = phase.hot ? heatedSince : second;
                boolean nozzleHot = phase.hot && second > heatedSince + course.nozzleAfterSeconds;
                bed = nearer(bed, phase.hot ? course.bedC : ROOM_C, phase.hot, BED_TIME_CONSTANT_S);
                nozzle = nearer(nozzle, nozzleHot ? course.nozzleC : ROOM_C, nozzleHot, NOZZLE_TIME_CONSTANT_S);
                chamber = nearer(chamber, phase.hot ? course.chamberC : ROOM_C, phase.hot, CHAMBER_TIME_CONSTANT_S);
                printed = resting ? 0 : printed + (phase.state == PrinterState.PRINTING ? 1 : 0);
                begun = phase.state == PrinterState.IDLE || phase.state == PrinterState.WARMING ? second : begun;
                Map<Quantity, Double> values = new EnumMap<>(Quantity.class);
                values.put(Quantity.BED_ACTUAL, bed + ripple(second, 1));
                values.put(Quantity.BED_SETPOINT, phase.hot ? course.bedC : 0);
                values.put(Quantity.NOZZLE_ACTUAL, nozzle + ripple(second, 2));
                values.put(Quantity.NOZZLE_SETPOINT, nozzleHot ? course.nozzleC : 0);
                values.put(Quantity.CHAMBER_ACTUAL, chamber + ripple(second, 3));
                values.put(Quantity.CHAMBER_SETPOINT, phase.hot ? course.chamberC : 0);
                values.put(Quantity.JOB_PROGRESS, Math.min(1, (double) printed / all));
                values.put(Quantity.JOB_LEFT, printed == 0 ? 0.0 : all - printed);
                values.put(Quantity.JOB_ELAPSED, resting ? 0.0 : second - begun);
                values.put(Quantity.JOB_DONE, Math.floor((double) course.layers * printed / all));
                values.put(Quantity.JOB_TOTAL, resting ? 0.0 : course.layers);
                boolean camera = phase.state == PrinterState.PRINTING && second % 30 < 2;
                moments.add(new Moment(second, phase.state, values, camera));
            }
        }
        return moments;
    }

    /** A heater aims a little past its target, and then holds it. */
    private static double nearer(double from, double to, boolean hot, double timeConstantS) {
        double aim = hot ? to * 1.05 : to;
        double next = aim + (from - aim) * Math.exp(-1 / timeConstantS);
        return hot && from <= to ? Math.min(to, next) : next;
    }

    /** What a sensor adds of its own, the same each time. */
    private static double ripple(int second, int sensor) {
        return 0.3 * Math.sin(second * (0.7 + 0.1 * sensor) + sensor);
    }
}
