package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Setup;
import java.io.IOException;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Names zones; the user points at the ends of each with a mark. */
final class ZonesStep implements Step {
    private static final int DIM = 50;
    private static final List<String> USUAL = List.of("bed", "nozzle", "job");

    @Override
    public String name() {
        return "zones";
    }

    @Override
    public String title() {
        return "name the zones";
    }

    @Override
    public Findings run(Findings before, FittingBench bench) throws LeaveException, IOException {
        Map<String, Findings.Run> zones = new LinkedHashMap<>(before.zones());
        bench.say(Phrase.of(
                "zones_about",
                "A zone is a part of the strip with a name. bed and nozzle show how hot they are, job shows its"
                        + " progress."));
        bench.say(Phrase.of(
                "zones_without",
                "Zones can overlap. If you name none, bed is the first half, nozzle the second, and job all of it."));
        Optional<String> name = askName(zones, bench);
        while (name.isPresent()) {
            Findings.Run run = point(name.get(), Optional.ofNullable(zones.get(name.get())), before, bench);
            if (seen(name.get(), run, before, bench)) {
                zones.put(name.get(), run);
            }
            name = askName(zones, bench);
        }
        return before.withZones(zones);
    }

    private static Optional<String> askName(Map<String, Findings.Run> zones, FittingBench bench)
            throws LeaveException, IOException {
        bench.darken();
        String so = zones.isEmpty() ? "" : " So far: " + String.join(", ", zones.keySet()) + ".";
        return bench.ask(new Question<Optional<String>>(
                        "Which zone is next: bed, nozzle, job, or a name of yours? Enter when there are no more." + so,
                        "A name begins with a letter and has letters, digits, _ and -. Name a zone again to move it.",
                        line -> line.isEmpty() ? Optional.empty() : Optional.of(Question.readName(line, List.of())))
                .coded("zones_name", "zones", String.join(", ", zones.keySet()))
                .in(Form.TEXT.skipped("zones_done").suggesting(suggested(zones.keySet()))));
    }

    /** The names that built-in looks use, as far as they are not taken. */
    private static List<String> suggested(Collection<String> taken) {
        return USUAL.stream().filter(name -> !taken.contains(name)).toList();
    }

    /** For an existing zone the mark starts at its position; for a new one, where the mark was left. */
    private static Findings.Run point(String name, Optional<Findings.Run> now, Findings before, FittingBench bench)
            throws LeaveException, IOException {
        int start = now.map(Findings.Run::first).orElse(0);
        int first = PixelMark.moved(
                Phrase.of("mark_one", "one end of " + name, "zone", name), start, Optional.empty(), before, bench);
        int other = now.map(Findings.Run::last).orElse(first);
        int last = PixelMark.moved(
                Phrase.of("mark_other", "the other end of " + name, "zone", name),
                other,
                Optional.of(first),
                before,
                bench);
        return new Findings.Run(first, last);
    }

    private static boolean seen(String name, Findings.Run run, Findings before, FittingBench bench)
            throws LeaveException, IOException {
        Setup setup = FittingSetups.of(before);
        int from = Math.min(run.first(), run.last());
        int to = Math.max(run.first(), run.last());
        int level = FittingSetups.level(setup, to - from + 1, DIM);
        bench.show(setup, Scenes.stretch(before.knownOrder(), level, from, to, "G"));
        return bench.ask(Question.yesOrNo(
                        "All of " + name + " is lit now, pixels " + from + " to " + to + ". Is that right?",
                        "With n, name it again and move the mark again.")
                .coded("zones_right", "zone", name, "from", from, "to", to));
    }
}
