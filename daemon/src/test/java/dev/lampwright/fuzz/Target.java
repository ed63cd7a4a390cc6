package dev.lampwright.fuzz;

import java.time.Duration;
import java.util.SplittableRandom;

/** A way into the daemon from outside. */
interface Target {
    /** What it is called on the command line. */
    String name();

    /** The next step of an attack, by chance and by nothing else. */
    Step step(SplittableRandom chance);

    /** The most steps of one attack. */
    int mostSteps();

    /** How soon after an attack the light has to be right. */
    default Duration promise() {
        return Duration.ofSeconds(2);
    }
}
