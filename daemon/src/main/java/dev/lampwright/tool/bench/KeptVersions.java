package dev.lampwright.tool.bench;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.file.AtomicFile;
import dev.lampwright.file.KeptFile;
import dev.lampwright.json.Json;
import dev.lampwright.toml.TomlEditor;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The files as they were before the last ten changes by the bench, kept in a file of its own. It is read each time, so that readers do not
 * wait for a change. Any thread may read; one at a time may write.
 */
final class KeptVersions {
    private static final Logger LOG = LoggerFactory.getLogger(KeptVersions.class);
    private static final int MOST = 10;
    /** So that the file can be read again. */
    private static final long MOST_BYTES = KeptFile.MOST_BYTES - 1000;

    private final Path file;
    private final KeptFile kept;

    /**
     * What a file was before a change.
     *
     * @param id a number that no other has
     * @param atMillis when it was changed, since 1970
     * @param look which look was changed; empty for the cues
     * @param was the look's name before; the same unless it was renamed
     * @param did what was done
     * @param in which file
     * @param text what was in it
     * @param after version of the text that was written then
     */
    record Version(
            long id,
            long atMillis,
            String look,
            String was,
            String did,
            LookShelves.From in,
            String text,
            String after) {
        /** What there was of the look, or the cues, in that file. */
        Optional<Object> before() {
            return TomlEditor.of(text).get(path());
        }

        /** Where that is in the file. */
        List<String> path() {
            return look.isEmpty() ? CueText.PATH : List.of(BenchLook.LOOKS, was);
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
            written.put("was", was);
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
                    node.path("was").asText(node.path("look").asText()),
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
        List<Version> all = new ArrayList<>();
        kept.restore(text -> all.addAll(versions(text)));
        return all;
    }

    private static List<Version> versions(String text) {
        JsonNode all = Json.read(text)
                .filter(JsonNode::isArray)
                .orElseThrow(() -> new IllegalArgumentException("is not a list of versions"));
        List<Version> versions = new ArrayList<>();
        all.forEach(each -> versions.add(Version.of(each)));
        return versions;
    }

    /** One of them; empty if it is not kept any more. */
    Optional<Version> find(String id) {
        return all().stream()
                .filter(version -> Long.toString(version.id()).equals(id))
                .findFirst();
    }

    /**
     * Keeps what a file is before a change, and gives up the oldest of too many.
     *
     * @param plan the change
     * @throws IOException if the file cannot be written, and then nothing has changed
     */
    void keep(EditPlan plan) throws IOException {
        List<Version> all = all();
        Version version = new Version(
                all.isEmpty() ? 1 : all.get(0).id() + 1,
                System.currentTimeMillis(),
                plan.look(),
                plan.was(),
                plan.did(),
                plan.in(),
                plan.before().in(plan.in()),
                BenchLook.version(plan.next()));
        all.add(0, version);
        write(all.subList(0, Math.min(MOST, all.size())));
    }

    /** Keeps these and no others, or as many of the newest as the file has room for. */
    void write(List<Version> versions) throws IOException {
        List<Version> fit = new ArrayList<>(versions);
        String text = json(fit);
        while (text.getBytes(StandardCharsets.UTF_8).length > MOST_BYTES && fit.size() > 1) {
            fit.remove(fit.size() - 1);
            text = json(fit);
        }
        AtomicFile.makeFolder(file.toAbsolutePath().getParent());
        AtomicFile.replaceNoLink(file, text);
    }

    private static String json(List<Version> versions) {
        return Json.of(versions.stream().map(Version::written).toList());
    }
}
