package dev.lampwright.tool.plan;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import java.util.List;

/** Rigs for tests, from a few lines of a configuration. */
final class Rigs {
    private static final String HEAD = """
            broker.url = "mqtt://alder"
            printer.state.topic = "shop/alder/job"
            printer.state.printing = ["RUN"]
            controller.port = "/dev/ttyACM0"
            """;

    /** A supply without tolerance, and contacts and fuses without resistance: only wire and strip are left. */
    static final String IDEAL = """
            wiring.supplies.strip = { volts = 5, tolerance_percent = 0 }
            wiring.strip.contacts_mohm = 0
            wiring.strip.fuse_mohm = 0
            """;

    private Rigs() {}

    static PlannedLights of(String lines) {
        try {
            Config config = ConfigFile.read(HEAD + lines, "alder.toml");
            return new PlannedLights(
                    "alder.toml",
                    config.setup(),
                    config.framesPerSecond(),
                    config.controller().baud(),
                    config.wiring());
        } catch (ConfigException e) {
            throw new AssertionError(e.mistakes().toString(), e);
        }
    }

    static Plan plan(String lines) {
        return Plan.of(of(lines), List.of());
    }

    /** The only verdict on a subject. */
    static Verdict verdict(Plan plan, String subject) {
        List<Verdict> verdicts = plan.verdicts().stream()
                .filter(verdict -> verdict.subject().equals(subject))
                .toList();
        if (verdicts.size() != 1) {
            throw new AssertionError(verdicts.size() + " verdicts on " + subject + " in " + plan.verdicts());
        }
        return verdicts.get(0);
    }

    /** What shares of amps flow together. */
    static double dot(double[] shares, double[] amps) {
        double sum = 0;
        for (int i = 0; i < shares.length; i++) {
            sum += shares[i] * amps[i];
        }
        return sum;
    }
}
