package dev.lampwright.cli;

import dev.lampwright.log.StreamCharset;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.UsageMessageSpec;

/** The command {@code lampwright}, which holds all others. */
@Command(
        name = "lampwright",
        description = "Lights a 3D printer so that a glance tells what it is doing.",
        versionProvider = BuildVersion.class,
        subcommands = {
            RunCommand.class,
            DemoCommand.class,
            CheckCommand.class,
            PlanCommand.class,
            RenderCommand.class,
            LooksCommand.class,
            SurveyCommand.class,
            PortsCommand.class,
            TellCommand.class,
            PageCommand.class,
            HistoryCommand.class,
            ShelfCommand.class,
            FitCommand.class
        },
        synopsisSubcommandLabel = "COMMAND",
        footer = {"", "Example: lampwright demo --seconds 30"})
public final class Lampwright {
    Lampwright() {}

    /**
     * Runs a command and ends the process: with 0 on success, 1 on failure, 2 on a usage error.
     *
     * @param args the command's name, then its options and parameters
     */
    public static void main(String[] args) {
        System.exit(commandLine()
                .setOut(StreamCharset.writer(System.out))
                .setErr(StreamCharset.writer(System.err))
                .execute(args));
    }

    /** The command line, which writes to {@link CommandLine#setOut} and {@link CommandLine#setErr}. */
    static CommandLine commandLine() {
        CommandLine lampwright = new CommandLine(new Lampwright());
        lampwright.getCommandSpec().addOption(version());
        addHelp(lampwright);
        TellCommand.describe(lampwright.getSubcommands().get(TellCommand.NAME));
        OptionValues.readBy(lampwright);
        Complaints complaints = new Complaints();
        return lampwright.setParameterExceptionHandler(complaints).setExecutionExceptionHandler(complaints);
    }

    /** Reports what went wrong. No lambdas, for the reason given in {@link OptionValues}. */
    private static final class Complaints
            implements CommandLine.IParameterExceptionHandler, CommandLine.IExecutionExceptionHandler {
        @Override
        public int handleParseException(CommandLine.ParameterException e, String[] args) {
            return calledWrongly(e);
        }

        @Override
        public int handleExecutionException(Exception e, CommandLine command, CommandLine.ParseResult parsed)
                throws Exception {
            return Failure.told(e, command, parsed);
        }
    }

    /** Headers are only for the list of commands: a command's own help starts with its usage. */
    private static void addHelp(CommandLine command) {
        command.getCommandSpec().addOption(help());
        command.setHelpSectionKeys(command.getHelpSectionKeys().stream()
                .filter(key -> !key.equals(UsageMessageSpec.SECTION_KEY_HEADER))
                .toList());
        command.getSubcommands().values().forEach(Lampwright::addHelp);
    }

    private static OptionSpec help() {
        return OptionSpec.builder("-h", "--help")
                .usageHelp(true)
                .description("Show this help and exit.")
                .build();
    }

    private static OptionSpec version() {
        return OptionSpec.builder("-V", "--version")
                .versionHelp(true)
                .description("Show the version and exit.")
                .build();
    }

    private static int calledWrongly(CommandLine.ParameterException e) {
        CommandLine command = e.getCommandLine();
        String name = command.getCommandSpec().qualifiedName();
        command.getErr().println(name + ": " + wrong(e) + "; see " + name + " --help");
        return CommandLine.ExitCode.USAGE;
    }

    private static String wrong(CommandLine.ParameterException e) {
        if (e instanceof CommandLine.UnmatchedArgumentException unmatched) {
            String known = String.join(" or ", unmatched.getSuggestions());
            String question = known.isEmpty() ? "" : ", did you mean " + known + "?";
            return "unknown argument " + String.join(" ", unmatched.getUnmatched()) + question;
        }
        return OptionValues.wrong(e).replaceAll("\\s*\\R\\s*", " ");
    }
}
