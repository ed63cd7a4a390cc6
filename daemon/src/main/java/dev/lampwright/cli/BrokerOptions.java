package dev.lampwright.cli;

import dev.lampwright.broker.Broker;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.Credentials;
import dev.lampwright.config.RigFile;
import dev.lampwright.config.ShopFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The broker and its login as options: a configuration that contains them, or the broker itself. */
final class BrokerOptions {
    @Option(names = "--config", paramLabel = "FILE", description = "Use the broker in this configuration file.")
    private Path file;

    @Option(
            names = "--broker",
            paramLabel = "URL",
            description =
                    "The broker, if you have no configuration file: mqtt://host or mqtts://host, with :port if needed.")
    private String url;

    @Option(names = "--username", paramLabel = "NAME", description = "Name to log in with.")
    private String username;

    @Option(names = "--password-file", paramLabel = "FILE", description = "A file whose first line is the password.")
    private String passwordFile;

    @Option(names = "--ca-file", paramLabel = "FILE", description = "PEM file with the certificates that mqtts trusts.")
    private String caFile;

    @Option(names = "--certificate-file", paramLabel = "FILE", description = "PEM file with our own certificate.")
    private String certificateFile;

    @Option(names = "--key-file", paramLabel = "FILE", description = "PEM file with its key.")
    private String keyFile;

    @Mixin
    private RigOption rig;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    /** Uses the broker of a configuration unless another is given. */
    void orOf(Path configuration) {
        if (url == null && file == null) {
            file = configuration;
        }
    }

    /** Refuses options that exclude each other. */
    void requireRight() {
        if ((url == null) == (file == null)) {
            throw wrong("needs one of --broker and --config; write for instance --broker mqtt://127.0.0.1");
        }
        if (file == null && rig.isGiven()) {
            throw wrong("--rig goes with --config and the folder of several rigs");
        }
        if (file != null && !values().isEmpty()) {
            throw wrong("user name, password and certificates go with --broker; the file of --config has its own");
        }
    }

    /** The broker. */
    Broker broker() throws ConfigException {
        return file == null ? ConfigFile.broker(values()) : of(rig.file(file));
    }

    private Broker of(Path configuration) throws ConfigException {
        Broker broker = ConfigFile.readBroker(configuration);
        boolean withheld = broker.passwordFile()
                .filter(password -> Credentials.isOne(password, System.getenv()) && !Files.isReadable(password))
                .isPresent();
        if (withheld) {
            throw wrong(configuration + " has its password in a credential, which only the service can read;"
                    + " log in with a name of your own: --broker, --username and --password-file");
        }
        return broker;
    }

    /** The broker; for a folder with several rigs of which none is named, that of the first. */
    Broker brokerOfAny() throws ConfigException {
        if (file != null && !rig.isGiven() && ShopFile.isIn(file)) {
            Optional<RigFile> first = RigFile.in(file).stream().findFirst();
            if (first.isPresent()) {
                return of(first.get().path());
            }
        }
        return broker();
    }

    /** The configuration, if there is one. */
    Optional<Path> file() throws ConfigException {
        return file == null ? Optional.empty() : Optional.of(rig.file(file));
    }

    private Map<String, Object> values() {
        Map<String, Object> values = new LinkedHashMap<>();
        values.put("url", url);
        values.put("username", username);
        values.put("password_file", passwordFile);
        values.put("ca_file", caFile);
        values.put("certificate_file", certificateFile);
        values.put("key_file", keyFile);
        values.values().removeIf(value -> value == null);
        return values;
    }

    private ParameterException wrong(String what) {
        return new ParameterException(spec.commandLine(), what);
    }
}
