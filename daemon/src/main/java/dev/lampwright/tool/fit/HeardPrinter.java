package dev.lampwright.tool.fit;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.json.Json;
import dev.lampwright.phrase.Phrase;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What was heard from a printer.
 *
 * @param sections the file's sections {@code printer.…} that follow, as TOML
 * @param place the lines that say where the state is, as written below {@code [printer.state]}; empty if no place for it was heard
 * @param words what that place reported, in order of first appearance
 */
public record HeardPrinter(String sections, String place, List<Word> words) {
    /** Nothing. */
    public static final HeardPrinter NOTHING = new HeardPrinter("", "", List.of());

    /** Keeps a copy. */
    public HeardPrinter {
        words = List.copyOf(words);
    }

    /**
     * A word of the state.
     *
     * @param word as a binding names it
     * @param meanwhile what the printer did during that time, the longest first; empty if unknown
     * @param state the word of the file for the state that it stands for; empty if uncertain
     */
    public record Word(String word, List<Phrase> meanwhile, String state) {
        /** Keeps a copy. */
        public Word {
            meanwhile = List.copyOf(meanwhile);
        }

        /**
         * A word at a time that is described in English only.
         *
         * @param word as a binding names it
         * @param meanwhile what the printer did during that time; empty if unknown
         * @param state the word of the file for the state that it stands for; empty if uncertain
         */
        public Word(String word, String meanwhile, String state) {
            this(word, meanwhile.isEmpty() ? List.of() : List.of(Phrase.plain(meanwhile)), state);
        }

        boolean isOpen() {
            return state.isEmpty();
        }
    }

    /** An earlier version saved one text in English. */
    private static List<Phrase> meanwhile(JsonNode saved) {
        List<Phrase> meanwhile = new ArrayList<>();
        if (saved.isTextual() && !saved.asText().isEmpty()) {
            meanwhile.add(Phrase.plain(saved.asText()));
        }
        saved.forEach(each -> meanwhile.add(KeptPhrase.of(each)));
        return meanwhile;
    }

    boolean isNothing() {
        return sections.isEmpty() && place.isEmpty();
    }

    /** As saved in the journal. */
    String text() {
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("sections", sections);
        all.put("place", place);
        all.put(
                "words",
                words.stream()
                        .map(each -> List.of(
                                each.word(),
                                each.meanwhile().stream().map(KeptPhrase::map).toList(),
                                each.state()))
                        .toList());
        return Json.of(all);
    }

    /** Reads it from the journal; an earlier version saved only the sections. */
    static HeardPrinter of(String text) {
        JsonNode root = Json.read(text).filter(JsonNode::isObject).orElse(null);
        if (root == null) {
            return new HeardPrinter(text, "", List.of());
        }
        List<Word> words = new ArrayList<>();
        root.path("words")
                .forEach(each -> words.add(new Word(
                        each.path(0).asText(),
                        meanwhile(each.path(1)),
                        each.path(2).asText())));
        return new HeardPrinter(
                root.path("sections").asText(), root.path("place").asText(), words);
    }
}
