package dev.lampwright.tool.fit;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.file.AtomicFile;
import dev.lampwright.file.FileFailure;
import dev.lampwright.json.Json;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All answers so far, step by step, and what was found on the way, kept in a file as JSON. The fitting's findings follow from them alone:
 * given its answers again, a step reaches the same findings without a question. So going back and resuming on another day work the same
 * way.
 */
final class AnswerJournal {
    private static final int FORMAT = 1;
    private static final String FORMAT_KEY = "lampwright_fit";
    private static final String STEPS_KEY = "steps";
    private static final String ANSWER = "answer";
    private static final String FOUND = "found";

    private record Entry(boolean answer, String text) {}

    private final Optional<Path> file;
    private final Map<String, List<Entry>> steps;
    private List<Entry> current = new ArrayList<>();
    private int next;

    private AnswerJournal(Optional<Path> file, Map<String, List<Entry>> steps) {
        this.file = file;
        this.steps = steps;
    }

    /** A journal without answers. */
    static AnswerJournal empty(Path file) {
        return new AnswerJournal(Optional.of(file), new LinkedHashMap<>());
    }

    /** A journal without answers that is not kept in a file. */
    static AnswerJournal inMemory() {
        return new AnswerJournal(Optional.empty(), new LinkedHashMap<>());
    }

    /**
     * Reads a saved journal.
     *
     * @throws IOException if it cannot be read; the message says what to do
     */
    static AnswerJournal read(Path file) throws IOException {
        String text = text(file);
        JsonNode root = Json.read(text.isBlank() ? "{}" : text)
                .orElseThrow(() -> new IOException(file + ": is not JSON; move it away to start again"));
        if (root.path(FORMAT_KEY).asInt() != FORMAT) {
            throw new IOException(file + ": was not written by this version of fit; move it away to start again");
        }
        Map<String, List<Entry>> steps = new LinkedHashMap<>();
        root.path(STEPS_KEY).properties().forEach(step -> steps.put(step.getKey(), entries(step.getValue())));
        return new AnswerJournal(Optional.of(file), steps);
    }

    private static String text(Path file) throws IOException {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new IOException(file + ": " + FileFailure.whyNotRead(file, e) + "; move it away to start again", e);
        }
    }

    private static List<Entry> entries(JsonNode step) {
        List<Entry> entries = new ArrayList<>();
        step.forEach(entry -> {
            boolean answer = entry.has(ANSWER);
            entries.add(new Entry(answer, entry.path(answer ? ANSWER : FOUND).asText()));
        });
        return entries;
    }

    /** Starts a step, from its first answer on. */
    void enter(String step) {
        current = steps.computeIfAbsent(step, name -> new ArrayList<>());
        next = 0;
    }

    /** Whether the next answer is known already. */
    boolean replays() {
        return next < current.size();
    }

    /** The next answer of this step, if it is known and of this kind; one of another kind is dropped, with everything after it. */
    Optional<String> nextAnswer() {
        return next(true);
    }

    /** The next thing found, likewise. */
    Optional<String> nextFound() {
        return next(false);
    }

    private Optional<String> next(boolean answer) {
        if (!replays()) {
            return Optional.empty();
        }
        if (current.get(next).answer != answer) {
            forgetRest();
            return Optional.empty();
        }
        return Optional.of(current.get(next++).text);
    }

    /** The last answer taken turned out to be invalid: drops it, with everything after it. */
    void reject() {
        next--;
        forgetRest();
    }

    /** Drops what has not been taken yet in this step. */
    void forgetRest() {
        current.subList(next, current.size()).clear();
    }

    /** Saves an answer. */
    void answered(String text) throws IOException {
        add(new Entry(true, text));
    }

    /** Saves a finding. */
    void found(String text) throws IOException {
        add(new Entry(false, text));
    }

    private void add(Entry entry) throws IOException {
        current.add(entry);
        next++;
        save();
    }

    /**
     * Drops the last answer of a step, and everything that was found after it.
     *
     * @return whether there was one
     */
    boolean forgetLast(String step) throws IOException {
        List<Entry> entries = steps.getOrDefault(step, new ArrayList<>());
        boolean answer = false;
        while (!answer && !entries.isEmpty()) {
            answer = entries.remove(entries.size() - 1).answer;
        }
        if (answer) {
            save();
        }
        return answer;
    }

    /** Forgets a step. */
    void forget(String step) {
        steps.remove(step);
    }

    /** Removes the file. */
    void delete() throws IOException {
        if (file.isPresent()) {
            Files.deleteIfExists(file.get());
        }
    }

    private void save() throws IOException {
        if (file.isEmpty()) {
            return;
        }
        Map<String, List<Map<String, String>>> all = new LinkedHashMap<>();
        steps.forEach((name, entries) -> all.put(
                name,
                entries.stream()
                        .map(entry -> Map.of(entry.answer ? ANSWER : FOUND, entry.text))
                        .toList()));
        Map<String, Object> root = new LinkedHashMap<>();
        root.put(FORMAT_KEY, FORMAT);
        root.put(STEPS_KEY, all);
        AtomicFile.replace(file.get(), Json.pretty(root) + "\n");
    }
}
