package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.toml.TomlEditor;
import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Assigns the words of a printer's state together with the user: shows which word came while the printer did what, asks what the others
 * mean, asks the user to pause and cancel a job, and asks for the words of a fault, which cannot be provoked on purpose.
 */
final class StateWordsDialogue {
    /** The states of the file, with words for the user, in the order of their numbers. */
    private static final Map<String, String> STATES = states();

    private static final String FAULT = "fault";
    private static final Duration PATIENCE = Duration.ofSeconds(90);
    private static final List<String> STATE = List.of("printer", "state");
    private static final String GUESS = "# not heard";

    private final HeardPrinter heard;
    private final Map<String, List<String>> known;
    private final FittingBench bench;
    private final Map<String, Set<String>> sorted = new LinkedHashMap<>();

    private StateWordsDialogue(HeardPrinter heard, Map<String, List<String>> known, FittingBench bench) {
        this.heard = heard;
        this.known = Map.copyOf(known);
        this.bench = bench;
    }

    private static Map<String, String> states() {
        Map<String, String> states = new LinkedHashMap<>();
        states.put("idle", "at rest");
        states.put("warming", "heating up");
        states.put("printing", "printing");
        states.put("held", "paused");
        states.put("done", "done");
        states.put("stopped", "cancelled");
        states.put(FAULT, "a fault");
        return states;
    }

    /**
     * Asks about what is uncertain.
     *
     * @param heard what was heard
     * @param known the words already in the file, by state
     * @param finder listens again for states that the user provokes
     * @param broker where to listen
     * @param bench to say and ask
     * @return the sections with the user's answers
     */
    static String completed(
            HeardPrinter heard,
            Map<String, List<String>> known,
            PrinterFinder finder,
            Map<String, String> broker,
            FittingBench bench)
            throws LeaveException, IOException {
        if (heard.place().isEmpty()) {
            return heard.sections();
        }
        StateWordsDialogue dialogue = new StateWordsDialogue(heard, known, bench);
        if (!dialogue.isBound() && !dialogue.confirmPlace()) {
            return heard.sections();
        }
        dialogue.tellCertain();
        dialogue.askOpen();
        dialogue.show(finder, broker);
        dialogue.askFault();
        return dialogue.sections();
    }

    private boolean isBound() {
        return TomlEditor.of(heard.sections()).get(STATE).isPresent();
    }

    /** A place that the survey is not sure about becomes the state only if the user confirms it. */
    private boolean confirmPlace() throws LeaveException, IOException {
        bench.say(Phrase.of("words_may", "The printer may report what it is doing in these words:"));
        heard.words()
                .forEach(word -> bench.say(Phrase.of(
                        word.meanwhile().isEmpty() ? "word_heard" : "word_heard_while",
                        "    \"" + word.word() + "\"" + meanwhile(word),
                        "word",
                        word.word(),
                        "meanwhile",
                        word.meanwhile())));
        boolean right = bench.ask(Question.yesOrNo(
                        "Is that what it is doing?",
                        "It is reported at: " + heard.place().strip().replace("\n", ", ")
                                + ". With n, its state follows from the readings.")
                .coded("words_place", "place", heard.place().strip().replace("\n", ", ")));
        if (right) {
            heard.words().stream().filter(word -> !word.isOpen()).forEach(word -> sort(word.state(), word.word()));
        }
        return right;
    }

    private void tellCertain() {
        heard.words().stream().filter(word -> !word.isOpen()).forEach(word -> bench.say(certain(word)));
    }

    private static Phrase certain(HeardPrinter.Word word) {
        String state = STATES.getOrDefault(word.state(), word.state());
        return Phrase.of(
                word.meanwhile().isEmpty() ? "word_certain" : "word_certain_while",
                "The printer reports \"" + word.word() + "\" when it is " + state + meanwhile(word) + ".",
                "word",
                word.word(),
                "state",
                Phrase.of("state_" + word.state(), state),
                "meanwhile",
                word.meanwhile());
    }

    private static String meanwhile(HeardPrinter.Word word) {
        return word.meanwhile().isEmpty()
                ? ""
                : " (meanwhile: " + String.join(", ", Phrase.english(word.meanwhile())) + ")";
    }

    private List<HeardPrinter.Word> open() {
        return heard.words().stream()
                .filter(HeardPrinter.Word::isOpen)
                .filter(word -> known.values().stream().flatMap(List::stream).noneMatch(word.word()::equalsIgnoreCase))
                .toList();
    }

    private void askOpen() throws LeaveException, IOException {
        List<HeardPrinter.Word> open = open();
        for (HeardPrinter.Word word : open) {
            Optional<String> state = bench.ask(meaning(word, open.indexOf(word) + 1, open.size()));
            state.ifPresent(is -> sort(is, word.word()));
        }
    }

