package dev.lampwright.cli;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.Mistake;
import dev.lampwright.tool.fit.PrinterFinder;
import dev.lampwright.tool.survey.Listener;
import dev.lampwright.tool.survey.Proposal;
import dev.lampwright.tool.survey.ProposedConfig;
import dev.lampwright.tool.survey.SurveyTable;
import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The survey as a step of the guided fitting. */
final class SurveyedPrinter implements PrinterFinder {
    private static final String ALL = "#";

    @Override
    public Optional<String> find(Map<String, String> broker, Duration duration, Told told) {
        told.say(List.of("Listening for " + duration.toSeconds() + " s. Let the printer heat up or print meanwhile."));
        try (Listener listener = new Listener(ConfigFile.broker(Map.copyOf(broker)), ALL)) {
            listener.listen(duration, (survey, connected) -> {
                if (told.ended()) {
                    listener.stop();
                }
            });
            return proposed(listener.survey().proposal(), told);
        } catch (ConfigException e) {
            told.say(e.mistakes().stream().map(Mistake::toString).toList());
        } catch (IOException e) {
            told.say(List.of(e.getMessage()));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return Optional.empty();
    }

    private static Optional<String> proposed(Proposal proposal, Told told) {
        if (!ProposedConfig.isEnough(proposal)) {
            told.say(List.of(proposal.messages() + " messages came, and none of them looks like a printer's."));
            return Optional.empty();
        }
        told.say(SurveyTable.reasons(proposal));
        return Optional.of(ProposedConfig.printerSections(proposal));
    }
}
