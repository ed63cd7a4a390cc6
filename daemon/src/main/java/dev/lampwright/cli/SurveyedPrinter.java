package dev.lampwright.cli;

import dev.lampwright.broker.Broker;
import dev.lampwright.broker.UnreachedException;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.Mistake;
import dev.lampwright.payload.Source;
import dev.lampwright.phrase.Phrase;
import dev.lampwright.tool.fit.HeardPrinter;
import dev.lampwright.tool.fit.PrinterFinder;
import dev.lampwright.tool.fit.UnheardException;
import dev.lampwright.tool.survey.HeardState;
import dev.lampwright.tool.survey.Listener;
import dev.lampwright.tool.survey.Proposal;
import dev.lampwright.tool.survey.ProposedConfig;
import dev.lampwright.tool.survey.SurveyTable;
import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** The survey as a step of the guided fitting. */
final class SurveyedPrinter implements PrinterFinder {
    private static final String ALL = "#";

    /** Where the state was last heard. */
    private Optional<Source> state = Optional.empty();

    @Override
    public HeardPrinter find(Map<String, String> broker, Duration duration, Told told) throws UnheardException {
        told.say(List.of(Phrase.of(
                "listening",
                "Listening for " + duration.toSeconds() + " s. Let the printer heat up or print during that time.",
                "seconds",
                duration.toSeconds())));
        try (Listener listener = new Listener(broker(broker), ALL)) {
            listener.listen(duration, (survey, connected) -> {
                if (told.ended()) {
                    listener.stop();
                }
            });
            return proposed(listener.survey().proposal(), told);
        } catch (UnreachedException e) {
            throw new UnheardException(Phrase.of(
                    e.code().isEmpty() ? "broker_other" : e.code(),
                    e.getMessage(),
                    "url",
                    e.url().toString(),
                    "why",
                    e.getMessage()));
        } catch (ConfigException | IOException e) {
            throw new UnheardException(Phrase.quoted(line(e)));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return HeardPrinter.NOTHING;
    }

    private static Broker broker(Map<String, String> values) throws ConfigException {
        return ConfigFile.broker(Map.copyOf(values));
    }

    private static String line(Exception e) {
        return e instanceof ConfigException wrong
                ? wrong.mistakes().stream().map(Mistake::toString).collect(Collectors.joining("; "))
                : e.getMessage();
    }

    private HeardPrinter proposed(Proposal proposal, Told told) {
        if (!ProposedConfig.isEnough(proposal)) {
            told.say(List.of(Phrase.of(
                    "heard_no_printer",
                    proposal.messages() + " messages came, and none of them looks like a printer's.",
                    "count",
                    proposal.messages())));
            return HeardPrinter.NOTHING;
        }
        told.say(SurveyTable.findings(proposal));
        Optional<HeardState> heard = HeardState.of(proposal);
        state = heard.map(HeardState::source);
        return new HeardPrinter(
                ProposedConfig.printerSections(proposal),
                heard.map(HeardState::place).orElse(""),
                heard.map(HeardState::words).orElse(List.of()).stream()
                        .map(word -> new HeardPrinter.Word(word.pattern(), word.meanwhile(), word.state()))
                        .toList());
    }

    @Override
    public Optional<String> nextWord(Map<String, String> broker, String place, Duration patience, Told told) {
        if (state.isEmpty()) {
            told.say(List.of(Phrase.of("listen_first", "Listen to the printer again first: b goes back there.")));
            return Optional.empty();
        }
        try {
            return new NextWord(state.get()).heard(broker(broker), patience, told::ended);
        } catch (ConfigException e) {
            told.say(List.of(Phrase.quoted(line(e))));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return Optional.empty();
    }
}
