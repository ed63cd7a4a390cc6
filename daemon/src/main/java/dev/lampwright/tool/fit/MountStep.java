package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Setup;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Asks how the strip is mounted, for pictures of it: its shape, and the corners of a frame, to which the user moves a mark. */
final class MountStep implements Step {
    private static final int LEVEL = 140;
    private static final int MOST_SIDES = 4;

    @Override
    public String name() {
        return "mounting";
    }

    @Override
    public String title() {
        return "how the strip is mounted";
    }

    @Override
    public Findings run(Findings before, FittingBench bench) throws LeaveException, IOException {
        bench.darken();
        Optional<String> shape = bench.ask(Question.choice(
                        "What does the strip look like, from where you stand in front of the printer?",
                        "The live page draws it like this. It does not change the light, and you can leave it open.",
                        List.of(
                                new Question.Option<>("1", "a line", Optional.of("straight")).named("mount_line"),
                                new Question.Option<>(
                                                "2", "a frame: up to four sides of a rectangle", Optional.of("frame"))
                                        .named("mount_frame"),
                                new Question.Option<>("3", "a ring", Optional.of("ring")).named("mount_ring"),
                                new Question.Option<>("", "leave it open", Optional.empty(), "mount_open")))
                .coded("mount_shape"));
        if (shape.isEmpty()) {
            return before;
        }
        return before.withMount(
                switch (shape.get()) {
                    case "frame" -> frame(before, bench);
                    case "ring" -> new Findings.Mount("ring", List.of(), "", clockwise(before, bench));
                    default -> new Findings.Mount("straight", List.of(), "", true);
                });
    }

    private static Findings.Mount frame(Findings before, FittingBench bench) throws LeaveException, IOException {
        Setup setup = FittingSetups.of(before);
        bench.show(setup, Scenes.stretch(before.knownOrder(), FittingSetups.level(setup, 2, LEVEL), 0, 0, "RG"));
        String begins = bench.ask(Question.choice(
                        "Pixel 0 is lit. Which corner is it at?",
                        "As you see it from in front of the printer.",
                        List.of(
                                new Question.Option<>("1", "bottom left", "bottom left").named("bottom_left"),
                                new Question.Option<>("2", "top left", "top left").named("top_left"),
                                new Question.Option<>("3", "top right", "top right").named("top_right"),
                                new Question.Option<>("4", "bottom right", "bottom right").named("bottom_right")))
                .coded("mount_begins")
                .in(Form.CHOICE.of(Form.Kind.CORNER)));
        boolean clockwise = clockwise(before, bench);
        int most = Math.min(MOST_SIDES, before.knownPixels());
        int count = bench.ask(new Question<Integer>(
                        "How many sides does it run along? 1 to " + most + ".",
                        "A strip that goes all round has 4.",
                        line -> TypedNumbers.readWhole(line, 1, most))
                .coded("mount_sides", "most", most)
                .in(Form.whole(1, most)));
        return new Findings.Mount("frame", sides(count, before, bench), begins, clockwise);
    }

    /** The pixels of each side, from the corners between them. */
    private static List<Integer> sides(int count, Findings before, FittingBench bench)
            throws LeaveException, IOException {
        List<Integer> sides = new ArrayList<>();
        int from = 0;
        while (sides.size() < count - 1) {
            int corner = PixelMark.moved(
                    Phrase.of(
                            "mark_corner",
                            "the first pixel after corner " + (sides.size() + 1) + " of " + (count - 1),
                            "number",
                            sides.size() + 1,
                            "of",
                            count - 1),
                    Math.min(before.knownPixels() - 1, from + before.knownPixels() / count),
                    Optional.of(from),
                    before,
                    bench);
            if (corner <= from) {
                bench.say(Phrase.of(
                        "corner_before",
                        "That is not after pixel " + from + ", where the side begins. The same corner again:",
                        "from",
                        from));
            } else {
                sides.add(corner - from);
                from = corner;
            }
        }
        sides.add(before.knownPixels() - from);
        return sides;
    }

    private static boolean clockwise(Findings before, FittingBench bench) throws LeaveException, IOException {
        Setup setup = FittingSetups.of(before);
        int last = before.knownPixels() - 1;
        int level = FittingSetups.level(setup, Scenes.bandWidth(0, last), LEVEL);
        bench.show(setup, Scenes.band(before.knownOrder(), level, 0, last, "G"));
        return bench.ask(Question.yesOrNo(
                        "A band runs along the whole strip. Does it run clockwise, from where you stand in front of the printer?",
                        "Clockwise: up on the left, to the right along the top, down on the right.")
                .coded("mount_clockwise"));
    }
}
