package dev.lampwright.cli;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.demo.ColourDepth;
import dev.lampwright.engine.StateColours;
import dev.lampwright.history.Account;
import dev.lampwright.history.Accounts;
import dev.lampwright.history.HistoryFile;
import dev.lampwright.history.HistoryJson;
import dev.lampwright.json.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The command {@code history}: what has happened, as recorded by a daemon. */
@Command(
        name = "history",
        header = "Show past jobs and faults.",
        description = {
            "Shows what the daemon of a configuration file has recorded: a timeline of the printer's states in the colours of their"
                    + " looks, the last jobs, and the last faults with the printer's words and who acknowledged them. Times are"
                    + " local. The service's files belong to its user, so reading them may need sudo."
        },
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {
            "0:the history was shown",
            "1:no history was found, a file cannot be read, or the configuration is invalid",
            "2:usage error"
        },
        footer = {"", "Example: lampwright history /etc/lampwright/lampwright.toml --since 7d"})
final class HistoryCommand implements Callable<Integer> {
    private static final int USUALLY_SHOWN = 20;
    private static final Duration USUAL_TIME = Duration.ofHours(24);
    private static final int MOST_COLUMNS = 120;
    private static final DateTimeFormatter AS_OF = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm xxx", Locale.ROOT);

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "The configuration file.")
    private Path file;

    @Mixin
    private RigOption rig;

    @Option(names = "--jobs", description = "Show only jobs.")
    private boolean jobsAlone;

    @Option(names = "--faults", description = "Show only faults.")
    private boolean faultsAlone;

    @Option(
            names = "--since",
            paramLabel = "TIME",
            converter = Since.Reader.class,
            description =
                    "Show what lasted until this time or longer: a date, such as 2026-11-27, with a time of day, such as"
                            + " 2026-11-27T09:00, or how long ago, such as 90m, 12h or 7d. Without it, the timeline has the last 24"
                            + " hours, and the tables have the last 20 each.")
    private Optional<Since> since = Optional.empty();

    @Mixin
    private JsonOption json;

    @Override
    public Integer call() throws ConfigException, IOException {
        file = rig.file(file);
        Config config = ConfigFile.read(file);
        ZoneId zone = ZoneId.systemDefault();
        Path kept = kept(System.getenv());
        if (!Files.isReadable(kept)) {
            throw new IOException(kept + ": cannot be read by this user; try sudo");
        }
        Accounts whole = HistoryFile.read(kept);
        Optional<Instant> from = since.map(one -> one.instant(Instant.now(), zone));
        Accounts shown = from.map(whole::since).orElse(whole);
        if (json.wanted()) {
            spec.commandLine().getOut().println(json(shown, config, kept));
        } else {
            lines(shown, from, config, zone).forEach(spec.commandLine().getOut()::println);
        }
        return ExitCode.OK;
    }

    /** The newest history that a daemon has kept. */
    private Path kept(Map<String, String> environment) throws IOException {
        List<Path> places = StateFile.histories(file, environment, Path.of(System.getProperty("user.home")));
        Optional<Path> newest = Optional.empty();
        for (Path place : places) {
            boolean there = Files.exists(place, LinkOption.NOFOLLOW_LINKS);
            if (there && (newest.isEmpty() || changed(place) > changed(newest.get()))) {
                newest = Optional.of(place);
            }
        }
        return newest.orElseThrow(
                () -> new IOException(
                        file + ": no history is kept yet; a daemon writes it to "
                                + String.join(
                                        " or ",
                                        places.stream().map(Path::toString).toList())
                                + " (if you run it by hand, only with [history] keep = true); if it exists, this user cannot see it: try sudo"));
    }

    private static long changed(Path place) throws IOException {
        return Files.getLastModifiedTime(place, LinkOption.NOFOLLOW_LINKS).toMillis();
    }

    private String json(Accounts shown, Config config, Path kept) {
        JsonObject colours = new JsonObject();
        StateColours.of(config).forEach((state, colour) -> colours.put(state.word(), colour));
        Map<String, Account> only = new LinkedHashMap<>();
        shown.byPrinter().forEach((printer, account) -> only.put(printer, only(account)));
        return HistoryJson.of(new Accounts(shown.asOf(), only))
                .put("colours", colours)
                .put("file", kept.toString())
                .text();
    }

    private boolean wants(boolean alone) {
        return alone || !(jobsAlone || faultsAlone);
    }

    private Account only(Account all) {
        boolean rest = !(jobsAlone || faultsAlone);
        return new Account(
                all.asOf(),
                wants(jobsAlone) ? all.jobs() : List.of(),
                wants(faultsAlone) ? all.faults() : List.of(),
                rest ? all.spans() : List.of(),
                rest ? all.curves() : List.of());
    }

    private List<String> lines(Accounts shown, Optional<Instant> from, Config config, ZoneId zone) {
        List<String> lines = new ArrayList<>();
        lines.add(file + ": as of " + AS_OF.format(shown.asOf().atZone(zone)) + " (" + zone.getId() + ")");
        shown.byPrinter().forEach((printer, account) -> {
            if (!printer.isEmpty()) {
                lines.add("");
                lines.add(printer);
            }
            lines.addAll(lines(account, from, config, zone));
        });
        return lines;
    }

    private List<String> lines(Account shown, Optional<Instant> from, Config config, ZoneId zone) {
        HistoryLines words = new HistoryLines(zone);
        List<String> lines = new ArrayList<>();
        if (!jobsAlone && !faultsAlone) {
            lines.add("");
            lines.addAll(timeline(shown, from, config, zone));
        }
        if (wants(jobsAlone)) {
            lines.add("");
            lines.addAll(words.jobs(last("Jobs", shown.jobs(), lines)));
        }
        if (wants(faultsAlone)) {
            lines.add("");
            lines.addAll(words.faults(last("Faults", shown.faults(), lines)));
        }
        return lines;
    }

    private static List<String> timeline(Account shown, Optional<Instant> from, Config config, ZoneId zone) {
        Map<String, String> environment = System.getenv();
        int columns = Math.min(MOST_COLUMNS, LooksCommand.columns(environment));
        Instant start = from.map(time -> laterOf(time, shown))
                .orElseGet(() -> shown.asOf().minus(USUAL_TIME));
        ColourDepth depth = ColourDepth.of(environment);
        return new StateRibbon(shown, start, zone, StateColours.of(config), depth, columns).lines();
    }

    /** A time, or the beginning of the known history if that is later. */
    private static Instant laterOf(Instant time, Account shown) {
        Instant first = shown.spans().isEmpty()
                ? shown.asOf()
                : shown.spans().get(0).from().instant();
        return time.isAfter(first) ? time : first;
    }

    /** Adds the heading of a table, and returns its rows. */
    private <T> List<T> last(String heading, List<T> all, List<String> lines) {
        int earlier = since.isPresent() ? 0 : Math.max(0, all.size() - USUALLY_SHOWN);
        lines.add(earlier == 0 ? heading : heading + " (" + earlier + " earlier ones with --since 1970-01-01)");
        return all.subList(earlier, all.size());
    }
}
