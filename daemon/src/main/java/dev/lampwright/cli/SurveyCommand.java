package dev.lampwright.cli;

import dev.lampwright.broker.Broker;
import dev.lampwright.broker.TopicFilter;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.demo.ColourDepth;
import dev.lampwright.json.Json;
import dev.lampwright.tool.survey.Listener;
import dev.lampwright.tool.survey.Proposal;
import dev.lampwright.tool.survey.ProposedConfig;
import dev.lampwright.tool.survey.SurveyTable;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The command {@code survey}: where a printer reports what. */
@Command(
        name = "survey",
        header = "Find out what a printer publishes on a broker.",
        description = {
            "Listens to a broker while a printer heats up and prints, and shows every value that is published: where it is,"
                    + " how often it is sent, what it was, and which of them look like temperatures and their targets, progress,"
                    + " time left and state, and why. Can write a configuration from that."
        },
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {
            "0:a printer was found, or a signal ended it",
            "1:none was found, the broker refused the login, or the file cannot be written",
            "2:usage error"
        },
        footer = {
            "",
            "Example: lampwright survey --broker mqtt://127.0.0.1 --seconds 300 --write alder.toml",
            "         lampwright survey --into alder.toml --seconds 300"
        })
final class SurveyCommand implements Callable<Integer> {
    private static final double LONGEST_S = 86_400;
    private static final int MOST_ROWS = 500;
    private static final Duration LONGEST_END = Duration.ofSeconds(5);

    @Spec
    private CommandSpec spec;

    @Mixin
    private BrokerOptions source;

    @Option(
            names = "--topics",
            paramLabel = "FILTER",
            defaultValue = "#",
            description = "What to listen to, with + and # as in MQTT. Default: ${DEFAULT-VALUE}, all.")
    private String topics;

    @Option(
            names = "--seconds",
            paramLabel = "N",
            defaultValue = "60",
            description = "How long to listen; Ctrl-C ends it early. Default: ${DEFAULT-VALUE}.")
    private double seconds;

    @Option(names = "--write", paramLabel = "FILE", description = "Write a configuration with what was found.")
    private Path file;

    @Option(
            names = "--as",
            paramLabel = "NAME",
            description =
                    "For a file with several printers. With --write: give the printer a name: its sections are [printers.NAME]."
                            + " With --into: the printer that was listened to.")
    private String name;

    @Option(
            names = "--into",
            paramLabel = "FILE",
            description =
                    "Add what was found about the printer to this configuration, and leave everything else unchanged."
                            + " Uses its broker unless you name another. Shows the change and asks before it"
                            + " writes.")
    private Path into;

    @Option(names = "--yes", description = "With --into: write without asking.")
    private boolean yes;

    @Option(names = "--force", description = "Overwrite an existing file.")
    private boolean force;

    @Mixin
    private JsonOption json;

    private int status = ExitCode.OK;

    @Override
    public Integer call() throws ConfigException, IOException, InterruptedException {
        Optional<SurveyInto> target = target();
        requireRight();
        Broker broker = source.broker();
        if (file != null) {
            NewFile.requireFree(file, force);
        }
        LogSettings.silent();
        try (Listener listener = new Listener(broker, topics)) {
            GracefulShutdown.<IOException>of(LONGEST_END, listener::stop, () -> {
                listen(listener);
                answer(listener.survey().proposal(), broker, listener.trouble(), target);
            });
        }
        return status;
    }

    /** The file to change, which is read before listening starts. */
    private Optional<SurveyInto> target() throws ConfigException, IOException {
        if (into == null) {
            return Optional.empty();
        }
        if (file != null) {
            throw wrong("--write and --into do not go together; --write makes a file, --into changes one");
        }
        source.orOf(into);
        return Optional.of(new SurveyInto(into, name == null ? "" : name, yes, json.wanted() ? err() : out()));
    }

    private void requireRight() {
        if (!(seconds > 0 && seconds <= LONGEST_S)) {
            throw wrong("--seconds is " + seconds + "; write a number above 0, at most " + LONGEST_S);
        }
        source.requireRight();
        if (name != null && file == null && into == null) {
            throw wrong("--as goes with --write and --into");
        }
        TopicFilter.problem(topics).ifPresent(problem -> {
            throw wrong("--topics is not an MQTT topic filter: " + problem);
        });
    }

    private ParameterException wrong(String what) {
        return new ParameterException(spec.commandLine(), what);
    }

    private void listen(Listener listener) throws IOException, InterruptedException {
        Duration duration = Duration.ofNanos(Math.round(seconds * 1e9));
        boolean live = !json.wanted() && ColourDepth.of(System.getenv()) != ColourDepth.PLAIN;
        if (live) {
            try (SurveyScreen screen = new SurveyScreen(out(), duration)) {
                listener.listen(duration, screen::look);
            }
        } else {
            listener.listen(duration, new SurveyReport(err(), duration, listener::trouble)::look);
        }
    }

    private void answer(Proposal proposal, Broker broker, Optional<String> trouble, Optional<SurveyInto> target)
            throws IOException {
        if (json.wanted()) {
            out().println(Json.of(SurveyMap.of(proposal)));
        } else {
            SurveyTable.values(proposal, MOST_ROWS).forEach(out()::println);
            out().println();
            SurveyTable.reasons(proposal).forEach(out()::println);
        }
        if (proposal.leftOut() > 0) {
            err().println(proposal.leftOut() + " values or messages were too many or too long and are left out;"
                    + " --topics narrows what is listened to");
        }
        trouble.ifPresent(err()::println);
        if (!ProposedConfig.isEnough(proposal)) {
            status = ExitCode.SOFTWARE;
            if (trouble.isEmpty() || proposal.messages() > 0) {
                err().println(nothing(proposal));
            }
        } else if (file != null) {
            String text = ProposedConfig.whole(proposal, broker);
            write(name == null ? text : ProposedConfig.named(text, name));
        } else if (target.isPresent()) {
            status = target.get().take(proposal);
        }
    }

    private String nothing(Proposal proposal) {
        return proposal.messages() == 0
                ? "nothing was published on " + topics
                        + "; switch the printer on, check --topics, or listen longer with --seconds"
                : "none of what was heard on " + topics
                        + " looks like a printer; let it heat up and print while this listens, and"
                        + " listen longer with --seconds";
    }

    private void write(String text) throws IOException {
        try {
            ConfigFile.read(text, file.toString());
        } catch (ConfigException e) {
            if (name != null) {
                throw wrong("--as is " + name + ": " + e.mistakes().get(0).what() + "; "
                        + e.mistakes().get(0).whatWouldBeRight());
            }
            throw new IllegalStateException("the file that would be written is not valid: " + e.getMessage(), e);
        }
        NewFile.write(file, text, force);
        err().println(file + ": written; set its port and its strip, then try lampwright check " + file);
    }

    private PrintWriter out() {
        return spec.commandLine().getOut();
    }

    private PrintWriter err() {
        return spec.commandLine().getErr();
    }
}
