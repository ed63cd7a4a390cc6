package dev.lampwright.tool.fit;

import dev.lampwright.protocol.Setup;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Names zones; each is pointed at with a mark at its ends. */
final class ZonesStep implements Step {
    private static final int LEVEL = 140;
    private static final int DIM = 50;
    private static final int MARKS = 2;
    private static final String MARK = "RG";

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
        Map<String, Findings.Run> zones = new LinkedHashMap<>();
        bench.say(
                "A zone is a part of the strip with a name. bed and nozzle show how hot they are, job how far it is.",
                "Zones may overlap. Without zones of yours, bed is the first half, nozzle the second, job all of it.");
        Optional<String> name = askName(zones, bench);
        while (name.isPresent()) {
            Findings.Run run = point(name.get(), before, bench);
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
        return bench.ask(new Question<>(
                "Which zone is next: bed, nozzle, job, or a name of yours? Enter when there are no more." + so,
                List.of(),
                "A name begins with a letter and has letters, digits, _ and -. Naming a zone again starts it again.",
                line -> line.isEmpty() ? Optional.empty() : Optional.of(Question.readName(line, List.of()))));
    }

    private static Findings.Run point(String name, Findings before, FittingBench bench)
            throws LeaveException, IOException {
        int first = end("one end of " + name, 0, Optional.empty(), before, bench);
        int last = end("the other end of " + name, first, Optional.of(first), before, bench);
        return new Findings.Run(first, last);
    }

    private static int end(String where, int start, Optional<Integer> other, Findings before, FittingBench bench)
            throws LeaveException, IOException {
        int pixels = before.knownPixels();
        int at = start;
        while (true) {
            mark(at, other, before, bench);
            int now = at;
            int next = bench.ask(new Question<>(
                    "Pixel " + at + " is marked. Move the mark to " + where
                            + ": a number, + or -, +10 or -10; Enter when" + " it is there.",
                    List.of(),
                    "Pixels are numbered from 0, nearest the controller, to " + (pixels - 1)
                            + ". + moves the mark one pixel away from the controller, +10 ten; - the other way.",
                    line -> moved(line, now, pixels)));
            if (next == at) {
                return at;
            }
            at = next;
        }
    }

    private static int moved(String line, int from, int pixels) throws Question.UnusableException {
        if (line.isEmpty()) {
            return from;
        }
        char sign = line.charAt(0);
        if (sign != '+' && sign != '-') {
            return TypedNumbers.readWhole(line, 0, pixels - 1);
        }
        boolean signs = line.chars().allMatch(c -> c == sign);
        int far = signs ? line.length() : TypedNumbers.readWhole(line.substring(1), 1, pixels);
        int to = sign == '+' ? from + far : from - far;
        if (to < 0 || to >= pixels) {
            throw new Question.UnusableException("the strip goes from 0 to " + (pixels - 1));
        }
        return to;
    }

    private static void mark(int at, Optional<Integer> other, Findings before, FittingBench bench) {
        Setup setup = FittingSetups.of(before);
        int level = FittingSetups.level(setup, MARKS * MARK.length(), LEVEL);
        Map<Integer, String> marks = new LinkedHashMap<>();
        other.ifPresent(pixel -> marks.put(pixel, "B"));
        marks.put(at, MARK);
        bench.show(setup, Scenes.pixels(before.knownOrder(), level, marks));
    }

    private static boolean seen(String name, Findings.Run run, Findings before, FittingBench bench)
            throws LeaveException, IOException {
        Setup setup = FittingSetups.of(before);
        int from = Math.min(run.first(), run.last());
        int to = Math.max(run.first(), run.last());
        int level = FittingSetups.level(setup, to - from + 1, DIM);
        bench.show(setup, Scenes.stretch(before.knownOrder(), level, from, to, "G"));
        return bench.ask(Question.yesOrNo(
                "All of " + name + " is lit now, pixels " + from + " to " + to + ". Is it right?",
                "With n it is pointed at once more: name it again."));
    }
}
