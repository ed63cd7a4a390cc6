package dev.lampwright.config;

import dev.lampwright.look.PixelRun;
import dev.lampwright.plan.Wiring;
import dev.lampwright.printer.Bindings;
import dev.lampwright.printer.Broker;
import dev.lampwright.protocol.Setup;
import java.time.Duration;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A configuration that has been found right.
 *
 * @param framesPerSecond rate of the frame loop, 1 to 240
 * @param broker where the broker is
 * @param bindings where the printer says what
 * @param silentAfter how long nothing may be heard before the state is {@code silent}
 * @param ambientC temperature of the room, in °C
 * @param port serial port of the controller
 * @param baud bits a second on the line
 * @param setup what is fitted to the controller, and its limits
 * @param zones pixels of each zone, in the direction in which the zone runs; always has {@code bed}, {@code nozzle} and {@code job}
 * @param dimmers names of the dimmers, in the order of {@link Setup#dimmers}
 * @param wiring how the lights are wired, for the electrical plan
 */
public record Config(
        int framesPerSecond,
        Broker broker,
        Bindings bindings,
        Duration silentAfter,
        double ambientC,
        String port,
        int baud,
        Setup setup,
        Map<String, PixelRun> zones,
        List<String> dimmers,
        Wiring wiring) {
    /** Keeps copies of the collections, in their order. */
    public Config {
        zones = Collections.unmodifiableMap(new LinkedHashMap<>(zones));
        dimmers = List.copyOf(dimmers);
    }
}
