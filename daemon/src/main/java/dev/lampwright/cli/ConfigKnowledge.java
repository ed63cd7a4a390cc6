package dev.lampwright.cli;

import dev.lampwright.broker.Broker;
import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.phrase.Phrase;
import dev.lampwright.tool.fit.FileKnowledge;
import dev.lampwright.tool.survey.PrinterMerge;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What the fitting learns about a configuration. */
final class ConfigKnowledge implements FileKnowledge {
    private final Path file;

    ConfigKnowledge(Path file) {
        this.file = file;
    }

    @Override
    public InForce inForce(String text) throws IOException {
        try {
            Config config = ConfigFile.read(text, file);
            return new InForce(
                    config.controller().port(),
                    config.controller().baud(),
                    config.setup(),
                    values(config.broker()),
                    ConfigWarnings.showsFaults(config.bindings()));
        } catch (ConfigException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    private static Map<String, String> values(Broker broker) {
        Map<String, String> values = new LinkedHashMap<>();
        values.put("url", broker.url().toString());
        broker.username().ifPresent(name -> values.put("username", name));
        broker.passwordFile().ifPresent(path -> values.put("password_file", path.toString()));
        broker.caFile().ifPresent(path -> values.put("ca_file", path.toString()));
        broker.ownCertificate().ifPresent(own -> {
            values.put("certificate_file", own.certificateFile().toString());
            values.put("key_file", own.keyFile().toString());
        });
        return values;
    }

    @Override
    public String withPrinter(String text, String sections) {
        return PrinterMerge.into(text, sections);
    }

    @Override
    public List<Phrase> review(Path written) {
        return FitReview.of(written);
    }
}
