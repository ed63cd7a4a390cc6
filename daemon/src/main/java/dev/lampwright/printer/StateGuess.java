package dev.lampwright.printer;

import dev.lampwright.payload.OwnHeater;
import dev.lampwright.payload.Quantity;
import java.util.List;

/**
 * What a printer is doing, judged by its readings:
 *
 * <ol>
 * <li>{@code printing} if the job is under way (progress above 0 and below 1) and the nozzle is not switched off;
 * <li>{@code warming} if a heater is on and more than 4 °C below its target, or was warming and is more than 2 °C below;
 * <li>{@code done} if progress is 1;
 * <li>{@code idle} otherwise.
 * </ol>
 *
 * Readings do not show a pause, a cancelled job or a fault. An unknown quantity is ignored. Of the heaters that the user's file names, one
 * that is set hotter than any bed is a nozzle, and printing goes on while one nozzle is on.
 */
final class StateGuess {
    private static final double BEGINS_BELOW_C = 4;
    private static final double ENDS_BELOW_C = 2;
    /** No bed, chamber or dryer is set hotter, and no nozzle is set so low while it prints. Common practice, no source. */
    private static final double NOZZLE_ABOVE_C = 150;

    private final List<OwnHeater> heaters;

    /**
     * Prepares.
     *
     * @param heaters the user-defined ones, in addition to bed, nozzle and chamber
     */
    StateGuess(List<OwnHeater> heaters) {
        this.heaters = heaters;
    }

    /**
     * Guesses.
     *
     * @param status only its readings are used
     * @param before the state up to now
     * @return one of printing, warming, done and idle
     */
    PrinterState of(PrinterStatus status, PrinterState before) {
        double progress = status.value(Quantity.JOB_PROGRESS);
        if (progress > 0 && progress < 1 && !isNozzleOff(status)) {
            return PrinterState.PRINTING;
        }
        if (isWarming(status, before == PrinterState.WARMING ? ENDS_BELOW_C : BEGINS_BELOW_C)) {
            return PrinterState.WARMING;
        }
        return progress >= 1 ? PrinterState.DONE : PrinterState.IDLE;
    }

    /**
     * Whether all nozzles are switched off.
     *
     * @param status only its targets are used
     * @return false also if nothing is known about them
     */
    boolean isNozzleOff(PrinterStatus status) {
        return status.value(Quantity.NOZZLE_SETPOINT) <= 0
                && heaters.stream()
                        .noneMatch(heater -> status.own(heater.setpointKey()).value() > NOZZLE_ABOVE_C);
    }

    private boolean isWarming(PrinterStatus status, double belowC) {
        return isBelow(status, Quantity.BED_ACTUAL, Quantity.BED_SETPOINT, belowC)
                || isBelow(status, Quantity.NOZZLE_ACTUAL, Quantity.NOZZLE_SETPOINT, belowC)
                || isBelow(status, Quantity.CHAMBER_ACTUAL, Quantity.CHAMBER_SETPOINT, belowC)
                || heaters.stream()
                        .anyMatch(heater -> isBelow(
                                status.own(heater.actualKey()).value(),
                                status.own(heater.setpointKey()).value(),
                                belowC));
    }

    private static boolean isBelow(PrinterStatus status, Quantity actual, Quantity target, double belowC) {
        return isBelow(status.value(actual), status.value(target), belowC);
    }

    private static boolean isBelow(double actual, double wanted, double belowC) {
        return wanted > 0 && actual < wanted - belowC;
    }
}
