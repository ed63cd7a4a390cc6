package dev.lampwright.cli;

import dev.lampwright.config.BrokerUrl;
import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.desk.DeskSettings;
import dev.lampwright.printer.Broker;
import java.net.URI;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Which daemon is meant, as options: the configuration that it runs with, or its broker and its prefix. */
final class Whom {
    @Option(names = "--config", paramLabel = "FILE", description = "The daemon's configuration file.")
    private Path file;

    @Option(
            names = "--broker",
            paramLabel = "URL",
            description = "Its broker, for instance mqtt://127.0.0.1:1883, where no configuration is at hand.")
    private String url;

    @Option(names = "--prefix", paramLabel = "TOPIC", description = "Its desk.prefix. Default: lampwright.")
    private String prefix = DeskSettings.USUAL.prefix();

    @Option(names = "--username", paramLabel = "NAME", description = "Name to log in at the broker with.")
    private String username;

    @Option(
            names = "--password-file",
            paramLabel = "FILE",
            description = "File whose first line is the password for it.")
    private Path passwordFile;

    @Option(names = "--ca-file", paramLabel = "FILE", description = "PEM file with certificates that mqtts:// trusts.")
    private Path caFile;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    private Config config;

    /** Where the daemon's broker is. */
    Broker broker() throws ConfigException {
        return url == null
                ? config().broker()
                : new Broker(
                        address(),
                        Optional.ofNullable(caFile),
                        Optional.ofNullable(username),
                        Optional.ofNullable(passwordFile),
                        Optional.empty());
    }

    private URI address() {
        try {
            return BrokerUrl.parse(url);
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), "--broker " + e.getMessage(), e);
        }
    }

    /** The beginning of the daemon's own topics. */
    String prefix() throws ConfigException {
        return url == null ? config().desk().prefix() : prefix;
    }

    private Config config() throws ConfigException {
        if (file == null) {
            throw new ParameterException(
                    spec.commandLine(), "neither --config nor --broker is given; give one of them");
        }
        if (config == null) {
            config = ConfigFile.read(file);
        }
        return config;
    }
}
