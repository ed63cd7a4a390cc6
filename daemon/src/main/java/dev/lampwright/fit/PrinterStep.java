package dev.lampwright.fit;

import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.time.Duration;
import java.util.List;

/** Finds out where the printer says what. */
final class PrinterStep implements Step {
    private static final String USUAL = "mqtt://127.0.0.1:1883";

    /** Makes the file good until somebody has bound it by hand. */
    private static final String PLACEHOLDER = """
            # TO DO: nothing was found about the printer yet. Listen while it heats up and prints, and put in what it says where:
            # the topic, and with at, a JSON Pointer (RFC 6901), the place in the payload. The example file has all there is.
            [printer.state]
            topic = "printer/state"
            printing = ["printing"]
            """;

    private static final Question<Integer> SECONDS = new Question<>(
            "For how many seconds? Enter means 60.",
            List.of(),
            "The longer it listens, the more it finds; the first minutes of a print tell most.",
            line -> line.isEmpty() ? 60 : Numbers.readWhole(line, 1, 3600));

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
        return "what the printer says";
    }

    @Override
    public Findings run(Findings before, Bench bench) throws LeaveException, IOException {
        bench.darken();
        String broker = bench.ask(new Question<>(
                "Which MQTT broker does the printer speak to? Enter means " + USUAL + ".",
                List.of(),
                "Its address, mqtt://host or mqtts://host. A name and a password are put into the file later, by hand.",
                line -> line.isEmpty() ? USUAL : readUrl(line)));
        boolean listen = bench.ask(Question.yesOrNo(
                "Shall lampwright listen there now, to find where the printer says what?",
                "Best while the printer is on and heats up. With n, you put it into the file by hand."));
        Duration duration = Duration.ofSeconds(listen ? bench.ask(SECONDS) : 0);
        String found =
                bench.find(() -> listen ? finder.find(broker, duration, bench).orElse("") : "");
        if (found.isEmpty()) {
            bench.say("The file gets a place to fill in: it tells how. Listen with: mosquitto_sub -v -t '#'");
        }
        return before.withPrinter(
                "[broker]\nurl = \"" + broker + "\"\n\n" + (found.isEmpty() ? PLACEHOLDER : found.strip() + "\n"));
    }

    private static String readUrl(String line) throws UnusableException {
        try {
            URI url = new URI(line);
            boolean right =
                    ("mqtt".equals(url.getScheme()) || "mqtts".equals(url.getScheme())) && url.getHost() != null;
            if (right && url.getUserInfo() == null && url.getRawPath().isEmpty()) {
                return url.toString();
            }
        } catch (URISyntaxException e) {
            throw new UnusableException("that is no address: type mqtt://host or mqtts://host");
        }
        throw new UnusableException(
                "type mqtt://host or mqtts://host, with nothing before or behind the host but :port");
    }
}
