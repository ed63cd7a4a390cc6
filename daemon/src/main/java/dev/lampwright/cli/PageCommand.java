package dev.lampwright.cli;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.PageSettings;
import dev.lampwright.config.RigFile;
import dev.lampwright.config.ShopFile;
import dev.lampwright.config.TokenFiles;
import dev.lampwright.demo.ColourDepth;
import dev.lampwright.page.PageAddress;
import dev.lampwright.page.PageCode;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The command {@code page}: the address of the live page, as text and as a code for a phone's camera. */
@Command(
        name = "page",
        header = "Print the live page's address, as a code for a phone too.",
        description = {
            "Prints the addresses of the live page and draws the first as a QR code. If the page has a token, the code carries it:"
                    + " anybody who scans it can open the page, so do not show it to others.",
            "While the package's service has no configuration, prints the same for the page on which the lights are fitted for"
                    + " the first time. Run it with sudo: only root and the service's user may read that token."
        },
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {
            "0:printed",
            "1:the file configures no page, the page's port is not fixed, a file is invalid or cannot be read, or there is neither a"
                    + " configuration nor a fitting",
            "2:usage error"
        },
        footer = {"", "Example: lampwright page alder.toml", "Example: sudo lampwright page"})
final class PageCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Option(
            names = "--watch",
            description = "Put the token of page.view_token_file into the code, which lets people watch only.")
    private boolean watch;

    @Option(
            names = "--edit",
            description =
                    "Put the token of page.edit_token_file into the code, which lets people save looks and fit as well.")
    private boolean edit;

    @Parameters(
            paramLabel = "FILE",
            arity = "0..1",
            defaultValue = RigOption.SERVICE,
            description =
                    "The configuration file, or the folder of several rigs: the page of all of them, or that of --rig"
                            + " (default: ${DEFAULT-VALUE}, the service's).")
    private Path file;

    @Mixin
    private RigOption rig;

    @Override
    public Integer call() throws ConfigException, IOException {
        Path folder = file;
        boolean shop = ShopFile.isIn(folder);
        String name = shop && rig.isGiven() ? RigFile.nameOf(rig.file(file)) : "";
        file = shop ? file.resolve(ShopFile.NAME) : rig.file(file);
        if (watch && edit) {
            throw new ParameterException(
                    spec.commandLine(), "--watch and --edit choose different tokens; give one of them");
        }
        if (!shop && isUnfitted(folder)) {
            new FirstCode(System.getenv())
                    .print(folder, coloured(), spec.commandLine().getOut());
            return ExitCode.OK;
        }
        PageSettings settings = (shop
                        ? ShopFile.read(folder).page()
                        : ConfigFile.read(file).page())
                .orElseThrow(() -> new IOException(file + " has no section [page]; add one, even an empty one"));
        if (settings.port() == 0 && !settings.tls()) {
            throw new IOException(file + ": page.port is 0, so the port changes with every start; the log has it");
        }
        List<String> addresses = PageAddress.all(settings, settings.port()).stream()
                .map(url -> PageAddress.of(name, url))
                .toList();
        PrintWriter out = spec.commandLine().getOut();
        addresses.forEach(out::println);
        if (PageAddress.isForOthers(settings)) {
            TokenFiles own = name.isEmpty()
                    ? TokenFiles.NONE
                    : ConfigFile.read(rig.file(folder)).ownTokens();
            boolean ofRig = !edit && (watch ? own.watching() : own.asking()).isPresent();
            TokenFiles tokens = ofRig ? own : settings.tokens();
            PageCode.of(withToken(addresses.get(0), tokens)).lines(coloured()).forEach(out::println);
            if (settings.tokenFile().isPresent()) {
                out.println("The code carries the token" + whose(shop, ofRig, name)
                        + ". Whoever reads it can open the page" + may() + ".");
            }
        } else {
            out.println("Only this machine can reach it. For a phone, set page.address and page.token_file.");
        }
        return ExitCode.OK;
    }

    /** The folder of a single rig without a file in it. */
    private boolean isUnfitted(Path folder) {
        return Files.notExists(file) && (Files.isDirectory(folder) || folder.equals(Path.of(RigOption.SERVICE)));
    }

    private static boolean coloured() {
        return ColourDepth.of(System.getenv()) != ColourDepth.PLAIN;
    }

    private String withToken(String url, TokenFiles tokens) throws IOException {
        if (edit) {
            return PageAddress.withEditToken(url, tokens);
        }
        return watch ? PageAddress.withViewToken(url, tokens) : PageAddress.withToken(url, tokens);
    }

    private String may() {
        if (edit) {
            return ", change the light and the looks, and fit";
        }
        return watch ? " and watch" : " and change the light";
    }

    private static String whose(boolean shop, boolean ofRig, String name) {
        return ofRig ? " of " + name + " alone" : shop ? " for all rigs" : "";
    }
}
