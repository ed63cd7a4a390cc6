package dev.lampwright.page;

import dev.lampwright.config.Config;
import java.util.List;

/** What other parts of Lampwright say about a configuration, for viewers of the page. */
public interface Advice {
    /** None: of what is invented. */
    Advice NONE = new Advice() {
        @Override
        public List<String> wiring(Config config) {
            return List.of();
        }

        @Override
        public String drawing(Config config) {
            return "<svg xmlns=\"http://www.w3.org/2000/svg\"/>";
        }

        @Override
        public List<String> warnings(Config config) {
            return List.of();
        }
    };

    /**
     * The verdicts of the electrical plan.
     *
     * @param config whose wiring
     * @return lines that start with their level, the worst first
     */
    List<String> wiring(Config config);

    /**
     * The wiring and the voltage along the strip.
     *
     * @param config whose wiring
     * @return SVG
     */
    String drawing(Config config);

    /**
     * Warnings about a valid configuration.
     *
     * @param config the configuration
     * @return one line each
     */
    List<String> warnings(Config config);
}
