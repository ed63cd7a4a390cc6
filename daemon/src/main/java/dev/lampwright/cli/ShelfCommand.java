package dev.lampwright.cli;

import dev.lampwright.broker.Broker;
import dev.lampwright.config.ConfigException;
import dev.lampwright.demo.ColourDepth;
import dev.lampwright.shelf.Shelf;
import dev.lampwright.shelf.ShelfJson;
import dev.lampwright.shelf.ShelfListener;
import dev.lampwright.shelf.ShelfRow;
import java.io.IOException;
import java.io.PrintWriter;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The command {@code shelf}: all rigs at a broker. */
@Command(
        name = "shelf",
        header = "Show all rigs at a broker, those that need you first.",
        description = {
            "Finds every daemon at a broker by its retained status, and shows all rigs in a table that stays up to"
                    + " date: faults first, then acknowledged ones, paused and finished jobs, running jobs with the one that is ready"
                    + " soonest first, idle rigs, and silent ones. If the output is not a terminal, prints the table once."
        },
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {
            "0:the shelf was shown; also if there is nothing on it",
            "1:the broker did not answer or refused the login, or the configuration is invalid",
            "2:usage error"
        },
        footer = {
            "",
            "Example: lampwright shelf --broker mqtt://127.0.0.1",
            "         lampwright shelf --config /etc/lampwright/lampwright.toml --json"
        })
final class ShelfCommand implements Callable<Integer> {
    private static final Duration LONGEST_END = Duration.ofSeconds(5);
    private static final int PLAIN_COLUMNS = 80;

    @Spec
    private CommandSpec spec;

    @Mixin
    private BrokerOptions source;

    @Option(names = "--once", description = "Print the table once and end.")
    private boolean once;

    @Option(
            names = "--levels",
            paramLabel = "N",
            defaultValue = "4",
            description = "Find prefixes of up to N levels: shop/alder has two. Default: ${DEFAULT-VALUE}.")
    private int levels;

    @Mixin
    private JsonOption json;

    private final Shelf shelf = new Shelf(Shelf.USUAL_LAPSE);

    @Override
    public Integer call() throws ConfigException, IOException, InterruptedException {
        source.requireRight();
        if (levels < 1 || levels > ShelfListener.DEEPEST) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--levels is " + levels + "; write a whole number from 1 to " + ShelfListener.DEEPEST);
        }
        Broker broker = source.brokerOfAny();
        ColourDepth depth = ColourDepth.of(System.getenv());
        LogSettings.silent();
        try (ShelfListener listener = new ShelfListener(broker, levels, shelf)) {
            GracefulShutdown.<IOException>of(LONGEST_END, listener::stop, () -> {
                if (json.wanted() || once || depth == ColourDepth.PLAIN) {
                    listener.listenOnce();
                    answer(broker, depth);
                } else {
                    show(listener, depth);
                }
            });
        }
        return ExitCode.OK;
    }

    private void show(ShelfListener listener, ColourDepth depth) throws IOException, InterruptedException {
        try (ShelfScreen screen = new ShelfScreen(out(), shelf, levels, depth)) {
            listener.listen(screen::look);
        }
    }

    private void answer(Broker broker, ColourDepth depth) {
        List<ShelfRow> rows = shelf.rows(System.nanoTime());
        if (json.wanted()) {
            out().println(ShelfJson.of(broker.url(), ShelfListener.filters(levels), rows));
        } else {
            out().println(ShelfTable.summary(rows));
            out().println();
            new ShelfTable(depth, PLAIN_COLUMNS).lines(rows, Integer.MAX_VALUE).forEach(out()::println);
            out().println(ShelfTable.places(rows, levels));
        }
        out().flush();
        if (shelf.left() > 0) {
            spec.commandLine()
                    .getErr()
                    .println("more rigs report than the shelf can show; run it at the broker of each place instead");
        }
    }

    private PrintWriter out() {
        return spec.commandLine().getOut();
    }
}
