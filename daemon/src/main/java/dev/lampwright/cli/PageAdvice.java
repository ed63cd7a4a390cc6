package dev.lampwright.cli;

import dev.lampwright.config.Config;
import dev.lampwright.page.Advice;
import dev.lampwright.tool.plan.Plan;
import dev.lampwright.tool.plan.PlanPicture;
import java.util.List;

/** What {@code plan} and {@code check} say, for the page. */
final class PageAdvice implements Advice {
    @Override
    public List<String> wiring(Config config) {
        return WiringVerdicts.lines(config, "");
    }

    /** Without the looks, which take seconds to draw. */
    @Override
    public String drawing(Config config) {
        return PlanPicture.of(
                Plan.of(WiringVerdicts.lights(config, config.talk().prefix()), List.of()));
    }

    @Override
    public List<String> warnings(Config config) {
        return ConfigWarnings.about(config);
    }
}
