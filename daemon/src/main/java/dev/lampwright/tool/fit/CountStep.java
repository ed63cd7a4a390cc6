package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Setup;
import java.io.IOException;
import java.util.List;
import java.util.OptionalInt;

/** Counts the pixels with a mark that moves outwards until it falls off the end. */
final class CountStep implements Step {
    private static final int MARK = 3;
    private static final int LEVEL = 140;
    private static final String ALL = "RGB";
    private static final int MOST_PIXELS = 65_535;

    /** What is at the place where the last pixel should be. */
    private enum End {
        LAST,
        MORE,
        DARK
    }

    @Override
    public String name() {
        return "pixels";
    }

    @Override
    public String title() {
        return "how many pixels";
    }

    @Override
    public Findings run(Findings before, FittingBench bench) throws LeaveException, IOException {
        int most = FittingSetups.mostPixels(before);
        Setup setup = FittingSetups.of(before);
        PixelSearch search = new PixelSearch(most);
        OptionalInt typed = known(bench);
        if (typed.isPresent() && typed.getAsInt() > most) {
            return found(before, new Findings.Strip(most, true), bench);
        }
        typed.ifPresent(search::assume);
        if (typed.isEmpty()) {
            bench.say(Phrase.of(
                    "pixels_mark",
                    "A mark of a few white pixels moves along the strip, further and further out, then back to its"
                            + " end."));
        }
        while (true) {
            walk(search, before.knownOrder(), setup, bench);
            if (search.pixels() == 0) {
                bench.say(Phrase.of("pixels_unseen", "You saw no pixel at all. Once again, from the beginning:"));
                search = new PixelSearch(most);
                continue;
            }
            End end = end(search, before.knownOrder(), setup, bench);
            if (end == End.LAST || (end == End.MORE && search.full())) {
                return found(before, new Findings.Strip(search.pixels(), end == End.MORE), bench);
            }
            if (end == End.MORE) {
                search.goOn();
            } else {
                search.startOver();
            }
        }
    }

    /** The number, if it is on the reel; the last pixel is still verified. */
    private static OptionalInt known(FittingBench bench) throws LeaveException, IOException {
        bench.darken();
        return bench.ask(new Question<OptionalInt>(
                        "How many pixels does the strip have? Type the number if you know it, or Enter to find out.",
                        "It is on the reel, or length × pixels per metre. Next, the last pixel lights up to prove what you type.",
                        line -> line.isEmpty()
                                ? OptionalInt.empty()
                                : OptionalInt.of(TypedNumbers.readWhole(line, 1, MOST_PIXELS)))
                .coded("pixels_known")
                .in(Form.whole(1, MOST_PIXELS).skipped("find")));
    }

    private static void walk(PixelSearch search, String order, Setup setup, FittingBench bench)
            throws LeaveException, IOException {
        int level = FittingSetups.level(setup, MARK * ALL.length(), LEVEL);
        while (!search.done()) {
            int pixel = search.next();
            bench.show(setup, Scenes.stretch(order, level, pixel, pixel + MARK - 1, ALL));
            search.answered(
                    pixel,
                    bench.ask(Question.yesOrNo(
                                    (search.begun() ? "The mark has moved" : "A mark is lit")
                                            + ". Is a pixel lit anywhere on the strip? (" + search.soFar() + ")",
                                    "Look along the whole strip. One to " + MARK
                                            + " pixels are lit, white; or none, if the mark is past the" + " end.")
                            .coded(
                                    search.begun() ? "pixels_walk" : "pixels_walk_first",
                                    "least",
                                    search.least(),
                                    "most",
                                    search.mostLeft())));
        }
    }

    private static End end(PixelSearch search, String order, Setup setup, FittingBench bench)
            throws LeaveException, IOException {
        int last = search.pixels() - 1;
        int level = FittingSetups.level(setup, ALL.length(), LEVEL);
        bench.show(setup, Scenes.stretch(order, level, last, last, ALL));
        return bench.ask(Question.choice(
                        "A single pixel should be lit now: the very last. Is it?",
                        "It is the pixel furthest along the data wire, where the strip ends.",
                        List.of(
                                new Question.Option<>("y", "yes, it is the last", End.LAST).named("end_last"),
                                new Question.Option<>("m", "no, there are more after it", End.MORE).named("end_more"),
                                new Question.Option<>("n", "no, none is lit", End.DARK).named("end_dark")))
                .coded("pixels_end"));
    }

    private static Findings found(Findings before, Findings.Strip strip, FittingBench bench) {
        bench.say(Phrase.of(
                "pixels_found",
                "The strip has " + strip.pixels() + " pixels, numbered 0 to " + (strip.pixels() - 1) + ".",
                "count",
                strip.pixels(),
                "last",
                strip.pixels() - 1));
        if (strip.goesOn()) {
            boolean board = strip.pixels()
                    == FittingSetups.driven(
                            before.board().orElseThrow().here(),
                            before.knownOrder().length());
            bench.say(
                    board
                            ? "The controller drives no more; the rest stays dark. A larger board drives more."
                            : "The ceiling allows no more, as dark pixels take current too; the rest stays dark."
                                    + " With a stronger supply, go back with b.");
        }
        return before.withStrip(strip);
    }
}
