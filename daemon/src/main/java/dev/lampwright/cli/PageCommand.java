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
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The command {@code page}: the address of the live page, as text and as a code for a phone's camera. */
@Command(
        name = "page",
        header = "Print the live page's address, as a code for a phone too.",
        description = {
            "Prints the addresses of the live page and draws the first as a QR code. If the page has a token, the code carries it:"
                    + " anybody who scans it can open the page, so do not show it to others."
        },
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {
            "0:printed",
            "1:the file configures no page, the page's port is not fixed, or a file is invalid or cannot be read",
            "2:usage error"
        },
        footer = {"", "Example: lampwright page alder.toml"})
final class PageCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Option(
            names = "--watch",
            description = "Put the token of page.view_token_file into the code, which lets people watch only.")
    private boolean watch;

    @Parameters(
            paramLabel = "FILE",
            description =
                    "The configuration file, or the folder of several rigs: the page of all of them, or that of --rig.")
    private Path file;

    @Mixin
    private RigOption rig;

    @Override
    public Integer call() throws ConfigException, IOException {
        Path folder = file;
        boolean shop = ShopFile.isIn(folder);
        String name = shop && rig.isGiven() ? RigFile.nameOf(rig.file(file)) : "";
        file = shop ? file.resolve(ShopFile.NAME) : rig.file(file);
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
            boolean coloured = ColourDepth.of(System.getenv()) != ColourDepth.PLAIN;
            String url = addresses.get(0);
            TokenFiles own = name.isEmpty()
                    ? TokenFiles.NONE
                    : ConfigFile.read(rig.file(folder)).ownTokens();
            boolean ofRig = (watch ? own.watching() : own.asking()).isPresent();
            TokenFiles tokens = ofRig ? own : settings.tokens();
            String address = watch ? PageAddress.withViewToken(url, tokens) : PageAddress.withToken(url, tokens);
            PageCode.of(address).lines(coloured).forEach(out::println);
            if (settings.tokenFile().isPresent()) {
                out.println("The code carries the token" + whose(shop, ofRig, name)
                        + ". Whoever reads it can open the page" + (watch ? " and watch." : " and change the light."));
            }
        } else {
            out.println("Only this machine can reach it. For a phone, set page.address and page.token_file.");
        }
        return ExitCode.OK;
    }

    private static String whose(boolean shop, boolean ofRig, String name) {
        return ofRig ? " of " + name + " alone" : shop ? " for all rigs" : "";
    }
}
