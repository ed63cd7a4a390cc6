package dev.lampwright.tool.bench;

import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
import dev.lampwright.engine.Chain;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.tool.check.MadeUpStatus;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** What a look takes from the strip's supply in ten seconds of a printer that nobody has built, with and without the ceiling. */
final class LookCurrent {
    /** Frames in a second of what is drawn for nobody's eyes; our own choice. */
    static final int RATE = 20;

    private static final int HIGHEST_CEILING = 65_535;
    private static final int FRAMES =
            (int) (RATE * MadeUpStatus.STEPS * MadeUpStatus.STEP_NANOS / TimeUnit.SECONDS.toNanos(1));

    private LookCurrent() {}

    /**
     * Measures it.
     *
     * @param config whose look
     * @param name of the look
     * @param patience ends it
     * @return mA, and the share of the frames that the ceiling dims
     */
    static Map<String, Object> of(Config config, String name, DrawPatience patience) throws BenchRefusal {
        LightSpec light = config.light().showing(config.looks().get(name));
        Chain limited = Chain.of(config.setup(), light, RATE);
        Setup open = open(config.setup());
        Chain free = Chain.of(open, light.guardedBy(light.guard().withFlashing()), RATE);
        Map<String, Object> current = new LinkedHashMap<>();
        current.put("peak_mA", peak(limited, config, patience));
        current.put("ceiling_mA", limited.guard().stripCeilingMilliamps());
        current.put("asked_mA", peak(free, config, patience));
        current.put("dimmed_share", Math.rint(1000.0 * limited.guard().dimmedFrames() / FRAMES) / 1000);
        return current;
    }

    /** The same lights with ceilings that limit next to nothing, so that what a look asks for is seen. */
    static Setup open(Setup setup) {
        return setup.withCeilings(Collections.nCopies(setup.ceilingsMilliamps().size(), HIGHEST_CEILING));
    }

    private static int peak(Chain chain, Config config, DrawPatience patience) throws BenchRefusal {
        List<PrinterStatus> statuses = MadeUpStatus.all(config.bindings());
        Frame frame =
                new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
        int peak = 0;
        for (int i = 0; i < FRAMES; i++) {
            patience.check();
            long nanos = TimeUnit.SECONDS.toNanos(i) / RATE;
            chain.make(statuses.get((int) (nanos / MadeUpStatus.STEP_NANOS)), nanos, frame);
            peak = Math.max(peak, chain.guard().stripMilliamps());
        }
        return peak;
    }
}
