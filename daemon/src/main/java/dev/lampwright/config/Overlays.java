package dev.lampwright.config;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Finds the looks that are kept apart from configuration files. */
public interface Overlays {
    /** There are none. */
    Overlays NONE = new Overlays() {
        @Override
        public Optional<Path> of(Path config) {
            return Optional.empty();
        }

        @Override
        public boolean leavesOut(Path overlay, List<Mistake> why) {
            return false;
        }
    };

    /**
     * Where looks are kept apart from a configuration file.
     *
     * @param config path of the configuration file
     * @return a file, whether it exists or not
     */
    Optional<Path> of(Path config);

    /**
     * Decides what becomes of a configuration file whose looks elsewhere are not right.
     *
     * @param overlay where they are
     * @param why what is wrong with them
     * @return whether to go on without them; else the configuration is not valid
     */
    boolean leavesOut(Path overlay, List<Mistake> why);

    /** Reads a configuration together with looks. */
    interface Reading {
        /**
         * Reads it.
         *
         * @param over the looks
         * @return what was read
         * @throws ConfigException with all mistakes
         */
        Examined with(List<LooksOverlay> over) throws ConfigException;
    }

    /**
     * Reads a configuration with the looks that are kept apart from it, if there are any.
     *
     * @param config path of the configuration file
     * @param reading reads it
     * @return what was read
     * @throws ConfigException with all mistakes
     */
    default Examined over(Path config, Reading reading) throws ConfigException {
        Optional<Path> overlay = of(config).filter(Files::exists);
        if (overlay.isEmpty()) {
            return reading.with(List.of());
        }
        try {
            return reading.with(List.of(LooksOverlay.read(overlay.get())));
        } catch (ConfigException e) {
            String name = overlay.get().toString();
            boolean alone =
                    e.mistakes().stream().allMatch(mistake -> mistake.file().equals(name));
            if (!alone || !leavesOut(overlay.get(), e.mistakes())) {
                throw e;
            }
            return reading.with(List.of());
        }
    }
}
