package dev.lampwright.tool.bench;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.file.AtomicFile;
import dev.lampwright.file.KeptFile;
import dev.lampwright.json.Json;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Looks that are not finished, kept in a file so that neither a closed tab nor a restart loses them. Safe for many threads. */
final class LookDrafts {
    private static final Logger LOG = LoggerFactory.getLogger(LookDrafts.class);
    private static final int MOST = 20;
    private static final int MOST_CHARS = 500_000;

    private final Path file;
    private final KeptFile kept;
    private Map<String, Draft> drafts = new LinkedHashMap<>();
    private boolean read;

    /** One of them. What it holds is whoever wrote it's business. */
    private record Draft(String name, long atMillis, String base, String look) {
        Map<String, Object> told() {
            Map<String, Object> told = new LinkedHashMap<>();
            told.put("name", name);
            told.put("at_ms", atMillis);
            told.put("base", base);
            return told;
        }

        Map<String, Object> whole() {
            Map<String, Object> whole = told();
            whole.put("look", Json.read(look).orElseThrow());
            return whole;
        }

        private static Draft of(JsonNode node) {
            return new Draft(
                    node.path("name").asText(),
                    node.path("at_ms").asLong(),
                    node.path("base").asText(),
                    node.path("look").toString());
        }
    }

    LookDrafts(Path file) {
        this.file = file;
        kept = new KeptFile(file, LOG, "unfinished looks", "unfinished looks");
    }

    /** What there is, the newest last. */
    synchronized List<Map<String, Object>> all() {
        return read().values().stream().map(Draft::told).toList();
    }

    /** One of them. */
    synchronized Map<String, Object> find(String name) throws BenchRefusal {
        Draft draft = read().get(name);
        if (draft == null) {
            throw new BenchRefusal(404, "nothing", "there is no draft of " + name);
        }
        return draft.whole();
    }

    /**
     * Keeps one, in place of that of the same name.
     *
     * @param name of the look
     * @param body its {@code look}, an object, and its {@code base}
     */
    synchronized void keep(String name, BenchBody body) throws BenchRefusal {
        BenchLook.requireName(name);
        Map<String, Draft> next = new LinkedHashMap<>(read());
        next.remove(name);
        if (next.size() >= MOST) {
            throw new BenchRefusal(
                    409, "too_many", "there are " + MOST + " drafts already; save or discard one of them first");
        }
        next.put(
                name,
                new Draft(
                        name,
                        System.currentTimeMillis(),
                        body.text("base"),
                        body.object("look").toString()));
        int chars =
                next.values().stream().mapToInt(draft -> draft.look().length()).sum();
        if (chars > MOST_CHARS) {
            throw new BenchRefusal(413, "too_long", "the drafts are too long together; discard one of them first");
        }
        write(next);
    }

    /** Forgets one; nothing happens if there is none. */
    synchronized void discard(String name) throws BenchRefusal {
        Map<String, Draft> next = new LinkedHashMap<>(read());
        if (next.remove(name) != null) {
            write(next);
        }
    }

    private Map<String, Draft> read() {
        if (!read) {
            kept.restore(this::take);
            read = true;
        }
        return drafts;
    }

    private void take(String text) {
        JsonNode all = Json.read(text)
                .filter(JsonNode::isArray)
                .orElseThrow(() -> new IllegalArgumentException("is not a list of drafts"));
        Map<String, Draft> taken = new LinkedHashMap<>();
        all.forEach(each -> taken.put(each.path("name").asText(), Draft.of(each)));
        drafts = taken;
    }

    private void write(Map<String, Draft> next) throws BenchRefusal {
        try {
            AtomicFile.makeFolder(file.toAbsolutePath().getParent());
            List<Map<String, Object>> all = new ArrayList<>();
            next.values().forEach(draft -> all.add(draft.whole()));
            AtomicFile.replaceNoLink(file, Json.of(all));
            drafts = next;
        } catch (IOException e) {
            throw new BenchRefusal(507, "not_written", e.getMessage());
        }
    }
}
