package dev.lampwright.tool.bench;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.Examined;
import dev.lampwright.config.Mistake;
import dev.lampwright.engine.Daemon;
import dev.lampwright.engine.Trial;
import dev.lampwright.look.LookSpec;
import dev.lampwright.tool.check.LookMistakes;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/** Tries looks on the strip that are in no file. They are checked first, and shown for a short while, as long as their page is open. */
final class LookTrial {
    private static final Pattern LEASE = Pattern.compile("[a-z0-9]{1,32}");

    private final BenchFiles files;
    private final Daemon daemon;
    private final BenchWorker worker;

    LookTrial(BenchFiles files, Daemon daemon, BenchWorker worker) {
        this.files = files;
        this.daemon = daemon;
        this.worker = worker;
    }

    /** Puts a look on. */
    Map<String, Object> begin(BenchLook look, BenchBody body) throws BenchRefusal {
        String lease = lease(body);
        int seconds = (int) Trial.LONGEST.toSeconds();
        int time = body.whole("for_s", 1, seconds, seconds);
        LookSpec spec = worker.run("", patience -> checked(look, patience));
        requireBegun(daemon.trial().begin(spec, lease, Duration.ofSeconds(time)));
        Map<String, Object> done = new LinkedHashMap<>();
        done.put("done", true);
        done.put("for_s", time);
        done.put("lease_s", Trial.LEASE.toSeconds());
        return done;
    }

    private static void requireBegun(Trial.Outcome outcome) throws BenchRefusal {
        if (outcome == Trial.Outcome.FAULT) {
            throw new BenchRefusal(409, "fault_on", "there is a fault, which the strip shows first");
        }
        if (outcome == Trial.Outcome.TAKEN) {
            throw new BenchRefusal(409, "trying", "somebody else is trying a look; try again in a minute");
        }
    }

    private LookSpec checked(BenchLook look, DrawPatience patience) throws BenchRefusal {
        try {
            Examined examined = files.examine(look);
            requireRight(look, LookMistakes.of(examined, look.name(), patience.progress()));
            requireSameLights(examined);
            return examined.config().looks().get(look.name());
        } catch (ConfigException e) {
            throw mistaken(look, e.mistakes());
        }
    }

    private static void requireRight(BenchLook look, List<Mistake> mistakes) throws BenchRefusal {
        if (!mistakes.isEmpty()) {
            throw mistaken(look, mistakes);
        }
    }

    /** A look is made for the lights that the file says; until the daemon has taken up a new file, it has others. */
    private void requireSameLights(Examined examined) throws BenchRefusal {
        if (!examined.config().fitting().equals(daemon.tap().config().fitting())) {
            throw new BenchRefusal(
                    409, "other_lights", "the file describes other lights than the daemon runs; reload it first");
        }
    }

    /** Looks that cannot be read, or that the check refuses. */
    static BenchRefusal mistaken(BenchLook look, List<Mistake> mistakes) {
        Mistake first = mistakes.get(0);
        return new BenchRefusal(422, "mistakes", first.sentence())
                .with("what", first.what())
                .with("instead", first.whatWouldBeRight())
                .and(Map.of("mistakes", ToldMistakes.ofLook(mistakes, look.path())));
    }

    /** Says that it is still being tried. */
    Map<String, Object> keep(BenchBody body) throws BenchRefusal {
        Duration left = daemon.trial()
                .keep(lease(body))
                .orElseThrow(() -> over(daemon.trial().whyOver()));
        return Map.of("done", true, "left_s", Math.max(0, left.toSeconds()));
    }

    private static BenchRefusal over(Trial.Over why) {
        return new BenchRefusal(410, "over_" + why.name().toLowerCase(Locale.ROOT), why.words());
    }

    /** Takes it off. */
    Map<String, Object> end(BenchBody body) throws BenchRefusal {
        daemon.trial().end(lease(body));
        return Map.of("done", true);
    }

    private static String lease(BenchBody body) throws BenchRefusal {
        String lease = body.text("lease");
        if (!LEASE.matcher(lease).matches()) {
            throw BenchRefusal.badRequest("lease must be 1 to 32 small letters and digits of your own choice");
        }
        return lease;
    }
}
