package dev.lampwright.cli;

import dev.lampwright.broker.OwnCertificate;
import dev.lampwright.config.Config;
import dev.lampwright.config.Credentials;
import dev.lampwright.config.PageSettings;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Files that a configuration names and that do not exist. */
final class MissingFiles {
    private final Map<String, String> environment;
    private final List<String> lines = new ArrayList<>();

    private MissingFiles(Map<String, String> environment) {
        this.environment = environment;
    }

    /**
     * Finds them.
     *
     * @param config a valid configuration
     * @param environment of this process, which gives the location of credentials
     * @return a line for each that does not exist or is a folder; none for those that the service manager provides, nor for those that this
     *     user must not see
     */
    static List<String> of(Config config, Map<String, String> environment) {
        MissingFiles missing = new MissingFiles(environment);
        missing.look("broker.password_file", config.broker().passwordFile(), "write the password there");
        missing.look("broker.ca_file", config.broker().caFile(), "put the certificates there that mqtts is to trust");
        Optional<OwnCertificate> own = config.broker().ownCertificate();
        missing.look("broker.certificate_file", own.map(OwnCertificate::certificateFile), "put the certificate there");
        missing.look("broker.key_file", own.map(OwnCertificate::keyFile), "put the certificate's key there");
        missing.look("page.token_file", config.page().flatMap(PageSettings::tokenFile), "write the token there");
        return missing.lines;
    }

    private void look(String key, Optional<Path> named, String whatToDo) {
        named.filter(file -> !Credentials.isOne(file, environment)).ifPresent(file -> {
            if (Files.isDirectory(file)) {
                lines.add(key + ": " + file + " is a folder; give the path of a file");
            } else if (Files.notExists(file)) {
                lines.add(key + ": " + file + " does not exist; " + whatToDo + ", or correct the path");
            }
        });
    }
}
