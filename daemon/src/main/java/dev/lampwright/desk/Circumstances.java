package dev.lampwright.desk;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.look.Fitting;
import java.util.Set;

/**
 * What an ask is judged by.
 *
 * @param fitting what is fitted
 * @param looks names of the looks that there are
 * @param alarm where the alarm stands
 * @param hasQuietHours whether the configuration has hours of the night
 * @param nanos the time, on the daemon's monotonic clock
 */
record Circumstances(Fitting fitting, Set<String> looks, AlarmState alarm, boolean hasQuietHours, long nanos) {}
