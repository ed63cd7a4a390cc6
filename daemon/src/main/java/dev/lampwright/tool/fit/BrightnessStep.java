package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Setup;
import java.io.IOException;

/** Sets the brightness that suits the room, in steps that look equal. */
final class BrightnessStep implements Step {
    private static final String WHITE = "RGB";
    private static final int FIRST = 4;

    /** The result of one answer. */
    private record Choice(int step, boolean right) {}

    @Override
    public String name() {
        return "brightness";
    }

    @Override
    public String title() {
        return "how bright";
    }

    @Override
    public Findings run(Findings before, FittingBench bench) throws LeaveException, IOException {
        Setup setup = FittingSetups.of(before);
        int most = FittingSetups.level(setup, lit(before) * WHITE.length(), FittingSetups.full());
        int highest = BrightnessScale.highest(most);
        bench.say(Phrase.of(
                "brightness_top",
                "Some white pixels show how bright a look may be at most. Step " + BrightnessScale.STEPS
                        + " is the brightest that the pixels can be.",
                "steps",
                BrightnessScale.STEPS));
        Choice choice = new Choice(Math.min(FIRST, highest), false);
        while (!choice.right) {
            show(choice.step, before, setup, bench);
            choice = ask(choice.step, highest, before, setup, bench);
        }
        double share = BrightnessScale.share(choice.step);
        String shown = TypedNumbers.shown(share);
        bench.say(Phrase.of("brightness_found", "Brightness is " + shown + " of full light.", "share", shown));
        return before.withBrightness(share);
    }

    /** Few enough pixels for full brightness, if the ceiling allows it; their brightness matters, not their number. */
    private static int lit(Findings before) {
        Setup setup = FittingSetups.of(before);
        int pixels = before.knownPixels();
        while (pixels > 1
                && FittingSetups.level(setup, pixels * WHITE.length(), FittingSetups.full()) < FittingSetups.full()) {
            pixels--;
        }
        return pixels;
    }

    private static void show(int step, Findings before, Setup setup, FittingBench bench) {
        int level = (int) Math.round(BrightnessScale.share(step) * FittingSetups.full());
        bench.show(setup, Scenes.stretch(before.knownOrder(), level, 0, lit(before) - 1, WHITE));
    }

    private static Choice ask(int step, int highest, Findings before, Setup setup, FittingBench bench)
            throws LeaveException, IOException {
        return bench.ask(new Question<Choice>(
                        "Step " + step + " of " + BrightnessScale.STEPS
                                + ". Type + for brighter, - for darker, or a number from 1 to " + highest
                                + "; press Enter when it suits the room.",
                        "Steps look even (CIE 1976 lightness). Looks ask for less light most of the time; this is the"
                                + " most that they get. Do not look straight into the LEDs."
                                + (highest < BrightnessScale.STEPS
                                        ? " The ceiling allows no step above " + highest + " here."
                                        : ""),
                        line -> chosen(line, step, highest))
                .coded("brightness_level", "at", step, "steps", BrightnessScale.STEPS)
                .in(Form.slider(1, highest, step))
                .tried(choice -> show(choice.step, before, setup, bench)));
    }

    private static Choice chosen(String line, int step, int highest) throws Question.UnusableException {
        return switch (line) {
            case "" -> new Choice(step, true);
            case "+" -> new Choice(within(step + 1, highest), false);
            case "-" -> new Choice(within(step - 1, highest), false);
            default -> new Choice(TypedNumbers.readWhole(line, 1, highest), false);
        };
    }

    private static int within(int step, int highest) throws Question.UnusableException {
        if (step < 1) {
            throw new Question.UnusableException("no_darker", "there is no darker step");
        }
        if (step > highest) {
            throw new Question.UnusableException("no_brighter", "there is no brighter step that the ceiling allows");
        }
        return step;
    }
}
