package dev.lampwright.cli;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.broker.Caller;
import dev.lampwright.broker.OwnTopics;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.TalkSpec;
import dev.lampwright.desk.Ask;
import dev.lampwright.json.Json;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The command {@code tell}: sends an ask to a running daemon. */
@Command(
        name = TellCommand.NAME,
        header = "Send a request to a running daemon.",
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {"0:it is done", "1:it was refused, or nobody answered", "2:usage error"},
        footer = {"", "Example: lampwright tell --config /etc/lampwright/lampwright.toml look done --for 30"})
final class TellCommand implements Callable<Integer> {
    static final String NAME = "tell";

    private static final String STATUS = "status";
    private static final int EXAMPLE_COLUMNS = 18;
    private static final String AUTO = "auto";
    private static final double SHORTEST_WAIT_S = 0.1;
    private static final int LONGEST_WAIT_S = 86_400;

    @Spec
    private CommandSpec spec;

    @Mixin
    private BrokerOptions source;

    @Option(
            names = "--prefix",
            paramLabel = "TOPIC",
            converter = OptionValues.Prefix.class,
            description = "The daemon's desk.prefix, with --broker. Default: lampwright.")
    private String prefix;

    @Parameters(
            index = "0",
            paramLabel = "WHAT",
            completionCandidates = AskWords.class,
            description = "What to ask for; see the list above.")
    private String what;

    @Parameters(index = "1..*", paramLabel = "VALUE", arity = "0..*", description = "The value to set.")
    private List<String> values = new ArrayList<>();

    @Option(names = "--for", paramLabel = "SECONDS", description = "How long it lasts.")
    private BigDecimal seconds;

    @Option(
            names = "--until",
            paramLabel = OptionValues.Until.CHANGED,
            converter = OptionValues.Until.class,
            description = "Instead of --for: it lasts until something else is asked for.")
    private String until;

    @Option(
            names = "--fade",
            paramLabel = "SECONDS",
            description = "How long the light takes to change; 0 is one frame.")
    private BigDecimal fade;

    @Option(names = "--dimmer", paramLabel = "NAME", description = "Which white light; without it, all of them.")
    private String dimmer;

    @Option(
            names = "--by",
            paramLabel = "NAME",
            description =
                    "With acknowledge: who has seen the fault, for the history. Default: this machine's command line.")
    private String by;

    @Option(
            names = "--wait",
            paramLabel = "SECONDS",
            defaultValue = "5",
            description = "How long to wait for an answer. Default: ${DEFAULT-VALUE}.")
    private double waitSeconds;

    @Mixin
    private JsonOption json;

