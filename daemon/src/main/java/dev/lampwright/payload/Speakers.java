package dev.lampwright.payload;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Finds topics on which several publish in turn, distinguished by a field of the message: two printers, or the heaters of one. The field
 * has few values that keep recurring, and with the same value the other numbers of a message are much closer to each other than from
 * message to message, or the messages have different fields. Remembers a bounded number of topics.
 */
public final class Speakers {
    /** Names of fields that say who publishes or what the message is about. Common practice, no source. */
    private static final Set<String> CALLED = Set.of(
            "id",
            "name",
            "serial",
            "sn",
            "uid",
            "uuid",
            "mac",
            "printer",
            "machine",
            "device",
            "node",
            "client",
            "sender",
            "source",
            "unit",
            "nr",
            "no",
            "num",
            "number",
            "index",
            "channel",
            "ch",
            "slot",
            "addr",
            "address",
            "heater",
            "zone",
            "sensor",
            "part",
            "drucker",
            "imprimante",
            "impresora",
            "stampante",
            "tiskarna",
            "drukarka",
            "nom",
            "nombre",
            "nome",
            "teil");

    private static final int MOST_TOPICS = 64;
    private static final int MOST_FIELDS = 16;
    private static final int MOST_NUMBERS = 24;
    private static final int MOST_VALUES = 16;
    private static final int MOST_CHARS = 30;
    private static final int LEAST_MESSAGES = 8;
    private static final int LEAST_EACH = 3;
    private static final double OFTEN = 0.15;
    private static final double NEARER = 0.3;
    private static final int SEVERAL = 2;

    private final Map<String, Topic> topics = new HashMap<>();

    /**
     * Who publishes on a topic.
     *
     * @param field the field that says who
     * @param values who publishes there
     */
    public record Turns(PayloadPath field, List<String> values) {}

    /** Takes in a message, and returns which field says who publishes, judged by all messages up to this one. */
    Optional<String> of(String topic, JsonNode message) {
        if (!message.isObject() || (!topics.containsKey(topic) && topics.size() >= MOST_TOPICS)) {
            return Optional.empty();
        }
        return topics.computeIfAbsent(topic, any -> new Topic()).take(message);
    }

    /**
     * Who publishes on a topic in turn.
     *
     * @param topic the topic
     * @return empty if it is only one, as far as is known
     */
    public Optional<Turns> on(String topic) {
        return Optional.ofNullable(topics.get(topic)).flatMap(Topic::turns);
    }

    private static boolean isCalledName(String field) {
        return CALLED.contains(field.toLowerCase(Locale.ROOT));
    }

    /** A number may be a name as well; the numbers that come with it show whether it is. */
    private static boolean isName(JsonNode value) {
        return value.isIntegralNumber()
                || (value.isTextual()
                        && value.textValue().length() <= MOST_CHARS
                        && value.textValue().chars().anyMatch(Character::isLetter));
    }

    private static final class Topic {
        private final Map<String, Field> fields = new LinkedHashMap<>();
        private final Map<String, Double> numbers = new HashMap<>();
        private Set<String> names = Set.of();
        private int messages;
        private String decided = "";

        Optional<String> take(JsonNode message) {
            if (decided.isEmpty()) {
                learn(message);
            }
            return decided.isEmpty() ? Optional.empty() : Optional.of(decided);
        }

        private void learn(JsonNode message) {
            Map<String, Double> now = new HashMap<>();
            message.properties().forEach(property -> {
                if (property.getValue().isNumber() && now.size() < MOST_NUMBERS) {
                    now.put(property.getKey(), property.getValue().doubleValue());
                }
            });
            Set<String> nowNames = new TreeSet<>();
            message.fieldNames().forEachRemaining(nowNames::add);
            message.properties().forEach(property -> {
                boolean known = fields.containsKey(property.getKey());
                if (isName(property.getValue()) && (known || (messages < LEAST_EACH && fields.size() < MOST_FIELDS))) {
                    fields.computeIfAbsent(property.getKey(), any -> new Field())
                            .take(
                                    property.getValue().asText(),
                                    without(now, property.getKey()),
                                    numbers,
                                    nowNames,
                                    names);
                }
            });
            fields.keySet()
                    .removeIf(field -> !message.path(field).isValueNode()
                            && !fields.get(field).isLost());
            messages++;
            numbers.putAll(now);
            names = nowNames;
            if (messages >= LEAST_MESSAGES && messages % LEAST_MESSAGES == 0) {
                decide(message);
            }
        }

