package dev.lampwright.cli;

import dev.lampwright.board.BoardKind;
import dev.lampwright.config.Config;
import dev.lampwright.phrase.Phrase;
import dev.lampwright.tool.plan.Plan;
import dev.lampwright.tool.plan.PlannedLights;
import java.util.List;
import java.util.Locale;

/** The verdicts of the electrical plan in short, for places where the full plan would be too much. They do not depend on the looks. */
final class WiringVerdicts {
    private WiringVerdicts() {}

    /**
     * The lights of a configuration, for its plan.
     *
     * @param config the configuration
     * @param name its name
     * @return the planned lights
     */
    static PlannedLights lights(Config config, String name) {
        return new PlannedLights(name, config.setup(), config.framesPerSecond(), baud(config), config.wiring());
    }

    /** The baud rate of the line; 0 for the USB port of an RP2040 board, recognised by the usual names of such ports. */
    private static int baud(Config config) {
        String port = config.controller().port();
        boolean usb = config.wiring().board().kind() == BoardKind.RP2040
                && (BoardKind.RP2040.isNamedIn(port)
                        || port.toLowerCase(Locale.ROOT).contains("ttyacm"));
        return usb ? 0 : config.controller().baud();
    }

    /**
     * The verdicts.
     *
     * @param config the configuration
     * @param name its name
     * @return one line each, the worst first
     */
    static List<String> lines(Config config, String name) {
        return Plan.of(lights(config, name), List.of()).lines();
    }

    /** The same with codes. */
    static List<Phrase> phrases(Config config, String name) {
        return Plan.of(lights(config, name), List.of()).phrases();
    }
}
