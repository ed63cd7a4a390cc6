package dev.lampwright.tool.bench;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.file.AtomicFile;
import dev.lampwright.file.KeptFile;
import dev.lampwright.json.Json;
import dev.lampwright.toml.TomlEditor;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What files were before the last ten changes that the bench made, in a file of its own. For one thread at a time. */
final class KeptVersions {
    private static final Logger LOG = LoggerFactory.getLogger(KeptVersions.class);
    private static final int MOST = 10;
    private static final int MOST_CHARS = 500_000;

    private final Path file;
    private final KeptFile kept;
    private List<Version> versions = new ArrayList<>();
    private boolean read;

    /**
     * What a file was before a change.
     *
     * @param id a number that no other has
     * @param atMillis when it was changed, since 1970
     * @param look which look was changed; empty for the cues
     * @param did what was done
     * @param in which file
     * @param text what was in it
     * @param after version of the text that was written then
     */
    record Version(long id, long atMillis, String look, String did, LookShelves.From in, String text, String after) {
        /** What there was of the look, or the cues, in that file. */
        Optional<Object> before() {
            return TomlEditor.of(text).get(path());
        }

        List<String> path() {
            return look.isEmpty() ? List.of(CueText.CUES) : List.of(BenchLook.LOOKS, look);
        }

        Map<String, Object> told() {
            Map<String, Object> told = new LinkedHashMap<>();
            told.put("id", Long.toString(id));
            told.put("at_ms", atMillis);
            told.put("look", look);
            told.put("did", did);
            told.put("toml", TomlEditor.of(text).section(path()).orElse(""));
            return told;
        }

        private Map<String, Object> written() {
            Map<String, Object> written = new LinkedHashMap<>();
            written.put("id", id);
            written.put("at_ms", atMillis);
            written.put("look", look);
            written.put("did", did);
            written.put("in", in.name());
            written.put("text", text);
            written.put("after", after);
            return written;
        }

        private static Version of(JsonNode node) {
            return new Version(
                    node.path("id").asLong(),
                    node.path("at_ms").asLong(),
                    node.path("look").asText(),
                    node.path("did").asText(),
                    LookShelves.From.valueOf(node.path("in").asText()),
                    node.path("text").asText(),
                    node.path("after").asText());
        }
    }

    KeptVersions(Path file) {
        this.file = file;
        kept = new KeptFile(file, LOG, "earlier looks", "earlier looks");
    }

    /** All of them, the newest first. */
    List<Version> all() {
        if (!read) {
            kept.restore(this::take);
            read = true;
        }
        return List.copyOf(versions);
    }

    private void take(String text) {
        JsonNode all = Json.read(text)
                .filter(JsonNode::isArray)
                .orElseThrow(() -> new IllegalArgumentException("is not a list of versions"));
        List<Version> taken = new ArrayList<>();
        all.forEach(each -> taken.add(Version.of(each)));
        versions = taken;
    }

    /** One of them; empty if it is not kept any more. */
    Optional<Version> find(String id) {
        return all().stream()
                .filter(version -> Long.toString(version.id()).equals(id))
                .findFirst();
    }

    /** A number for the next. */
    long nextId() {
        return all().isEmpty() ? 1 : all().get(0).id() + 1;
    }

    /**
     * Keeps one more, and gives up the oldest of too many.
     *
     * @throws IOException if the file cannot be written, and then nothing has changed
     */
    void keep(Version version) throws IOException {
        List<Version> next = new ArrayList<>(all());
        next.add(0, version);
        write(bounded(next));
    }

    /** Forgets one, because what it was kept for has not been done. */
    void forget(Version version) throws IOException {
        List<Version> next = new ArrayList<>(all());
        next.remove(version);
        write(next);
    }

    private static List<Version> bounded(List<Version> all) {
        List<Version> bounded = new ArrayList<>();
        int chars = 0;
        for (Version version : all) {
            chars += version.text().length();
            if (bounded.size() < MOST && (bounded.isEmpty() || chars <= MOST_CHARS)) {
                bounded.add(version);
            }
        }
        return bounded;
    }

    private void write(List<Version> next) throws IOException {
        AtomicFile.makeFolder(file.toAbsolutePath().getParent());
        AtomicFile.replaceNoLink(
                file, Json.of(next.stream().map(Version::written).toList()));
        versions = next;
    }
}
