package dev.lampwright.page;

import dev.lampwright.broker.Broker;
import dev.lampwright.engine.Daemon;
import dev.lampwright.engine.Release;
import dev.lampwright.shelf.RigStatus;
import dev.lampwright.shelf.ShelfRow;
import dev.lampwright.shelf.Standing;
import dev.lampwright.upkeep.Worker;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/**
 * Observes all rigs twenty times a second, on the thread {@code shelf}, and sends news to the viewers of the shelf: strips in a few colours
 * each time, everything else twice a second. Without viewers it observes nothing, and a minute later it stops listening to brokers as well.
 */
final class ShelfPublisher implements PageHandler.Stream, AutoCloseable {
    private static final Duration LOOK_EVERY = Duration.ofMillis(50);
    private static final long STATES_NANOS = TimeUnit.MILLISECONDS.toNanos(500);
    /** With more rigs than this, each round takes the next part of them, so that network and processor load stay the same. */
    private static final int MOST_AT_ONCE = 64;
    /** A viewer who returns soon sees the rigs of other daemons at once. */
    private static final long LISTENED_ON_NANOS = TimeUnit.SECONDS.toNanos(60);

    /** A page that receives nothing for six seconds considers the connection lost. */
    private static final long LINE_NANOS = TimeUnit.SECONDS.toNanos(2);

    private final Supplier<Map<String, Daemon>> daemons;
    private final Supplier<Map<String, String>> rejected;
    private final Viewers viewers;
    private final Worker worker = new Worker("shelf", LOOK_EVERY, () -> look(System.nanoTime()), this::rest);
    private final Map<String, LocalRig> here = new TreeMap<>();
    private List<LocalRig> inTurn = List.of();
    private final Elsewhere elsewhere = new Elsewhere();
    private final Map<String, Integer> ids = new HashMap<>();
    private final Map<Integer, String> stripsElsewhere = new HashMap<>();
    private final StripNews strips = new StripNews();
    private byte[] states = new byte[0];
    private String told = "";
    private boolean watched;
    private long statesNanos;
    private long watchedNanos;
    private long lineNanos = System.nanoTime();
    private int next;

    /**
     * Creates a publisher that does not run yet.
     *
     * @param daemons the running rigs, by name
     * @param rejected why rigs do not run, by name
     * @param viewers the viewers
     */
    ShelfPublisher(Supplier<Map<String, Daemon>> daemons, Supplier<Map<String, String>> rejected, Viewers viewers) {
        this.daemons = daemons;
        this.rejected = rejected;
        this.viewers = viewers;
    }

    /** Starts the thread. */
    void start() {
        worker.start();
    }

    /** Ends the thread, waits for it, a second at most, and stops reading everything. */
    @Override
    public void close() {
        worker.close();
    }

    @Override
    public synchronized void welcome(Viewer viewer, String lastId) {
        if (states.length > 0) {
            viewer.tell(Topic.SHELF, states);
            viewer.tell(Topic.STRIPS, strips.all());
        }
        viewers.add(viewer);
    }

    private synchronized void rest() {
        leaveStripsAlone();
        elsewhere.close();
    }

    private void leaveStripsAlone() {
        here.values().forEach(LocalRig::close);
        here.clear();
        inTurn = List.of();
        strips.clear();
        stripsElsewhere.clear();
        states = new byte[0];
        told = "";
    }

    private synchronized void look(long nanos) {
        viewers.dismissStuck();
        if (viewers.count() == 0) {
            if (watched) {
                leaveStripsAlone();
                watched = false;
                watchedNanos = nanos;
            } else if (nanos - watchedNanos > LISTENED_ON_NANOS) {
                elsewhere.close();
            }
            return;
        }
        if (!watched || nanos - statesNanos >= 0) {
            watched = true;
            statesNanos = nanos + STATES_NANOS;
            follow(daemons.get());
            lookAtStates(nanos);
        }
        lookAtStrips();
        boolean quiet = nanos - lineNanos >= 0;
        lineNanos = quiet ? nanos + LINE_NANOS : lineNanos;
        strips.tell(viewers.all(), quiet);
    }

