package dev.lampwright.config;

import dev.lampwright.cue.CueSpec;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.LookSpec;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The looks and the cues: those of the file and the built-in ones, which are written like those in a file.
 *
 * @param looks by name; one in the file replaces the built-in one with that name; swatches that a cue names come last
 * @param cues those of the file first; the last always holds
 */
record LooksAndCues(Map<String, LookSpec> looks, List<CueSpec> cues) {
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
        Map<String, LookSpec> looks = new LinkedHashMap<>(BuiltIn.looks(fitting));
        looks.putAll(own);
        LookNames names = new LookNames(looks, fitting);
        List<CueSpec> cues = new ArrayList<>(new CuesSection(
                        names,
                        printers.events(),
                        printers.names(),
                        views.stream().map(ViewSpec::name).toList())
                .read(root.tables("cues")));
        cues.addAll(BuiltIn.cues(names));
        return new LooksAndCues(names.looks(), cues);
    }
}
