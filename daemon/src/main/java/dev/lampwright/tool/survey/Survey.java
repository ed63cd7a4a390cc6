package dev.lampwright.tool.survey;

import dev.lampwright.broker.TopicFilter;
import dev.lampwright.payload.CsvField;
import dev.lampwright.payload.Leaf;
import dev.lampwright.payload.Leaves;
import dev.lampwright.payload.RecordKeys;
import dev.lampwright.payload.Source;
import dev.lampwright.payload.Speakers;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Takes in what a broker sends and finds out where in it a printer reports what. It keeps a bounded number of values, and takes bounded
 * room for each, whatever is sent and for how long. Safe for many threads.
 */
public final class Survey {
    /** The maximum number of different values kept. */
    public static final int MOST_VALUES = 1500;

    private static final int MOST_TOPIC_CHARS = 300;
    private static final double NANOS_A_SECOND = 1e9;
    private static final Comparator<Proposal.Row> IN_ORDER = Comparator.comparing(
                    (Proposal.Row row) -> row.found().map(Found::role).orElse(null),
                    Comparator.nullsLast(Comparator.<Role>naturalOrder()))
            .thenComparing(row -> row.own().isEmpty())
            .thenComparing(Proposal.Row::topic)
            .thenComparing(Proposal.Row::place);

    private final Map<Source, Trail> trails = new LinkedHashMap<>();
    private final Lampwrights lampwrights = new Lampwrights();
    private final PassingIds passing = new PassingIds();
    private final Set<String> folding = new HashSet<>();
    private final RecordKeys keys = new RecordKeys();
    private final Speakers speakers = new Speakers();
    private final TableHeads heads = new TableHeads();
    private long messages;
    private long leftOut;
    private long startNanos;

    /**
     * Takes in a message. What a lampwright reports or receives is counted and left out.
     *
     * @param topic its topic
     * @param payload its payload; not kept
     * @param atNanos when it came, in ns since any moment; never earlier than the previous one
     */
    public synchronized void hear(String topic, byte[] payload, long atNanos) {
        startNanos = messages == 0 ? atNanos : startNanos;
        messages++;
        if (!isNameable(topic)) {
            leftOut++;
            return;
        }
        double second = (atNanos - startNanos) / NANOS_A_SECOND;
        String place = placeOf(topic, second);
        boolean several = speakers.on(place).isPresent();
        Leaves leaves = Leaves.of(place, payload, keys, speakers);
        if (!several && speakers.on(place).isPresent()) {
            trails.keySet().removeIf(source -> source.topicFilter().equals(place));
        }
        if (lampwrights.meet(topic, leaves)) {
            trails.keySet().removeIf(source -> lampwrights.own(source.topicFilter()));
        }
        if (lampwrights.own(topic)) {
            return;
        }
        leftOut += leaves.complete() ? 0 : 1;
        heads.hear(topic, payload);
        leaves.list().forEach(leaf -> hear(place, leaf, second));
    }

    /** The topic, without an id that changes every time. */
    private String placeOf(String topic, double second) {
        Optional<String> folded = passing.without(topic, second);
        folded.filter(folding::add).ifPresent(filter -> {
            TopicFilter topics = TopicFilter.of(filter);
            trails.keySet().removeIf(source -> topics.matches(source.topicFilter()));
        });
        return folded.orElse(topic);
    }

    /** Whether a configuration can name it: MQTT 3.1.1, section 4.7.1, reserves {@code +} and {@code #} for filters. */
    private static boolean isNameable(String topic) {
        return topic.length() <= MOST_TOPIC_CHARS
                && topic.indexOf('+') < 0
                && topic.indexOf('#') < 0
                && TopicFilter.problem(topic).isEmpty();
    }

    private void hear(String topic, Leaf leaf, double second) {
        Source source = leaf.on(topic);
        Trail trail = trails.get(source);
        if (trail == null && trails.size() >= MOST_VALUES) {
            leftOut++;
            return;
        }
        if (trail == null) {
            trail = new Trail(topic, leaf, speakers.on(topic).isPresent());
            trails.put(source, trail);
        }
        trail.add(leaf, second);
    }

    /**
     * How many messages have come.
     *
     * @return a count
     */
    public synchronized long messages() {
        return messages;
    }

    /**
     * How many different values are kept.
     *
     * @return a count, {@value #MOST_VALUES} at most
     */
    public synchronized int values() {
        return trails.size();
    }

    /**
     * The conclusions from everything heard so far.
     *
     * @return a snapshot
     */
    public synchronized Proposal proposal() {
        nameFields();
        SharedBeginnings.silence(trails.values());
        Assignment assignment = new Assignment(trails.values());
        List<Found> found = assignment.found();
        Proposal.Own own = own(assignment);
        List<Proposal.Row> rows = new ArrayList<>();
        trails.forEach((source, trail) -> rows.add(row(source, trail, found, own.found())));
        rows.sort(IN_ORDER);
        return new Proposal(
                rows, found, own, assignment.statePlaces(), assignment.conditions(), company(found), messages, leftOut);
    }

    /**
     * By the names in a line that came on the same topic or beside it. All others get their own names back: what an earlier proposal made of
     * them may be wrong by now.
     */
    private void nameFields() {
        Map<String, Integer> fields = new HashMap<>();
        trails.keySet()
                .forEach(source -> source.cuts().stream()
                        .filter(CsvField.class::isInstance)
                        .forEach(cut -> fields.merge(source.topicFilter(), ((CsvField) cut).number(), Math::max)));
        trails.values()
                .forEach(trail -> trail.call(
                        heads.nameOf(trail, fields.getOrDefault(trail.source().topicFilter(), 0))
                                .orElse(trail.plainNames())));
    }

    /** A heater counts once, although it has two readings. */
    private static Proposal.Own own(Assignment assignment) {
        if (!PrinterSigns.areIn(assignment.found())) {
            return new Proposal.Own(List.of(), 0);
        }
        UnclaimedValues around = assignment.unclaimed();
        FurtherHeaters heaters = new FurtherHeaters(around, assignment.thermometer());
        List<FoundOwn> numbers = new OwnNumbers(around, heaters.used(), assignment.thermometer()).found();
        List<FoundOwn> own = new ArrayList<>(heaters.found());
        int room = Math.min(numbers.size(), Proposal.Own.MOST - own.size() / 2);
        own.addAll(numbers.subList(0, room));
        return new Proposal.Own(own, numbers.size() - room);
    }

    private Proposal.Company company(List<Found> found) {
        List<String> places = LookAlikes.beside(found, trails.values()).stream()
                .map(Place::filter)
                .toList();
        List<Mixture> mixtures = new ArrayList<>(Mixture.among(found, trails.values()));
        found.stream()
                .map(one -> one.source().topicFilter())
                .distinct()
                .forEach(topic ->
                        speakers.on(topic).ifPresent(turns -> mixtures.add(Mixture.apart(topic, turns, found))));
        return new Proposal.Company(lampwrights.prefixes(), places, mixtures);
    }

    private static Proposal.Row row(Source source, Trail trail, List<Found> found, List<FoundOwn> own) {
        Optional<Found> role =
                found.stream().filter(one -> one.source().equals(source)).findFirst();
        String range = trail.numeric()
                ? NumberText.number(trail.least()) + " to " + NumberText.number(trail.most())
                : NumberText.words(trail.words());
        return new Proposal.Row(
                source.topicFilter(),
                trail.place(),
                trail.count(),
                trail.perSecond(),
                range,
                trail.last(),
                role,
                own.stream().filter(one -> one.source().equals(source)).findFirst());
    }
}
