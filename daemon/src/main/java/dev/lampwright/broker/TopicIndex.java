package dev.lampwright.broker;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Finds everyone who needs a topic, among many topic filters at once: a tree with one level for each level of the filters. Finding costs
 * what the topic's own levels cost and what is found, however many filters there are that do not match. It agrees with {@link TopicFilter#matches}, so
 * with MQTT 3.1.1, section 4.7. Nothing in it calls itself, so no topic is too deep. It never changes, so any thread may look.
 *
 * @param <T> who wants topics; told apart by {@code equals}
 */
final class TopicIndex<T> {
    private static final char SEPARATOR = '/';

    private final Node<T> root = new Node<>();

    /** What begins with the same levels. */
    private static final class Node<T> {
        private final Map<String, Node<T>> next = new HashMap<>();
        private Node<T> nextAny;
        private final List<T> here = new ArrayList<>();
        private final List<T> hereAndBelow = new ArrayList<>();

        Node<T> make(String level) {
            if (!level.equals("+")) {
                return next.computeIfAbsent(level, any -> new Node<>());
            }
            if (nextAny == null) {
                nextAny = new Node<>();
            }
            return nextAny;
        }

        void step(String level, boolean wildcards, Collection<Node<T>> into) {
            Node<T> same = next.get(level);
            if (same != null) {
                into.add(same);
            }
            if (wildcards && nextAny != null) {
                into.add(nextAny);
            }
        }
    }

    /**
     * Makes an index.
     *
     * @param filters whose each of the filters is: by well-formed topic filter, all who want it
     */
    TopicIndex(Map<String, ? extends Collection<T>> filters) {
        filters.forEach(this::add);
    }

    private void add(String filter, Collection<T> wanting) {
        Node<T> node = root;
        int start = 0;
        while (start <= filter.length()) {
            int end = levelEnd(filter, start);
            String level = filter.substring(start, end);
            if (level.equals("#")) {
                node.hereAndBelow.addAll(wanting);
                return;
            }
            node = node.make(level);
            start = end + 1;
        }
        node.here.addAll(wanting);
    }

    /**
     * Who needs a topic.
     *
     * @param topic the topic of a message, without wildcards
     * @return each of them once
     */
    Set<T> find(String topic) {
        Set<T> found = new LinkedHashSet<>();
        List<Node<T>> nodes = List.of(root);
        boolean wildcards = !topic.startsWith("$");
        int start = 0;
        while (start <= topic.length() && !nodes.isEmpty()) {
            int end = levelEnd(topic, start);
            String level = topic.substring(start, end);
            List<Node<T>> below = new ArrayList<>(2);
            for (Node<T> node : nodes) {
                if (wildcards) {
                    found.addAll(node.hereAndBelow);
                }
                node.step(level, wildcards, below);
            }
            wildcards = true;
            nodes = below;
            start = end + 1;
        }
        for (Node<T> node : nodes) {
            found.addAll(node.here);
            found.addAll(node.hereAndBelow);
        }
        return found;
    }

    private static int levelEnd(String text, int start) {
        int end = text.indexOf(SEPARATOR, start);
        return end < 0 ? text.length() : end;
    }
}
