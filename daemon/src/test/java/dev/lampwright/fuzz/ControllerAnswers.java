package dev.lampwright.fuzz;

import dev.lampwright.protocol.MessageType;
import dev.lampwright.protocol.MessageWriter;
import dev.lampwright.testing.Faults;
import dev.lampwright.testing.PtyController;
import dev.lampwright.testing.Rewriter;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;

/** A controller, at a real device node, with wrong answers, none, noise or unsolicited ones. It shows what it should. */
final class ControllerAnswers implements Target {
    private static final List<MessageType> ANSWERS =
            List.of(MessageType.HERE, MessageType.IN_FORCE, MessageType.SHOWN, MessageType.COMPLAINT);
    private static final int FLOOD = 200;

    @Override
    public String name() {
        return "controller";
    }

    @Override
    public int mostSteps() {
        return 6;
    }

    /** Each new set-up counts as two transitions for the flash limit, because the controller may have gone dark and come back. */
    @Override
    public Duration promise() {
        return Duration.ofSeconds(4);
    }

    @Override
    public Step step(SplittableRandom chance) {
        long millis = 20L + chance.nextInt(400);
        return switch (chance.nextInt(9)) {
            case 0 -> lie("says nothing", bytes -> new byte[0], millis);
            case 1 -> noise(chance, millis);
            case 2 -> unasked(chance, millis);
            case 3 -> Step.of("is reset", rig -> rig.controller().reset());
            case 4 -> restless(chance, millis);
            case 5 -> becomes(chance, millis);
            case 6 -> oneByte(chance, millis);
            case 7 -> unplugged(chance, millis);
            default -> otherBody(chance, millis);
        };
    }

    private static Step lie(String line, UnaryOperator<byte[]> change, long millis) {
        return Step.of(line + " for " + millis + " ms", rig -> {
            rig.controller().toHost(change);
            rig.pass(millis);
            rig.controller().toHost(Faults.none());
        });
    }

    private static Step noise(SplittableRandom chance, long millis) {
        byte[] bytes = Oddities.bytes(chance, 2000);
        int seed = chance.nextInt();
        double harm = chance.nextDouble() * 0.2;
        return Step.of("sends " + bytes.length + " bytes of noise of seed " + seed + ", harm " + harm, rig -> {
            rig.controller().toHost(Faults.all(seed, harm));
            rig.controller().sendGarbage(bytes);
            rig.pass(millis);
        });
    }

    /** Whole messages that answer nothing. */
    private static Step unasked(SplittableRandom chance, long millis) {
        byte[] message = message(Oddities.pick(ANSWERS, chance), chance);
        int times = chance.nextInt(5) == 0 ? FLOOD : 1;
        return Step.of("sends unasked, " + times + " times, " + Arrays.toString(message), rig -> {
            for (int i = 0; i < times; i++) {
                rig.controller().sendGarbage(message);
            }
            rig.pass(millis);
        });
    }

    private static byte[] message(MessageType type, SplittableRandom chance) {
        byte[] body = Oddities.bytes(chance, 50);
        MessageWriter writer = new MessageWriter(100);
        int count = writer.begin(type, chance.nextInt(256))
                .bytes(body, 0, body.length)
                .finish();
        return Arrays.copyOf(writer.wire(), count);
    }

    private static Step restless(SplittableRandom chance, long millis) {
        int times = 1 + chance.nextInt(20);
        return Step.of("is reset " + times + " times in " + millis + " ms", rig -> {
            for (int i = 0; i < times; i++) {
                rig.controller().reset();
                rig.pass(millis / times);
            }
        });
    }

    private static Step becomes(SplittableRandom chance, long millis) {
        MessageType type = Oddities.pick(ANSWERS, chance);
        MessageType other = Oddities.pick(List.of(MessageType.values()), chance);
        byte[] body = Oddities.bytes(chance, 30);
        return lie(
                "sends in place of " + type + " " + other + " with " + Arrays.toString(body),
                Rewriter.to(type, other, old -> body),
                millis);
    }

    private static Step oneByte(SplittableRandom chance, long millis) {
        MessageType type = Oddities.pick(ANSWERS, chance);
        int at = chance.nextInt(30);
        int value = chance.nextInt(256);
        return lie(
                "sets byte " + at + " of " + type + " to " + value,
                new Rewriter(type, body -> {
                    byte[] changed = body.clone();
                    if (at < changed.length) {
                        changed[at] = (byte) value;
                    }
                    return changed;
                }),
                millis);
    }

    private static Step otherBody(SplittableRandom chance, long millis) {
        MessageType type = Oddities.pick(ANSWERS, chance);
        int cut = chance.nextInt(30);
        int longer = chance.nextInt(40);
        return lie(
                "cuts the body of " + type + " after " + cut + " bytes and adds " + longer,
                new Rewriter(
                        type,
                        body -> Arrays.copyOf(
                                Arrays.copyOf(body, Math.min(cut, body.length)), Math.min(cut, body.length) + longer)),
                millis);
    }

    private static Step unplugged(SplittableRandom chance, long millis) {
        boolean reset = chance.nextBoolean();
        return Step.of("is pulled for " + millis + " ms" + (reset ? ", and loses its power" : ""), rig -> {
            PtyController controller = rig.controller();
            controller.unplug();
            if (reset) {
                controller.reset();
            }
            rig.pass(millis);
            controller.plug();
        });
    }
}
