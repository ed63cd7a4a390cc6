package dev.lampwright.tool.fit;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.phrase.Phrase;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.tool.survey.PrinterMerge;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** What a configuration contains, read like the daemon reads it. */
record TestKnowledge(Path file) implements FileKnowledge {
    @Override
    public InForce inForce(String text) throws IOException {
        try {
            Config config = ConfigFile.read(text, file);
            return new InForce(
                    config.controller().port(),
                    config.controller().baud(),
                    config.setup(),
                    Map.of("url", config.broker().url().toString()),
                    config.bindings().tell(PrinterState.FAULT));
        } catch (ConfigException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    @Override
    public String withPrinter(String text, String sections) {
        return PrinterMerge.into(text, sections);
    }

    @Override
    public List<Phrase> review(Path written) {
        return List.of(Phrase.quoted("reviewed"));
    }
}
