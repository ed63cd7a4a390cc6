package dev.lampwright.tool.bench;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.cue.CueSpec;
import dev.lampwright.engine.Chain;
import dev.lampwright.engine.MidJob;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.protocol.Frame;
import java.util.List;

/** The looks that faults put on. */
final class FaultCues {
    private FaultCues() {}

    /** Whether a change affects the cues of a fault, its acknowledgement or its end, or lets another cue come before them. */
    static boolean change(BenchFiles files, EditPlan plan) {
        try {
            Config before = files.examine(plan.before()).config();
            Config after = files.examine(plan.after()).config();
            return !cues(before).equals(cues(after)) || !look(before).equals(look(after));
        } catch (ConfigException e) {
            return false;
        }
    }

    private static List<CueSpec> cues(Config config) {
        return config.cues().stream().filter(LookList::isOfFault).toList();
    }

    /** The look that a new fault puts on. */
    static String look(Config config) {
        Chain chain = Chain.of(config);
        chain.make(
                MidJob.status(PrinterState.FAULT, config.bindings().own().keySet()),
                0,
                new Frame(config.setup().stripBytes(), config.setup().dimmers().size()));
        return chain.look();
    }
}
