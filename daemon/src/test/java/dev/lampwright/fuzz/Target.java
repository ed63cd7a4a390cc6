package dev.lampwright.fuzz;

import java.time.Duration;
import java.util.SplittableRandom;

/** An input of the daemon. */
interface Target {
    /** Its name on the command line. */
    String name();

    /** The next step of an attack, purely random. */
    Step step(SplittableRandom chance);

    /** The maximum number of steps of one attack. */
    int mostSteps();

    /** How soon after an attack the light must be right. */
    default Duration promise() {
        return Duration.ofSeconds(2);
    }
}
