package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Listens to the printer. If its broker cannot be reached, says why, and asks what to do. */
final class Listening {
    private final PrinterFinder finder;
    private final FittingBench bench;
    private final boolean changeable;

    /** What to do if nothing could be heard. */
    enum Way {
        /** Listen again. */
        AGAIN,
        /** Ask for the name and the password again. */
        LOGIN,
        /** Ask for the address again, and for the login. */
        ADDRESS,
        /** Go on without listening. */
        WITHOUT
    }

    /**
     * How listening ended.
     *
     * @param heard what was heard
     * @param way what to do, if nothing could be heard: {@link Way#LOGIN} or {@link Way#ADDRESS}; otherwise {@link Way#WITHOUT}
     */
    record Ended(HeardPrinter heard, Way way) {
        boolean asksAgain() {
            return way != Way.WITHOUT;
        }
    }

    /**
     * Prepares.
     *
     * @param finder listens
     * @param bench to say and ask
     * @param changeable whether address and login can be typed again
     */
    Listening(PrinterFinder finder, FittingBench bench, boolean changeable) {
        this.finder = finder;
        this.bench = bench;
        this.changeable = changeable;
    }

    /** Listens, repeatedly if the user says so. */
    Ended to(Map<String, String> broker, Duration duration) throws LeaveException, IOException {
        while (true) {
            String found = bench.find(() -> find(broker, duration));
            Optional<Phrase> unheard = UnheardException.of(found);
            if (unheard.isEmpty()) {
                return new Ended(HeardPrinter.of(found), Way.WITHOUT);
            }
            bench.say(unheard.get());
            Way way = bench.ask(whatNow());
            if (way != Way.AGAIN) {
                return new Ended(HeardPrinter.NOTHING, way);
            }
        }
    }

    private String find(Map<String, String> broker, Duration duration) {
        try {
            return finder.find(broker, duration, bench).text();
        } catch (UnheardException e) {
            return e.text();
        }
    }

    private Question<Way> whatNow() {
        List<Question.Option<Way>> options = new ArrayList<>();
        options.add(new Question.Option<>("", "try again", Way.AGAIN).named("listen_again"));
        if (changeable) {
            options.add(new Question.Option<>("1", "type the name and the password again", Way.LOGIN)
                    .named("listen_login"));
            options.add(new Question.Option<>("2", "type the address again", Way.ADDRESS).named("listen_address"));
        }
        options.add(new Question.Option<>("0", "go on without listening", Way.WITHOUT).named("listen_without"));
        return Question.choice(
                        "Lampwright could not listen. What now?",
                        "Without listening, Lampwright leaves a place in the file where you enter by hand what the printer reports.",
                        options)
                .coded("listen_failed");
    }
}
