package dev.lampwright.fuzz;

import dev.lampwright.testing.Await;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.SplittableRandom;
import java.util.regex.Pattern;

/** What people ask for over the broker. Each ask must be answered, on one line, and a refusal must say what would be right. */
final class Asks implements Target {
    private static final List<String> WORDS = List.of(
            "brightness", "work", "look", "pixels", "acknowledge", "reset", "quiet", "lights", "dim", "", "look/x");
    private static final List<String> KEYS = List.of(
            "brightness",
            "work",
            "look",
            "pixels",
            "quiet",
            "lights",
            "for_s",
            "until",
            "fade_s",
            "changed",
            "40 %",
            "dimmer",
            "id",
            "left",
            "0",
            "5-9",
            "29-0",
            "strip",
            "red",
            "auto",
            "on",
            "fault");
    /** Words with which a refusal says what would be right; if there is nothing to do, it says that. */
    private static final Pattern REMEDY = Pattern.compile("; |there is no fault");

    private static final Pattern REFUSAL = Pattern.compile("\"done\":false.*\"why\":\"");

    @Override
    public String name() {
        return "asks";
    }

    @Override
    public int mostSteps() {
        return 40;
    }

    @Override
    public Duration promise() {
        return Duration.ofSeconds(4);
    }

    @Override
    public Step step(SplittableRandom chance) {
        if (chance.nextInt(30) == 0) {
            return flicker(chance);
        }
        String word = Oddities.pick(WORDS, chance);
        byte[] payload = payload(chance, word);
        boolean retained = chance.nextInt(10) == 0;
        String text = new String(payload, StandardCharsets.UTF_8);
        return Step.of("ask " + word + (retained ? ", as kept: " : ": ") + text, rig -> {
            Await.until("the daemon to listen", rig.hub()::hasListener);
            long before = rig.hub().answered();
            rig.hub().publish("lampwright/ask/" + word, payload, retained);
            Await.until("an answer", () -> rig.hub().answered() > before);
            if (judge(rig.hub().newestAnswer())) {
                rig.refused();
            }
        });
    }

    /** Asks for pixels that alternate between white and black. */
    private static Step flicker(SplittableRandom chance) {
        String where = Oddities.pick(List.of("strip", "left", "3", "5-12", "29-0"), chance);
        int times = 2 + chance.nextInt(20);
        int millis = 20 + chance.nextInt(150);
        return Step.of("ask " + where + " white and black " + times + " times, each for " + millis + " ms", rig -> {
            for (int i = 0; i < 2 * times; i++) {
                String colour = i % 2 == 0 ? "white" : "black";
                rig.hub()
                        .publish(
                                "lampwright/ask/pixels",
                                utf8("{\"pixels\":{\"%s\":\"%s\"}}".formatted(where, colour)),
                                false);
                rig.pass(millis);
            }
        });
    }

    private static byte[] payload(SplittableRandom chance, String word) {
        return switch (chance.nextInt(8)) {
            case 0 -> Oddities.bytes(chance, 40);
            case 1 -> utf8(Oddities.text(chance));
            case 2 -> utf8(Oddities.number(chance));
            case 3 -> utf8(Oddities.pick(KEYS, chance));
            case 4 -> utf8(chance.nextInt(10) == 0 ? "[".repeat(1 + chance.nextInt(200_000)) : "1");
            case 5 -> utf8(pixels(chance));
            case 6 ->
                utf8("{\"" + word + "\":" + Oddities.json(chance, KEYS) + ",\"for_s\":" + Oddities.number(chance)
                        + "}");
            default -> utf8(Oddities.json(chance, KEYS));
        };
    }

    private static String pixels(SplittableRandom chance) {
        StringBuilder pixels = new StringBuilder("{\"pixels\":{");
        for (int i = chance.nextInt(20); i >= 0; i--) {
            String where = chance.nextBoolean()
                    ? Integer.toString(chance.nextInt(-2, 33))
                    : chance.nextInt(31) + "-" + chance.nextInt(31);
            String colour =
                    Oddities.pick(List.of("white", "black", "red", "#00f", "oklch(70% 9 50)", "Красный"), chance);
            pixels.append("\"%s\":\"%s\"%s".formatted(where, colour, i > 0 ? "," : ""));
        }
        return pixels.append("}}").toString();
    }

    /** Fails an answer of more than one line, or an unhelpful refusal; returns whether it is a refusal. */
    static boolean judge(String answer) {
        boolean oneLine = answer.codePoints().noneMatch(Character::isISOControl);
        boolean refused = REFUSAL.matcher(answer).find();
        if (!oneLine || !answer.startsWith("{") || !answer.endsWith("}")) {
            throw new AssertionError("the answer is not JSON on one line: " + answer);
        }
        if (refused && !REMEDY.matcher(answer).find()) {
            throw new AssertionError("the refusal does not say what would be right: " + answer);
        }
        return refused;
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
