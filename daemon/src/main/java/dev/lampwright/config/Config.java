package dev.lampwright.config;

import dev.lampwright.broker.Broker;
import dev.lampwright.colour.Encoder;
import dev.lampwright.cue.AlarmSequence;
import dev.lampwright.cue.Cue;
import dev.lampwright.desk.DeskSettings;
import dev.lampwright.guard.GuardSettings;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Look;
import dev.lampwright.printer.Bindings;
import dev.lampwright.protocol.Setup;
import dev.lampwright.signal.Room;
import dev.lampwright.wiring.Wiring;
import java.time.Duration;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A configuration that has been found right. Looks, cues and the encoder remember what was before, so it is for one chain at a time.
 *
 * @param framesPerSecond rate of the frame loop, 1 to 240
 * @param broker where the broker is
 * @param bindings where the printer says what
 * @param silentAfter how long nothing may be heard before the state is {@code silent}
 * @param room where the printer stands, and what counts as hot there
 * @param port serial port of the controller
 * @param baud bits a second on the line
 * @param atEnd what the lights do when the daemon is asked to end
 * @param metricsPort port of loopback on which figures are told, if any are; taken up at the start only
 * @param setup what is fitted to the controller, and its limits
 * @param guard what is chosen about the limits
 * @param fitting what looks are made for; always has the zones {@code strip}, {@code bed}, {@code nozzle} and {@code job}
 * @param encoder what turns light into the strip's bytes
 * @param looks the looks by name: the built-in ones, unless the file has one of that name, and those of the file
 * @param cues what to show when: the file's first, then the built-in ones; the first that holds wins, and the last always holds
 * @param alarmSequence how a fault is shown until it is seen and over
 * @param desk what people may ask for, and where
 * @param mounting how the strip is mounted
 * @param page what there is to say about the live page; empty if there is none
 * @param wiring how the lights are wired, for the electrical plan
 */
public record Config(
        int framesPerSecond,
        Broker broker,
        Bindings bindings,
        Duration silentAfter,
        Room room,
        String port,
        int baud,
        AtEnd atEnd,
        OptionalInt metricsPort,
        Setup setup,
        GuardSettings guard,
        Fitting fitting,
        Encoder encoder,
        Map<String, Look> looks,
        List<Cue> cues,
        AlarmSequence alarmSequence,
        DeskSettings desk,
        Mounting mounting,
        Optional<PageSettings> page,
        Wiring wiring) {
    /** Keeps copies of the collections, in their order. */
    public Config {
        looks = Collections.unmodifiableMap(new LinkedHashMap<>(looks));
        cues = List.copyOf(cues);
    }

    /**
     * The temperature of the room.
     *
     * @return °C
     */
    public double ambientC() {
        return room.ambientC();
    }
}
