package dev.lampwright.page;

import dev.lampwright.broker.Broker;
import dev.lampwright.shelf.Shelf;
import dev.lampwright.shelf.ShelfListener;
import dev.lampwright.shelf.ShelfRow;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The rigs of other daemons, found at the brokers that our own rigs listen to. It has its own connections, but only while the shelf is
 * watched. For one thread.
 */
final class Elsewhere implements AutoCloseable {
    /** A shop has one, or a few. */
    private static final int MOST_BROKERS = 4;

    private static final int LEVELS = 4;

    private final Map<Broker, Ear> ears = new LinkedHashMap<>();

    /**
     * A rig of another daemon.
     *
     * @param where its broker and prefix; at two brokers, two rigs may have the same prefix
     */
    record Found(String where, ShelfRow row) {}

    /** What is heard from one broker. */
    private record Ear(ShelfListener listener, Shelf shelf) {
        static Ear at(Broker broker) {
            Shelf shelf = new Shelf(Shelf.USUAL_LAPSE);
            ShelfListener listener = new ShelfListener(broker, LEVELS, shelf);
            listener.start();
            return new Ear(listener, shelf);
        }
    }

    /** Listens to exactly these brokers. */
    void follow(Set<Broker> brokers) {
        ears.entrySet().removeIf(ear -> {
            boolean gone = !brokers.contains(ear.getKey());
            if (gone) {
                ear.getValue().listener().close();
            }
            return gone;
        });
        brokers.stream()
                .filter(broker -> !ears.containsKey(broker))
                .limit(Math.max(0, MOST_BROKERS - ears.size()))
                .forEach(broker -> ears.put(broker, Ear.at(broker)));
    }

    /**
     * What has been found. A rig that is heard with two logins at one broker is one rig.
     *
     * @param ours runs of our own rigs, which are left out
     * @param nanos now
     */
    List<Found> rows(Set<String> ours, long nanos) {
        Map<String, ShelfRow> rows = new LinkedHashMap<>();
        ears.forEach((broker, ear) -> {
            ear.listener().noteContact();
            ear.shelf().rows(nanos).stream()
                    .filter(row -> !ours.contains(row.status().run()))
                    .forEach(row ->
                            rows.putIfAbsent(broker.url() + " " + row.status().prefix(), row));
        });
        return rows.entrySet().stream()
                .map(row -> new Found(row.getKey(), row.getValue()))
                .toList();
    }

    /** Where it listens, in words. */
    String brokers() {
        return ears.keySet().stream().map(broker -> broker.url().toString()).collect(Collectors.joining(", "));
    }

    @Override
    public void close() {
        follow(Set.of());
    }
}
