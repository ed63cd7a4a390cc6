package dev.lampwright.tool.check;

import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
import dev.lampwright.cue.CueSpec;
import dev.lampwright.look.LookSpec;
import java.util.List;
import java.util.Map;

/** A configuration with one look and no other, so that checking it takes no longer than that look. */
public final class OneLook {
    private OneLook() {}

    /**
     * Leaves all other looks out.
     *
     * @param config a configuration
     * @param name of one of its looks
     * @return the same lights, which show that look all the time
     */
    public static Config of(Config config, String name) {
        LightSpec light = config.light();
        LookSpec look = light.looks().get(name);
        return config.with(new LightSpec(
                light.fitting(),
                light.strip(),
                Map.of(name, look),
                List.of(CueSpec.always(look)),
                light.alarmSequence(),
                light.guard(),
                light.printers(),
                light.views(),
                light.own()));
    }
}
