package dev.lampwright.tool.plan;

import dev.lampwright.protocol.Setup;
import dev.lampwright.wiring.Wiring;

/**
 * All that is planned for.
 *
 * @param name what to call it, such as the file's name
 * @param setup what is fitted to the controller
 * @param framesPerSecond frames a second that are asked for
 * @param baud bits a second on the line; 0 if that is USB, which has none
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