    /** What can be asked for, for completion. */
    private static final class AskWords implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            List<String> words = new ArrayList<>(Ask.words());
            words.add(STATUS);
            return words.iterator();
        }
    }

    /** Describes the command with the list of what can be asked for. */
    static void describe(CommandLine tell) {
        List<String> lines = new ArrayList<>();
        lines.add("Sends a request to a running daemon through its broker and prints the reply.");
        lines.add("");
        for (Ask ask : Ask.values()) {
            lines.addAll(described(ask.example(), ask.help()));
        }
        lines.addAll(described(STATUS, "print the daemon's status"));
        lines.add("");
        tell.getCommandSpec()
                .usageMessage()
                .description(lines.stream().map(TellCommand::asFormat).toArray(String[]::new));
    }

    /** A description is a format for {@link String#format}. */
    private static String asFormat(String line) {
        return line.replace("%", "%%");
    }

    /** Example and help next to each other, or on two lines if the example is long. */
    private static List<String> described(String example, String help) {
        String format = "  %-" + EXAMPLE_COLUMNS + "s %s";
        return example.length() <= EXAMPLE_COLUMNS
                ? List.of(format.formatted(example, help))
                : List.of("  " + example, format.formatted("", help));
    }

    @Override
    public Integer call() throws ConfigException, IOException, InterruptedException {
        source.requireRight();
        if (source.file().isPresent() && prefix != null) {
            throw wrong("--prefix goes with --broker; the file of --config has its own");
        }
        requirePatience();
        if (by != null && !isAcknowledge()) {
            throw wrong("--by goes with " + Ask.ACKNOWLEDGE.word());
        }
        LogSettings.silent();
        Map<String, Object> request = what.equals(STATUS) ? Map.of() : request();
        Duration patience = Duration.ofMillis(Math.round(waitSeconds * 1000));
        Caller caller = new Caller(source.broker(), new OwnTopics(prefix()), patience);
        if (what.equals(STATUS)) {
            spec.commandLine().getOut().println(caller.status());
            return ExitCode.OK;
        }
        String id = (String) request.get("id");
        String answer = caller.ask(what, Json.of(request), text -> isFor(id, text));
        return told(answer);
    }

    private boolean isAcknowledge() {
        return what.equals(Ask.ACKNOWLEDGE.word());
    }

    private void requirePatience() {
        if (!(waitSeconds >= SHORTEST_WAIT_S && waitSeconds <= LONGEST_WAIT_S)) {
            throw wrong("--wait is " + waitSeconds + "; write a number of seconds from " + SHORTEST_WAIT_S + " to "
                    + LONGEST_WAIT_S);
        }
    }

    private String prefix() throws ConfigException {
        if (source.file().isPresent()) {
            return KeptLooks.examine(source.file().get(), spec.commandLine().getErr())
                    .config()
                    .talk()
                    .prefix();
        }
        return prefix == null ? TalkSpec.USUAL_PREFIX : prefix;
    }

    private static boolean isFor(String id, String answer) {
        return Json.read(answer)
                .map(node -> node.path("id").asText().equals(id))
                .orElse(false);
    }

    private int told(String answer) {
        JsonNode node = Json.read(answer).orElseThrow();
        boolean done = node.path("done").asBoolean();
        if (json.wanted()) {
            spec.commandLine().getOut().println(answer);
        } else if (done) {
            spec.commandLine().getOut().println(node.path("now").asText());
        } else {
            spec.commandLine().getErr().println("refused: " + node.path("why").asText());
        }
        return done ? ExitCode.OK : ExitCode.SOFTWARE;
    }

    private Map<String, Object> request() {
        if (!Ask.words().contains(what)) {
            throw wrong("WHAT is " + what + "; give one of " + String.join(", ", Ask.words()) + ", " + STATUS);
        }
        Map<String, Object> request = new LinkedHashMap<>();
        Optional.ofNullable(dimmer).ifPresent(name -> request.put("dimmer", name));
        Optional.ofNullable(seconds).ifPresent(time -> request.put("for_s", time));
        Optional.ofNullable(until).ifPresent(time -> request.put("until", time));
        Optional.ofNullable(fade).ifPresent(time -> request.put("fade_s", time));
        if (isAcknowledge()) {
            request.put("by", by == null ? "command line" + ofThisMachine() : by);
        }
        if (!values.isEmpty()) {
            request.put(what, arePairs() ? pairs() : value(String.join(" ", values)));
        }
        request.put("id", UUID.randomUUID().toString());
        return request;
    }

    /** Uses the kernel's host name: resolving its address may need a name server. */
    private static String ofThisMachine() {
        try {
            return " of "
                    + Files.readString(Path.of("/proc/sys/kernel/hostname")).strip();
        } catch (IOException e) {
            return "";
        }
    }

    private boolean arePairs() {
        return values.stream().anyMatch(text -> text.indexOf('=') >= 0)
                || (what.equals(Ask.PIXELS.word()) && !values.equals(List.of(AUTO)));
    }

    /** By name; if one ask contains others, a dot follows the name of the inner one, as in {@code work.side=on}. */
    private Map<String, Object> pairs() {
        Map<String, Object> pairs = new LinkedHashMap<>();
        for (String pair : values) {
            int middle = pair.indexOf('=');
            if (middle < 1) {
                throw wrong("VALUE is " + pair + "; give a name and a value, for instance bed=green or side=40%");
            }
            put(pair.substring(0, middle), pair.substring(middle + 1), pairs);
        }
        return pairs;
    }

    private void put(String name, String text, Map<String, Object> pairs) {
        int dot = what.equals(Ask.LIGHTS.word()) ? name.indexOf('.') : -1;
        if (dot < 1) {
            pairs.put(name, what.equals(Ask.PIXELS.word()) ? text : value(text));
            return;
        }
        String outer = name.substring(0, dot);
        Object inner = outer.equals(Ask.PIXELS.word()) ? text : value(text);
        Map<String, Object> map = new LinkedHashMap<>();
        if (pairs.get(outer) instanceof Map<?, ?> before) {
            before.forEach((key, value) -> map.put((String) key, value));
        }
        map.put(name.substring(dot + 1), inner);
        pairs.put(outer, map);
    }

    private static Object value(String text) {
        try {
            return new BigDecimal(text);
        } catch (NumberFormatException e) {
            return text;
        }
    }

    private ParameterException wrong(String text) {
        return new ParameterException(spec.commandLine(), text);
    }
}
