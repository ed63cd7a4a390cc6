package dev.lampwright.broker;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** {@code TopicFilterTest} holds it to the examples of MQTT 3.1.1, section 4.7; here it finds among many. */
final class TopicIndexTest {
    private static final int ROUNDS = 300;
    private static final int TOPICS = 60;

    /**
     * Whether a filter matches, level by level, as MQTT 3.1.1 (OASIS Standard, 29 October 2014) puts it: {@code #} stands for any number of levels,
     * none included (4.7.1.2), {@code +} for one (4.7.1.3), and neither for a first level that begins with {@code $} (4.7.2).
     */
    private static boolean matches(List<String> filter, List<String> topic, boolean isFirst) {
        boolean isHidden = isFirst && topic.get(0).startsWith("$");
        if (!filter.isEmpty() && filter.get(0).equals("#")) {
            return !isHidden;
        }
        if (filter.isEmpty() || topic.isEmpty()) {
            return filter.isEmpty() && topic.isEmpty();
        }
        boolean fits = filter.get(0).equals("+") ? !isHidden : filter.get(0).equals(topic.get(0));
        return fits && matches(filter.subList(1, filter.size()), topic.subList(1, topic.size()), false);
    }

    private static List<String> levels(String text) {
        return List.of(text.split("/", -1));
    }

    private static String random(Random random, List<String> levels) {
        return IntStream.rangeClosed(0, random.nextInt(4))
                .mapToObj(any -> levels.get(random.nextInt(levels.size())))
                .collect(Collectors.joining("/"));
    }

    private static String randomTopic(Random random) {
        String topic = random(random, List.of("a", "b", "$a", ""));
        return topic.isEmpty() ? "/" : topic;
    }

    private static String randomFilter(Random random) {
        String start = random(random, List.of("a", "b", "$a", "", "+"));
        String filter = random.nextInt(3) == 0 ? start + "/#" : start;
        return filter.isEmpty() ? "#" : filter;
    }

    @Test
    void findsJustThoseWhoseFiltersMatchOneByOne() {
        for (int seed = 0; seed < ROUNDS; seed++) {
            Random random = new Random(seed);
            Map<String, Set<Integer>> filters = new HashMap<>();
            for (int who = 0; who < 12; who++) {
                filters.computeIfAbsent(randomFilter(random), any -> new HashSet<>())
                        .add(who % 7);
            }
            TopicIndex<Integer> index = new TopicIndex<>(filters);
            for (int i = 0; i < TOPICS; i++) {
                String topic = randomTopic(random);
                Set<Integer> wanting = new HashSet<>();
                filters.forEach((filter, who) -> {
                    if (matches(levels(filter), levels(topic), true)) {
                        wanting.addAll(who);
                    }
                });
                assertEquals(wanting, index.find(topic), () -> topic + " in " + filters);
            }
        }
    }

    @Test
    void whoWantsATopicTwiceIsFoundOnce() {
        TopicIndex<String> index = new TopicIndex<>(
                Map.of("shop/#", Set.of("all"), "shop/+/job", Set.of("all", "jobs"), "shop/alder/job", Set.of("jobs")));
        assertEquals(Set.of("all", "jobs"), index.find("shop/alder/job"));
        assertEquals(Set.of("all"), index.find("shop/alder/heat"));
        assertEquals(Set.of(), index.find("hall/alder/job"));
    }

    /** As deep as a topic of 65535 bytes can be, on a stack as small as the service's threads have. */
    @Test
    void noTopicIsTooDeep() throws InterruptedException {
        String deep = "/".repeat(65_535);
        TopicIndex<String> index =
                new TopicIndex<>(Map.of(deep, Set.of("deep"), "/+".repeat(32_000) + "/#", Set.of("any")));
        Set<String> found = new HashSet<>();
        Thread thread = new Thread(null, () -> found.addAll(index.find(deep)), "small", 256 << 10);
        thread.start();
        thread.join();
        assertEquals(Set.of("deep", "any"), found);
    }
}
