package dev.lampwright.tool.plan;

import dev.lampwright.protocol.Setup;
import dev.lampwright.wiring.Wiring;

/**
 * Everything that a plan covers.
 *
 * @param name its name, such as the file's name
 * @param setup what is fitted to the controller
 * @param framesPerSecond requested frames per second
 * @param baud bits per second on the line; 0 for USB, which has none
 * @param wiring how it is wired
 */
public record PlannedLights(String name, Setup setup, int framesPerSecond, int baud, Wiring wiring) {
    /**
     * The supply that feeds the strip.
     *
     * @return its side of the wiring
     */
    Wiring.Supply stripSupply() {
        return wiring.supplies().get(setup.stripSupply());
    }
}
