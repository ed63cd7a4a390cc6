package dev.lampwright.fuzz;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/** Messages on the printer's topics: nearly right, completely wrong, far too long. */
final class Payloads implements Target {
    private static final int LONG = 3 << 20;

    @Override
    public String name() {
        return "payloads";
    }

    @Override
    public int mostSteps() {
        return 60;
    }

    /** The flash limit first counts out the flicker of the states in between. */
    @Override
    public Duration promise() {
        return Duration.ofSeconds(4);
    }

    @Override
    public Step step(SplittableRandom chance) {
        if (chance.nextInt(30) == 0) {
            return storm(chance);
        }
        String topic = Oddities.pick(House.TOPICS, chance);
        return step(topic, payload(chance), chance.nextInt(8) == 0);
    }

    /** Two alternating states, as fast as visible flashing and faster. */
    private static Step storm(SplittableRandom chance) {
        Colour one = Oddities.pick(List.of(Colour.values()), chance);
        Colour other = Oddities.pick(List.of(Colour.values()), chance);
        int times = 2 + chance.nextInt(20);
        int millis = 20 + chance.nextInt(150);
        return Step.of("report " + one + " and " + other + " " + times + " times, each for " + millis + " ms", rig -> {
            for (int i = 0; i < times; i++) {
                rig.hub().publish(House.JOB, utf8(House.job(one)), false);
                rig.pass(millis);
                rig.hub().publish(House.JOB, utf8(House.job(other)), false);
                rig.pass(millis);
            }
        });
    }

    private static Step step(String topic, byte[] payload, boolean retained) {
        String text = new String(payload, StandardCharsets.UTF_8);
        return new Step(
                "publish on " + topic + (retained ? ", as kept: " : ": ") + text,
                rig -> {
                    rig.hub().publish(topic, payload, retained);
                    rig.pass(1);
                },
                () -> halves(topic, payload, retained));
    }

    private static List<Step> halves(String topic, byte[] payload, boolean retained) {
        if (payload.length < 2) {
            return List.of();
        }
        int half = payload.length / 2;
        return List.of(
                step(topic, Arrays.copyOf(payload, half), retained),
                step(topic, Arrays.copyOfRange(payload, half, payload.length), retained));
    }

    private static byte[] payload(SplittableRandom chance) {
        return switch (chance.nextInt(12)) {
            case 0 -> Oddities.bytes(chance, 40);
            case 1 -> utf8(Oddities.text(chance));
            case 2 -> utf8(Oddities.number(chance));
            case 3 -> utf8(line(chance));
            case 4 -> utf8("T=" + Oddities.number(chance) + " T=" + Oddities.text(chance));
            case 5 -> utf8(Oddities.pick(House.WORDS, chance));
            case 6 ->
                utf8("{\"phase\":\"ALARM " + Oddities.text(chance) + "\",\"text\":\"" + Oddities.text(chance) + "\"}");
            case 7 -> spoilt(utf8(House.job(Oddities.pick(List.of(Colour.values()), chance))), chance);
            case 8 ->
                utf8("{\"plate\":{\"now\":" + Oddities.number(chance) + ",\"set\":" + Oddities.number(chance) + "}}");
            case 9 -> chance.nextInt(10) == 0 ? longOne(chance) : utf8(House.job(Colour.FAULT));
            default -> utf8(Oddities.json(chance, House.WORDS));
        };
    }

    private static String line(SplittableRandom chance) {
        StringBuilder line = new StringBuilder();
        for (int i = chance.nextInt(6); i >= 0; i--) {
            line.append(chance.nextInt(4) == 0 ? "\"" : "")
                    .append(Oddities.text(chance))
                    .append(';');
        }
        return line.toString();
    }

    private static byte[] spoilt(byte[] right, SplittableRandom chance) {
        byte[] spoilt = Arrays.copyOf(right, 1 + chance.nextInt(right.length));
        spoilt[chance.nextInt(spoilt.length)] = (byte) chance.nextInt(256);
        return spoilt;
    }

    private static byte[] longOne(SplittableRandom chance) {
        byte[] payload = new byte[1 + chance.nextInt(LONG)];
        Arrays.fill(payload, (byte) Oddities.pick(List.of('[', '{', '"', '1', ' ', ';', '\\'), chance)
                .charValue());
        return payload;
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
