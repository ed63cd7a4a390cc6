package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.toml.TomlText;
import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Finds out where the printer reports what. */
final class PrinterStep implements Step {
    private static final String USUAL = "mqtt://127.0.0.1:1883";

    /** How the placeholder starts, which identifies it. */
    static final String STAND_IN = "# TO DO: nothing was found";

    /** Keeps the file valid until somebody binds the printer by hand; check warns about what is missing. */
    private static final String PLACEHOLDER = """
            # TO DO: nothing was found about the printer yet; this fills the gap. Let lampwright survey listen while it heats up and
            # prints, and put in what it finds. The example file has all there is.
            [printer.state]
            topic = "shop/alder/job"
            printing = ["RUN"]
            """;

    static final Question<Integer> SECONDS = new Question<Integer>(
                    "For how many seconds? Enter means 60.",
                    "The longer it listens, the more it finds; the first minutes of a print show the most.",
                    line -> line.isEmpty() ? 60 : TypedNumbers.readWhole(line, 1, 3600))
            .coded("printer_seconds")
            .in(Form.whole(1, 3600).usually("60"));

    private static final Question<String> URL = new Question<String>(
                    "Which MQTT broker does the printer publish to? Enter means " + USUAL + ".",
                    "Its address: a host name such as broker.lan or localhost:1883, or mqtts://host for an encrypted"
                            + " connection.",
                    line -> line.isEmpty() ? USUAL : readUrl(line))
            .coded("printer_broker")
            .in(Form.TEXT.usually(USUAL));

    private static final Question<Optional<String>> NAME = new Question<Optional<String>>(
                    "What is lampwright's user name there? Press Enter if none is needed.",
                    "The user name with which lampwright logs in. The next question asks for a file with its password.",
                    PrinterStep::readName)
            .coded("printer_user")
            .in(Form.TEXT.skipped("none"));

    private static final Question<Optional<String>> PASSWORD = new Question<Optional<String>>(
                    "Which file holds the password, in its first line? Enter if there is none.",
                    "The password is read from there and stored nowhere else. Make the file readable by lampwright's user only.",
                    PrinterStep::readFile)
            .coded("printer_password")
            .in(Form.TEXT.of(Form.Kind.SECRET).skipped("none"));

    private static final Question<Optional<String>> TRUST = new Question<Optional<String>>(
                    "Which PEM file holds the certificates that are trusted? Enter means those of this computer.",
                    "Needed if the broker's certificate is your own: the file of the authority that signed it.",
                    PrinterStep::readFile)
            .coded("printer_trust")
            .in(Form.TEXT.of(Form.Kind.CERTIFICATES).skipped("trust_usual"));

    private final PrinterFinder finder;

    PrinterStep(PrinterFinder finder) {
        this.finder = finder;
    }

    @Override
    public String name() {
        return "printer";
    }

    @Override
    public String title() {
        return "what the printer reports";
    }

    @Override
    public Findings run(Findings before, FittingBench bench) throws LeaveException, IOException {
        bench.darken();
        String url = bench.ask(URL);
        Map<String, String> broker = login(url, bench);
        boolean listen = bench.ask(Question.yesOrNo(
                        "Should lampwright listen there now, to find where the printer reports what?",
                        "This works best while the printer heats up. With n, you enter it into the file by hand.")
                .coded("printer_listen"));
        Duration duration = Duration.ofSeconds(listen ? bench.ask(SECONDS) : 0);
        Listening listening = new Listening(finder, bench, true);
        Listening.Ended ended = new Listening.Ended(HeardPrinter.NOTHING, Listening.Way.WITHOUT);
        if (listen) {
            ended = listening.to(broker, duration);
        } else {
            bench.find(HeardPrinter.NOTHING::text);
        }
        while (ended.asksAgain()) {
            url = ended.way() == Listening.Way.ADDRESS ? bench.ask(URL) : url;
            broker = login(url, bench);
            ended = listening.to(broker, duration);
        }
        HeardPrinter heard = ended.heard();
        String sections = StateWordsDialogue.completed(heard, Map.of(), finder, broker, bench);
        if (sections.isEmpty()) {
            String command = "lampwright survey" + options(broker);
            bench.say(Phrase.of(
                    "printer_place",
                    "Lampwright leaves a place for that in the file. While the printer heats up and prints, find out what to put there with: "
                            + command,
                    "command",
                    command));
        }
        return before.withPrinter(
                section(broker) + "\n" + (sections.isEmpty() ? PLACEHOLDER : sections.strip() + "\n"));
    }

    private static Map<String, String> login(String url, FittingBench bench) throws LeaveException, IOException {
        Map<String, String> broker = new LinkedHashMap<>();
        broker.put("url", url);
        bench.ask(NAME).ifPresent(name -> broker.put("username", name));
        if (broker.containsKey("username")) {
            bench.ask(PASSWORD).ifPresent(file -> broker.put("password_file", file));
        }
        if (url.startsWith("mqtts:")) {
            bench.ask(TRUST).ifPresent(file -> broker.put("ca_file", file));
        }
        return broker;
    }

    private static String section(Map<String, String> broker) {
        StringBuilder section = new StringBuilder("[broker]\n");
        broker.forEach((key, value) ->
                section.append(key).append(" = ").append(TomlText.quoted(value)).append('\n'));
        return section.toString();
    }

    /** As accepted by the command {@code survey}. */
    private static String options(Map<String, String> broker) {
        StringBuilder options = new StringBuilder();
        broker.forEach(
                (key, value) -> options.append(key.equals("url") ? " --broker " : " --" + key.replace('_', '-') + " ")
                        .append(value));
        return options.toString();
    }

    private static Optional<String> readName(String line) throws Question.UnusableException {
        if (line.chars().anyMatch(Character::isISOControl)) {
            throw new Question.UnusableException("unshown", "that has a character in it that cannot be shown");
        }
        return line.isEmpty() ? Optional.empty() : Optional.of(line);
    }

    /** An absolute path, since the file that is written may be in another folder. */
    private static Optional<String> readFile(String line) throws Question.UnusableException {
        if (line.isEmpty()) {
            return Optional.empty();
        }
        try {
            Path file = Path.of(line).toAbsolutePath().normalize();
            if (Files.isRegularFile(file) && Files.isReadable(file)) {
                return Optional.of(file.toString());
            }
        } catch (InvalidPathException e) {
            throw new Question.UnusableException("file_name", "that is not a file name");
        }
        throw new Question.UnusableException("file_missing", "there is no such file, or it may not be read");
    }

    private static String readUrl(String line) throws Question.UnusableException {
        try {
            URI url = new URI(line.contains("://") ? line : "mqtt://" + line);
            boolean right =
                    ("mqtt".equals(url.getScheme()) || "mqtts".equals(url.getScheme())) && url.getHost() != null;
            if (right && url.getUserInfo() == null && url.getRawPath().isEmpty()) {
                return url.toString();
            }
        } catch (URISyntaxException e) {
            throw new Question.UnusableException(
                    "address", "that is not an address: type host or host:port, or mqtts://host");
        }
        throw new Question.UnusableException(
                "address_only",
                "type host or host:port, or mqtts://host for an encrypted connection, and nothing else");
    }
}
