package dev.lampwright.config;

import java.util.List;
import java.util.Optional;

/**
 * The result of reading one rig's file.
 *
 * @param file its file
 * @param examined its configuration; empty if it is not valid
 * @param mistakes what is wrong; empty if it is valid
 */
public record RigReading(RigFile file, Optional<Examined> examined, List<Mistake> mistakes) {
    /** Keeps a copy of the list. */
    public RigReading {
        mistakes = List.copyOf(mistakes);
    }

    static RigReading of(RigFile file, ShopFile shop, Overlays overlays) {
        try {
            return new RigReading(file, Optional.of(ConfigFile.examine(file, shop, overlays)), List.of());
        } catch (ConfigException e) {
            return new RigReading(file, Optional.empty(), e.mistakes());
        }
    }

    RigReading refused(Mistake why) {
        return new RigReading(file, Optional.empty(), List.of(why));
    }

    /**
     * The rig's name.
     *
     * @return that of its file
     */
    public String name() {
        return file.name();
    }

    /**
     * Its configuration.
     *
     * @return empty if it is not valid
     */
    public Optional<Config> config() {
        return examined.map(Examined::config);
    }
}
