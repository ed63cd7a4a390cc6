package dev.lampwright.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.SplittableRandom;

/** Messages on unexpected topics that MQTT allows, both where the daemon listens and where it does not. */
final class Topics implements Target {
    private static final int LONGEST = 65_535;
    private static final List<String> FORMS = List.of(
            "shop/%s/room",
            "shop/%s/room",
            "shop/%s",
            "%s",
            "/%s",
            "%s/",
            "shop/alder/job/%s",
            "lampwright/ask/%s",
            "lampwright/answer/%s",
            "lampwright/status",
            "lampwright/%s",
            "SHOP/alder/%s",
            "shop//room");

    @Override
    public String name() {
        return "topics";
    }

    @Override
    public int mostSteps() {
        return 60;
    }

    @Override
    public Step step(SplittableRandom chance) {
        String level = legal(chance.nextInt(30) == 0 ? "x/".repeat(20_000) : Oddities.text(chance));
        String topic = fitting(Oddities.pick(FORMS, chance).replace("%s", level));
        byte[] payload = chance.nextBoolean()
                ? Oddities.number(chance).getBytes(StandardCharsets.UTF_8)
                : Oddities.bytes(chance, 20);
        boolean retained = chance.nextBoolean();
        return Step.of(
                "publish " + payload.length + " bytes" + (retained ? ", as kept," : "") + " on " + topic, rig -> {
                    rig.hub().publish(topic, payload, retained);
                    rig.pass(1);
                });
    }

    /** MQTT 3.1.1, sections 1.5.3 and 4.7: no zero character and no wildcard in a name. */
    private static String legal(String text) {
        return text.replaceAll("[\u0000+#]", "x");
    }

    private static String fitting(String topic) {
        int end = topic.length();
        while (topic.substring(0, end).getBytes(StandardCharsets.UTF_8).length > LONGEST) {
            end = end * 3 / 4;
        }
        return topic.substring(0, end);
    }
}
