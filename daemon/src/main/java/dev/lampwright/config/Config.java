package dev.lampwright.config;

import dev.lampwright.broker.Broker;
import dev.lampwright.cue.CueSpec;
import dev.lampwright.desk.DeskSettings;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.LookSpec;
import dev.lampwright.printer.Bindings;
import dev.lampwright.protocol.Setup;
import dev.lampwright.wiring.Wiring;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A valid configuration: immutable descriptions, nothing that runs, so any number of chains and threads may share it. Two with the same
 * content are equal, part by part.
 *
 * @param framesPerSecond rate of the frame loop, 1 to 240
 * @param talk what is exchanged through the broker
 * @param controller the controller, and its set-up
 * @param light what is shown
 * @param atEnd what the lights do when the daemon is asked to end
 * @param desk the settings of asks
 * @param mounting how the strip is mounted
 * @param page the settings of the live page; empty if there is none
 * @param ownTokens the files with tokens that open this rig's page and no other; only a rig of a shop can have some
 * @param metricsPort port of loopback on which figures are served, if any are; applies at the start only
 * @param wiring how the lights are wired, for the electrical plan
 * @param keepHistory whether jobs and faults outlast the daemon; empty if that depends on how it is run
 */
public record Config(
        int framesPerSecond,
        TalkSpec talk,
        ControllerSpec controller,
        LightSpec light,
        AtEnd atEnd,
        DeskSettings desk,
        Mounting mounting,
        Optional<PageSettings> page,
        TokenFiles ownTokens,
        OptionalInt metricsPort,
        Wiring wiring,
        Optional<Boolean> keepHistory) {
    /**
     * Where the broker is.
     *
     * @return that of {@link #talk}
     */
    public Broker broker() {
        return talk.broker();
    }

    /**
     * Where the printers report what, all of them combined.
     *
     * @return those of {@link #talk}
     */
    public Bindings bindings() {
        return talk.bindings();
    }

    /**
     * What is fitted to the controller, and its limits.
     *
     * @return that of {@link #controller}
     */
    public Setup setup() {
        return controller.setup();
    }

    /**
     * What looks are made for.
     *
     * @return that of {@link #light}
     */
    public Fitting fitting() {
        return light.fitting();
    }

    /**
     * The looks by name.
     *
     * @return those of {@link #light}
     */
    public Map<String, LookSpec> looks() {
        return light.looks();
    }

    /**
     * What to show when.
     *
     * @return those of {@link #light}
     */
    public List<CueSpec> cues() {
        return light.cues();
    }

    /**
     * The same with different light.
     *
     * @param other what is shown, on the same strip and dimmers
     * @return another configuration
     */
    public Config with(LightSpec other) {
        return with(controller, other);
    }

    /**
     * The same with different lights.
     *
     * @param otherController the controller, and its set-up
     * @param other what is shown, on its strip and dimmers
     * @return another configuration
     */
    public Config with(ControllerSpec otherController, LightSpec other) {
        return new Config(
                framesPerSecond,
                talk,
                otherController,
                other,
                atEnd,
                desk,
                mounting,
                page,
                ownTokens,
                metricsPort,
                wiring,
                keepHistory);
    }
}