    private void follow(Map<String, Daemon> now) {
        here.entrySet().removeIf(rig -> {
            boolean gone = !rig.getValue().isOf(now.get(rig.getKey()));
            if (gone) {
                rig.getValue().close();
                strips.remove(rig.getValue().id());
            }
            return gone;
        });
        now.forEach((name, daemon) ->
                here.computeIfAbsent(name, same -> new LocalRig(id("here " + name), name, daemon)));
        inTurn = List.copyOf(here.values());
        Set<Broker> brokers = now.values().stream()
                .map(daemon -> daemon.tap().config().broker())
                .collect(Collectors.toSet());
        elsewhere.follow(brokers);
    }

    private int id(String key) {
        return ids.computeIfAbsent(key, same -> ids.size());
    }

    /** A rig for the shelf, with its number there. */
    private record Seen(int id, ShelfRow row, boolean isHere) {}

    private void lookAtStates(long nanos) {
        List<Seen> seen = new ArrayList<>();
        Set<String> ours = new HashSet<>();
        Set<String> hosts = new HashSet<>();
        here.values().forEach(rig -> {
            ShelfRow row = rig.row();
            ours.add(row.status().run());
            hosts.add(row.status().host());
            seen.add(new Seen(rig.id(), row, true));
        });
        Map<String, String> off = rejected.get();
        List<Seen> others = elsewhere.rows(ours, nanos).stream()
                .filter(found -> !isLeftBehind(found.row(), hosts, off.keySet()))
                .map(found -> new Seen(id("at " + found.where()), found.row(), false))
                .toList();
        forgetStripsBut(others);
        seen.addAll(others);
        seen.sort((one, other) -> ShelfRow.ORDER.compare(one.row(), other.row()));
        ShelfMessage message = new ShelfMessage();
        seen.stream().filter(ShelfPublisher::isInAlarm).forEach(one -> add(one, message));
        off.forEach((name, why) -> message.addRejected(id("here " + name), name, why));
        seen.stream().filter(one -> !isInAlarm(one)).forEach(one -> add(one, message));
        String brokers = elsewhere.brokers();
        String text = message.text(Release.version(), brokers.isEmpty() ? Optional.empty() : Optional.of(brokers));
        if (!text.equals(told)) {
            told = text;
            states = ServerEvent.of(Topic.SHELF.word(), text);
            viewers.tell(Topic.SHELF, states);
        }
    }

    /** What a rig of this computer last reported before its file was rejected: it is listed with the reason, and once is enough. */
    private static boolean isLeftBehind(ShelfRow row, Set<String> hosts, Set<String> off) {
        return !row.standing().isThere()
                && off.contains(row.status().rig())
                && hosts.contains(row.status().host());
    }

    /** A rig of another daemon that was withdrawn, and returns with the same colours, must be drawn again. */
    private void forgetStripsBut(List<Seen> others) {
        Set<Integer> present = others.stream().map(Seen::id).collect(Collectors.toSet());
        stripsElsewhere.keySet().removeIf(known -> {
            boolean gone = !present.contains(known);
            if (gone) {
                strips.remove(known);
            }
            return gone;
        });
    }

    private static boolean isInAlarm(Seen seen) {
        return seen.row().standing().compareTo(Standing.ACKNOWLEDGED) <= 0;
    }

    private void add(Seen seen, ShelfMessage message) {
        RigStatus status = seen.row().status();
        if (seen.isHere()) {
            LocalRig rig = here.get(status.rig());
            message.addHere(seen.id(), seen.row(), rig.flashes(status.light().look()));
        } else {
            message.addElsewhere(seen.id(), seen.row());
            String strip = status.strip();
            if (!strip.isEmpty() && !strip.equals(stripsElsewhere.put(seen.id(), strip))) {
                strips.put(seen.id(), HexFormat.of().parseHex(strip));
            }
        }
    }

    private void lookAtStrips() {
        int count = Math.min(MOST_AT_ONCE, inTurn.size());
        for (int i = 0; i < count; i++) {
            LocalRig rig = inTurn.get((next + i) % inTurn.size());
            if (rig.look()) {
                strips.put(rig.id(), rig.rgb());
            }
        }
        next = inTurn.isEmpty() ? 0 : (next + count) % inTurn.size();
    }
}