    private static Question<Optional<String>> meaning(HeardPrinter.Word word, int number, int count) {
        List<Question.Option<Optional<String>>> options = new ArrayList<>();
        for (Map.Entry<String, String> state : STATES.entrySet()) {
            options.add(new Question.Option<>(
                            Integer.toString(options.size() + 1), state.getValue(), Optional.of(state.getKey()))
                    .named("state_" + state.getKey()));
        }
        options.add(new Question.Option<>("", "skip", Optional.empty(), "skip"));
        return Question.choice(
                        "The printer also reported \"" + word.word() + "\"" + meanwhile(word) + ". What does it mean? ("
                                + number + " of " + count + ")",
                        "What was the printer doing when it reported that? What you skip stays unbound: the readings then show what the"
                                + " printer does. You can answer another day: lampwright fit on the file asks again.",
                        options)
                .coded(
                        word.meanwhile().isEmpty() ? "words_meaning" : "words_meaning_while",
                        "word",
                        word.word(),
                        "meanwhile",
                        word.meanwhile(),
                        "number",
                        number,
                        "of",
                        count);
    }

    private void sort(String state, String word) {
        sorted.computeIfAbsent(state, any -> new LinkedHashSet<>()).add(word);
    }

    private boolean hasWord(String state) {
        return sorted.containsKey(state)
                || known.containsKey(state)
                || heard.words().stream().anyMatch(word -> word.state().equals(state));
    }

    /** Asks the user to provoke the states that can be provoked. */
    private void show(PrinterFinder finder, Map<String, String> broker) throws LeaveException, IOException {
        List<String> missing = List.of("held", "stopped").stream()
                .filter(state -> !hasWord(state))
                .toList();
        if (missing.isEmpty()) {
            return;
        }
        boolean can = bench.ask(Question.yesOrNo(
                        "No word for "
                                + String.join(
                                        " and none for ",
                                        missing.stream().map(STATES::get).toList())
                                + " was heard. Is a job running now that you can pause and cancel, such as a test print?",
                        "Lampwright only listens; you pause and cancel at the printer. With n, its words can be added later with the"
                                + " same command.")
                .coded("words_show"));
        for (String state : can ? missing : List.<String>of()) {
            shown(state, state.equals("held") ? "Pause the job" : "Cancel the job", finder, broker);
        }
    }

    private void shown(String state, String what, PrinterFinder finder, Map<String, String> broker)
            throws LeaveException, IOException {
        bench.ask(Question.enter(
                        "Press Enter, and then: " + what.toLowerCase(Locale.ROOT) + " at the printer, within "
                                + PATIENCE.toSeconds() + " seconds.",
                        "The next new word that the printer reports is taken for \"" + STATES.get(state)
                                + "\", if you agree.")
                .coded("words_press_" + state, "seconds", PATIENCE.toSeconds()));
        String word = bench.find(
                () -> finder.nextWord(broker, heard.place(), PATIENCE, bench).orElse(""));
        if (word.isEmpty()) {
            bench.say(Phrase.of(
                    "words_unheard", "No new word was reported. You can add the word later with the same command."));
            return;
        }
        boolean right = bench.ask(Question.yesOrNo(
                        "It reports \"" + word + "\" now. Does that mean: " + STATES.get(state) + "?",
                        "With n, it is ignored.")
                .coded("words_agree_" + state, "word", word));
        if (right) {
            sort(state, word);
        }
    }

    private void askFault() throws LeaveException, IOException {
        if (hasWord(FAULT)) {
            return;
        }
        List<String> words = bench.ask(new Question<List<String>>(
                        "NO FAULT WILL BE SHOWN YET: no word for one was heard. If you know what your printer reports then, type it, with"
                                + " commas between several and * for any characters; or press Enter.",
                        "It is often in the printer's manual, or in the list of its messages. When a fault has happened while"
                                + " lampwright listens, the same command asks what its word means.",
                        StateWordsDialogue::words)
                .coded("words_fault")
                .in(Form.TEXT.skipped("later")));
        words.forEach(word -> sort(FAULT, word));
        if (words.isEmpty()) {
            bench.say(Phrase.of("words_no_fault", "Then no fault will be shown until you add its words."));
        }
    }

    private static List<String> words(String line) throws Question.UnusableException {
        if (line.chars().anyMatch(Character::isISOControl)) {
            throw new Question.UnusableException("unshown", "that has a character in it that cannot be shown");
        }
        return Arrays.stream(line.split(",", -1))
                .map(String::strip)
                .filter(word -> !word.isEmpty())
                .toList();
    }

    /** A word that the user has assigned replaces those that were only guessed for its state. */
    private String sections() {
        if (sorted.isEmpty()) {
            return heard.sections();
        }
        boolean bound = isBound();
        TomlEditor editor = TomlEditor.of(
                bound ? heard.sections() : "[printer.state]\n" + heard.place().strip() + "\n\n" + heard.sections());
        sorted.forEach((state, words) -> {
            List<String> path = List.of(STATE.get(0), STATE.get(1), state);
            List<Object> all = new ArrayList<>();
            if (editor.behind(path).startsWith(GUESS)) {
                editor.remove(path);
            } else {
                editor.get(path).filter(List.class::isInstance).ifPresent(now -> all.addAll((List<?>) now));
            }
            all.addAll(words);
            editor.set(path, all);
        });
        return editor.text();
    }
}