        private void decide(JsonNode message) {
            decided = fields.entrySet().stream()
                    .filter(entry ->
                            entry.getValue().isInTurns(messages) && isProved(entry.getKey(), entry.getValue(), message))
                    .max(Comparator.comparing((Map.Entry<String, Field> entry) -> isCalledName(entry.getKey()))
                            .thenComparing(entry -> entry.getValue().turns))
                    .map(Map.Entry::getKey)
                    .orElse("");
        }

        /** A number in a field that is not for names has to say more. */
        private boolean isProved(String name, Field field, JsonNode message) {
            boolean isNameOrText = isCalledName(name) || message.path(name).isTextual();
            return isSender(name, message) || (isNameOrText ? field.tellsApart(messages) : field.tellsMostApart());
        }

        /** A text in a field for names says who publishes, even if all say the same. */
        private static boolean isSender(String field, JsonNode message) {
            return isCalledName(field) && message.path(field).isTextual();
        }

        private static Map<String, Double> without(Map<String, Double> numbers, String field) {
            Map<String, Double> others = new HashMap<>(numbers);
            others.remove(field);
            return others;
        }

        Optional<Turns> turns() {
            return decided.isEmpty()
                    ? Optional.empty()
                    : Optional.of(new Turns(
                            PayloadPath.at(JsonPointer.empty().appendProperty(decided)),
                            List.copyOf(new TreeSet<>(fields.get(decided).counts.keySet()))));
        }
    }

    /** A field that may say who publishes. */
    private static final class Field {
        private final Map<String, Integer> counts = new HashMap<>();
        private final Map<String, Map<String, Double>> last = new HashMap<>();
        private final Map<String, Set<String>> names = new HashMap<>();
        private final Map<String, double[]> distances = new HashMap<>();
        private String before = "";
        private int turns;
        private int otherNames;
        private int sameNames;
        private boolean lost;

        boolean isLost() {
            return lost;
        }

        void take(
                String value,
                Map<String, Double> now,
                Map<String, Double> numbersBefore,
                Set<String> nowNames,
                Set<String> namesBefore) {
            if (lost) {
                return;
            }
            if (!counts.containsKey(value) && counts.size() >= MOST_VALUES) {
                lost = true;
                last.clear();
                names.clear();
                return;
            }
            boolean turn = !before.isEmpty() && !before.equals(value);
            turns += turn ? 1 : 0;
            before = value;
            counts.merge(value, 1, Integer::sum);
            Map<String, Double> same = last.computeIfAbsent(value, any -> new HashMap<>());
            now.forEach((name, number) -> {
                if (turn && numbersBefore.containsKey(name) && same.containsKey(name)) {
                    double[] sums = distances.computeIfAbsent(name, any -> new double[2]);
                    sums[0] += Math.abs(number - numbersBefore.get(name));
                    sums[1] += Math.abs(number - same.get(name));
                }
            });
            same.putAll(now);
            otherNames += turn && !nowNames.equals(namesBefore) ? 1 : 0;
            sameNames += nowNames.equals(names.getOrDefault(value, Set.of())) ? 1 : 0;
            names.put(value, nowNames);
        }

        boolean isInTurns(int messages) {
            return !lost
                    && counts.size() > 1
                    && turns >= OFTEN * messages
                    && counts.values().stream().allMatch(count -> count >= LEAST_EACH);
        }

        boolean tellsApart(int messages) {
            boolean shapes = turns > 0 && otherNames >= turns - 1 && sameNames >= messages - 2 * counts.size();
            return shapes || distances.values().stream().anyMatch(Field::isNearer);
        }

        /** Whether most of the numbers that differ from message to message belong to one of its values. */
        boolean tellsMostApart() {
            long nearer = distances.values().stream().filter(Field::isNearer).count();
            long moving =
                    distances.values().stream().filter(sums -> sums[0] > 0).count();
            return nearer >= SEVERAL && SEVERAL * nearer >= moving;
        }

        private static boolean isNearer(double[] sums) {
            return sums[0] > 0 && sums[1] < NEARER * sums[0];
        }
    }
}
