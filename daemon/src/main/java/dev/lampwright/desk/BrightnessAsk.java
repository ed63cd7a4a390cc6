package dev.lampwright.desk;

/** How bright the strip is. */
final class BrightnessAsk implements AskHandler {
    @Override
    public Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
        double level = request.number("brightness", 0, 1)
                .orElseThrow(() -> new RefusedException("brightness is missing; give a number from 0 to 1"));
        return new Outcome(before.with(before.wishes().withBrightness(level)), "brightness " + Spoken.share(level));
    }
}
