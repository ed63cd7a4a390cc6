package dev.lampwright.cli;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.Nearest;
import dev.lampwright.config.Swatch;
import dev.lampwright.config.Swatches;
import dev.lampwright.demo.ColourDepth;
import dev.lampwright.json.Json;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The command {@code looks}: the ready-made looks that come with Lampwright. */
@Command(
        name = "looks",
        header = "Show the ready-made looks that come with Lampwright.",
        description = {
            "Lists the ready-made looks that come with Lampwright, called swatches, each with a picture if the terminal supports"
                    + " colours; or shows one of them, or prints its text to copy and change. All of them stay within the flash"
                    + " limit on strips from 8 to 1000 pixels. A file names one in a cue (look = \"sea-mist\") or as the ground of"
                    + " a look (swatch = \"sea-mist\")."
        },
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {"0:it is shown", "1:an error occurred", "2:usage error"},
        footer = {
            "",
            "Example: lampwright looks",
            "Example: lampwright looks sea-mist --toml --config alder.toml >> alder.toml"
        })
final class LooksCommand implements Callable<Integer> {
    private static final int USUAL_COLUMNS = 80;

    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "NAME",
            arity = "0..1",
            completionCandidates = Names.class,
            description = "Show only this swatch.")
    private Optional<String> name;

    @Option(
            names = "--toml",
            description =
                    "Print the text of the swatch, ready for your file. Parts for lights that not everybody has are"
                            + " comments.")
    private boolean toml;

    @Option(
            names = "--config",
            paramLabel = "FILE",
            description = "With --toml: do not comment out the parts for lights that this configuration file has.")
    private Optional<Path> file;

    @Mixin
    private JsonOption json;

    /** The names of the swatches, for completion. */
    static final class Names implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return Swatches.names().iterator();
        }
    }

    @Override
    public Integer call() throws ConfigException, IOException {
        if (toml && name.isEmpty()) {
            throw wrong("--toml goes with the NAME of a swatch");
        }
        if (file.isPresent() && !toml) {
            throw wrong("--config goes with --toml");
        }
        Optional<Swatch> swatch = name.map(this::swatch);
        if (json.wanted()) {
            spec.commandLine().getOut().println(json(swatch));
        } else {
            lines(swatch).forEach(spec.commandLine().getOut()::println);
        }
        return ExitCode.OK;
    }

    private List<String> lines(Optional<Swatch> swatch) throws ConfigException, IOException {
        Config drawnOn = StandInLights.of(LookBook.PICTURE_COLUMNS);
        Config lights = file.isPresent()
                ? KeptLooks.examine(file.get(), spec.commandLine().getErr()).config()
                : StandInLights.bare();
        LookBook book = new LookBook(drawnOn, lights, ColourDepth.of(System.getenv()), columns(System.getenv()));
        if (swatch.isEmpty()) {
            return book.list();
        }
        return toml ? book.toml(swatch.get()) : book.page(swatch.get());
    }

    /** As set by the shell, if it is. */
    static int columns(Map<String, String> environment) {
        String columns = environment.getOrDefault("COLUMNS", "");
        return columns.matches("[1-9][0-9]{0,3}") ? Integer.parseInt(columns) : USUAL_COLUMNS;
    }

    private Swatch swatch(String wanted) {
        if (!Swatches.names().contains(wanted)) {
            throw wrong("NAME is " + wanted + ", which is not a swatch; "
                    + Nearest.to(wanted, Swatches.names())
                            .map(near -> "did you mean " + near + "?")
                            .orElse("lampwright looks lists all of them"));
        }
        return Swatches.named(wanted);
    }

    private static String json(Optional<Swatch> swatch) {
        return swatch.map(one -> Json.of(map(one, true))).orElseGet(() -> {
            List<Map<String, Object>> all = new ArrayList<>();
            Swatches.names().forEach(each -> all.add(map(Swatches.named(each), false)));
            return Json.of(Map.of("swatches", all));
        });
    }

    private static Map<String, Object> map(Swatch swatch, boolean whole) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("name", swatch.name());
        map.put("use", swatch.use());
        map.put("sentence", swatch.sentence());
        if (whole) {
            map.put("toml", swatch.toml());
        }
        return map;
    }

    private ParameterException wrong(String what) {
        return new ParameterException(spec.commandLine(), what);
    }
}
