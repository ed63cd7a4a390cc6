package dev.lampwright.tool.bench;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.file.AtomicFile;
import dev.lampwright.file.KeptFile;
import dev.lampwright.json.Json;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Looks that are not finished, kept in a file so that neither a closed tab nor a restart loses them: those of a configuration file, by the
 * look's name. The file is read again each time, since a bench that has just been closed may have written it. Safe for many threads.
 */
final class LookDrafts {
    /** The most of one configuration file. */
    static final int MOST = 20;

    /** How long one is at most, in bytes. */
    static final int LONGEST = 60_000;

    /** How deeply values may be nested; a file allows less. */
    static final int DEEPEST = 16;

    private static final Logger LOG = LoggerFactory.getLogger(LookDrafts.class);
    /** All of them, so that the file can be read again. */
    private static final long MOST_BYTES = KeptFile.MOST_BYTES - 1000;

    private final String of;
    private final Path file;
    private final KeptFile kept;
    private final SaveTurn turn;

    /** One of them. Its look is kept as it is, right or wrong. */
    private record Draft(String of, String name, long atMillis, String base, JsonNode look) {
        Map<String, Object> told() {
            Map<String, Object> told = new LinkedHashMap<>();
            told.put("name", name);
            told.put("at_ms", atMillis);
            told.put("base", base);
            return told;
        }

        Map<String, Object> whole() {
            Map<String, Object> whole = told();
            whole.put("look", look);
            return whole;
        }

        Map<String, Object> written() {
            Map<String, Object> written = whole();
            written.put("of", of);
            return written;
        }

        boolean isOf(String config, String look) {
            return of.equals(config) && name.equals(look);
        }

        private static Draft of(JsonNode node, String config) {
            return new Draft(
                    node.path("of").asText(config),
                    node.path("name").asText(),
                    node.path("at_ms").asLong(),
                    node.path("base").asText(),
                    node.path("look"));
        }
    }

    /**
     * Makes them.
     *
     * @param files where they are kept, and of which configuration file they are
     * @param turn lets one after the other write
     */
    LookDrafts(BenchFiles files, SaveTurn turn) {
        of = files.file().toAbsolutePath().normalize().toString();
        file = files.drafts();
        kept = new KeptFile(file, LOG, "unfinished looks", "unfinished looks");
        this.turn = turn;
    }

    /** What there is, the newest last. */
    List<Map<String, Object>> all() {
        return read().stream()
                .filter(draft -> draft.of().equals(of))
                .map(Draft::told)
                .toList();
    }

    /** One of them. */
    Map<String, Object> find(String name) throws BenchRefusal {
        return read().stream()
                .filter(draft -> draft.isOf(of, name))
                .findFirst()
                .map(Draft::whole)
                .orElseThrow(
                        () -> new BenchRefusal(404, "no_draft", "there is no draft of " + name).with("look", name));
    }

    /**
     * Keeps one; it replaces one of the same name.
     *
     * @param name of the look
     * @param body its {@code look}, an object, and its {@code base}
     */
    void keep(String name, BenchBody body) throws BenchRefusal {
        BenchLook.requireName(name);
        Draft draft = new Draft(of, name, System.currentTimeMillis(), body.text("base"), body.object("look"));
        requireSmall(draft);
        turn.take(() -> {
            List<Draft> next = without(one -> one.isOf(of, name));
            if (next.stream().filter(one -> one.of().equals(of)).count() >= MOST) {
                throw new BenchRefusal(
                                409,
                                "too_many",
                                "there are " + MOST + " drafts already; save or discard one of them first")
                        .with("most", MOST);
            }
            next.add(draft);
            return write(next);
        });
    }

    private static void requireSmall(Draft draft) throws BenchRefusal {
        if (isDeeper(draft.look(), DEEPEST)) {
            throw new BenchRefusal(400, "too_deep", "the draft is nested deeper than " + DEEPEST + " levels")
                    .with("levels", DEEPEST);
        }
        if (bytes(Json.of(draft.written())) > LONGEST) {
            throw new BenchRefusal(
                            413,
                            "draft_too_long",
                            "the draft is longer than " + LONGEST + " bytes; save it, or take something out")
                    .with("bytes", LONGEST);
        }
    }

    private static boolean isDeeper(JsonNode node, int levels) {
        if (levels == 0) {
            return node.isContainerNode();
        }
        for (JsonNode inner : node) {
            if (isDeeper(inner, levels - 1)) {
                return true;
            }
        }
        return false;
    }

    private static int bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8).length;
    }

    /** Forgets one; nothing happens if there is none. */
    void discard(String name) throws BenchRefusal {
        turn.take(() -> {
            List<Draft> all = read();
            List<Draft> next = without(one -> one.isOf(of, name));
            return next.size() == all.size() ? next.size() : write(next);
        });
    }

    private List<Draft> without(Predicate<Draft> which) {
        List<Draft> next = new ArrayList<>(read());
        next.removeIf(which);
        return next;
    }

    private List<Draft> read() {
        List<Draft> drafts = new ArrayList<>();
        kept.restore(text -> drafts.addAll(drafts(text)));
        return drafts;
    }

    private List<Draft> drafts(String text) {
        Optional<JsonNode> all = Json.read(text).filter(JsonNode::isArray);
        List<Draft> drafts = new ArrayList<>();
        all.orElseThrow(() -> new IllegalArgumentException("is not a list of drafts"))
                .forEach(each -> drafts.add(Draft.of(each, of)));
        return drafts;
    }

    /** Returns how many there are now. */
    private int write(List<Draft> next) throws BenchRefusal {
        String text = Json.of(next.stream().map(Draft::written).toList());
        if (bytes(text) > MOST_BYTES) {
            throw new BenchRefusal(
                    413, "drafts_too_long", "the drafts are too long together; discard one of them first");
        }
        try {
            AtomicFile.makeFolder(file.toAbsolutePath().getParent());
            AtomicFile.replaceNoLink(file, text);
            return next.size();
        } catch (IOException e) {
            throw BenchRefusal.notWritten(file, e);
        }
    }
}
