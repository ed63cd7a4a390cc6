package dev.lampwright.config;

import dev.lampwright.cue.CueSpec;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.LookSpec;
import dev.lampwright.toml.Toml;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The looks and the cues: those of the file and the built-in ones, which are written like those in a file.
 *
 * @param looks by name; one in the file replaces the built-in one with that name; swatches that a cue names come last
 * @param cues those of the file first; the last always holds
 */
record LooksAndCues(Map<String, LookSpec> looks, List<CueSpec> cues) {
    private static final String BUILT_IN = "built-in.toml";

    /**
     * Reads looks and cues.
     *
     * @param root the file
     * @param fitting what is fitted
     * @param printers whose events and states a cue may name
     * @param views the parts of the strip that a cue may be for
     * @return those of the file and the built-in ones
     */
    static LooksAndCues read(Table root, Fitting fitting, PrintersSection printers, List<ViewSpec> views) {
        Map<String, LookSpec> own = LooksSection.ofFile(fitting).read(root.table("looks"));
        Table builtIn = builtIn();
        Map<String, LookSpec> looks =
                new LinkedHashMap<>(LooksSection.ofLampwright(fitting).read(builtIn.table("looks")));
        looks.putAll(own);
        LookNames names = new LookNames(looks, fitting);
        List<CueSpec> cues = new ArrayList<>(new CuesSection(
                        names,
                        printers.events(),
                        printers.names(),
                        views.stream().map(ViewSpec::name).toList())
                .read(root.tables("cues")));
        cues.addAll(new CuesSection(names, Set.of(), List.of(), List.of()).read(builtIn.tables("cues")));
        builtIn.requireRight();
        return new LooksAndCues(names.looks(), cues);
    }

    private static Table builtIn() {
        try {
            return new Mistakes(BUILT_IN, Toml.read(builtInText())).root();
        } catch (ConfigException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The file of the built-in looks and cues. */
    static String builtInText() {
        try (InputStream file = LooksAndCues.class.getResourceAsStream(BUILT_IN)) {
            return new String(file.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
