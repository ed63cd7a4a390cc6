package dev.lampwright.page;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Base64;
import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;

/**
 * The newest colours of all strips, and which viewer has not been sent which of them: one whose last message still waits gets all that is
 * new by then, later. Each strip is put into words once, when it changes. For one thread at a time.
 */
final class StripNews {
    private static final byte[] BEGIN = ascii("event: " + Topic.STRIPS.word() + "\ndata: {");
    private static final byte[] END = ascii("}\n\n");
    private static final Base64.Encoder BASE64 = Base64.getEncoder();

    /** Each strip as a member of a JSON object, by its number. */
    private byte[][] newest = {};

    private final BitSet present = new BitSet();
    private final BitSet changed = new BitSet();
    private final Map<Viewer, BitSet> owed = new HashMap<>();

    /**
     * A strip shows other colours.
     *
     * @param id its number, 0 or more; best without gaps
     */
    void put(int id, byte[] rgb) {
        if (id >= newest.length) {
            newest = Arrays.copyOf(newest, 2 * id + 1);
        }
        newest[id] = member(id, rgb);
        present.set(id);
        changed.set(id);
    }

    /** A strip is gone. */
    void remove(int id) {
        present.clear(id);
        changed.clear(id);
    }

    /** Forgets everything. */
    void clear() {
        newest = new byte[0][];
        present.clear();
        changed.clear();
        owed.clear();
    }

    /** All strips, for a viewer who has received none yet. */
    byte[] all() {
        return event(present);
    }

    /**
     * Sends each viewer what is new to it.
     *
     * @param viewers the viewers
     * @param anyway whether to send something even if nothing is new, since a page considers a connection lost if it is quiet for long
     */
    void tell(Set<Viewer> viewers, boolean anyway) {
        owed.keySet().retainAll(viewers);
        byte[] usual = changed.isEmpty() && !anyway ? new byte[0] : event(changed);
        for (Viewer viewer : viewers) {
            BitSet mine = owed.computeIfAbsent(viewer, same -> new BitSet());
            if (viewer.waits(Topic.STRIPS)) {
                mine.or(changed);
            } else if (!mine.isEmpty()) {
                mine.or(changed);
                mine.and(present);
                viewer.tell(Topic.STRIPS, event(mine));
                mine.clear();
            } else if (usual.length > 0) {
                viewer.tell(Topic.STRIPS, usual);
            }
        }
        changed.clear();
    }

    /** Put together by hand, since it is the most of what the shelf sends; digits and Base64 need no escapes. */
    private byte[] event(BitSet ids) {
        int commas = Math.max(0, ids.cardinality() - 1);
        int members = ids.stream().map(id -> newest[id].length).sum();
        byte[] event = new byte[BEGIN.length + members + commas + END.length];
        int at = copy(BEGIN, event, 0);
        for (int id = ids.nextSetBit(0); id >= 0; id = ids.nextSetBit(id + 1)) {
            if (at > BEGIN.length) {
                event[at++] = ',';
            }
            at = copy(newest[id], event, at);
        }
        copy(END, event, at);
        return event;
    }

    private static byte[] member(int id, byte[] rgb) {
        byte[] name = ascii("\"" + id + "\":\"");
        byte[] colours = BASE64.encode(rgb);
        byte[] member = new byte[name.length + colours.length + 1];
        int at = copy(colours, member, copy(name, member, 0));
        member[at] = '"';
        return member;
    }

    private static int copy(byte[] from, byte[] to, int at) {
        System.arraycopy(from, 0, to, at, from.length);
        return at + from.length;
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
