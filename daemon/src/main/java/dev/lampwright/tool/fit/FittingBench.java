package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.Setup;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What steps work with: they show, say and ask. An answer from the journal is given silently and without light; so a step must do the same
 * whenever it gets the same answers.
 */
final class FittingBench implements PrinterFinder.Told {
    static final String KEYS = "At any question: b goes back, ? helps, q stops (all answers are kept).";

    private static final Phrase AWAY = Phrase.of("was_away_somewhere", "the controller was disconnected for a moment");

    private final String keys;
    private final Terminal terminal;
    private final AnswerJournal journal;
    private final Boards boards;
    private final List<Phrase> unsaid = new ArrayList<>();
    private Optional<ShownLight> light = Optional.empty();
    private Optional<Setup> setup = Optional.empty();
    private Scene scene = Scene.DARK;
    private boolean isMissing;
    private boolean finding;
    private boolean answeredByJournal;

    FittingBench(Terminal terminal, AnswerJournal journal, Boards boards) {
        this(KEYS, terminal, journal, boards);
    }

    /** A bench whose questions accept additional keys. */
    FittingBench(String keys, Terminal terminal, AnswerJournal journal, Boards boards) {
        this.keys = keys;
        this.terminal = terminal;
        this.journal = journal;
        this.boards = boards;
    }

    Boards boards() {
        return boards;
    }

    /** Switches to the light of another controller. */
    void lightUp(String port, Here here) {
        putOut();
        setup = Optional.empty();
        light = Optional.of(boards.light(port, here));
    }

    /** Closes the light: its port becomes free, and everything dark. */
    void putOut() {
        light.ifPresent(ShownLight::close);
        light = Optional.empty();
    }

    /** Shows a scene while the next questions are asked. */
    void show(Setup nextSetup, Scene nextScene) {
        setup = Optional.of(nextSetup);
        scene = nextScene;
    }

    /** Everything is dark from the next question on. */
    void darken() {
        scene = Scene.DARK;
    }

    /** Says something before the next question, unless that has already been answered. */
    void say(String... lines) {
        Stream.of(lines).map(Phrase::plain).forEach(unsaid::add);
    }

    /** The same with a code, for terminals with texts of their own. */
    void say(Phrase phrase) {
        unsaid.add(phrase);
    }

    /** Ends a step: outputs what it said after its last answer, unless that answer was known. */
    void leave() {
        if (!answeredByJournal) {
            speak();
        }
        unsaid.clear();
    }

    /** Outputs pending text at once. */
    void speak() {
        unsaid.forEach(terminal::say);
        unsaid.clear();
    }

    @Override
    public void say(List<Phrase> phrases) {
        unsaid.addAll(phrases);
        speak();
    }

    /** Whether an answer may name any file. */
    boolean mayNameFiles() {
        return terminal.mayNameFiles();
    }

    @Override
    public boolean ended() {
        return terminal.ended();
    }

    /** Starts a step. */
    void enter(String step) {
        unsaid.clear();
        journal.enter(step);
    }

    /**
     * Asks, with the scene lit.
     *
     * @throws LeaveException if the user leaves instead
     * @throws IOException if the answer cannot be saved
     */
    <T> T ask(Question<T> question) throws LeaveException, IOException {
        Optional<T> known = finding ? Optional.empty() : recall(question);
        return known.isPresent() ? known.get() : askAloud(question);
    }

    private <T> Optional<T> recall(Question<T> question) {
        Optional<String> known = journal.nextAnswer();
        if (known.isEmpty()) {
            return Optional.empty();
        }
        try {
            T answer = question.reading().of(known.get());
            unsaid.clear();
            answeredByJournal = true;
            return Optional.of(answer);
        } catch (Question.UnusableException e) {
            journal.reject();
            return Optional.empty();
        }
    }

    private <T> T askAloud(Question<T> question) throws LeaveException, IOException {
        answeredByJournal = false;
        present(question);
        while (true) {
            String line = line();
            if (line.equals("?")) {
                terminal.print(question.posed().help());
                terminal.print(keys);
                terminal.pose(question.posed());
                continue;
            }
            Optional<T> answer = read(question, line);
            if (answer.isEmpty()) {
                continue;
            }
            if (terminal.isTrying()) {
                question.trial().accept(answer.get());
                lightScene();
                continue;
            }
            if (light.isPresent() && setup.isPresent() && !light.get().steady()) {
                Phrase why = light.get().disturbance().orElse(AWAY);
                terminal.say(Phrase.of(
                        "answer_unused",
                        "That answer was not used: " + why.english() + ". The same question again:",
                        "why",
                        why));
                present(question);
                continue;
            }
            if (!finding) {
                journal.answered(line);
            }
            return answer.get();
        }
    }

    private <T> Optional<T> read(Question<T> question, String line) {
        try {
            return Optional.of(question.reading().of(line));
        } catch (Question.UnusableException e) {
            terminal.refuse(e.why());
            return Optional.empty();
        }
    }

    private String line() throws LeaveException {
        String line = terminal.readLine()
                .orElseThrow(() -> new LeaveException(LeaveException.Way.INPUT_ENDED))
                .strip();
        switch (line) {
            case "b", "B" -> throw new LeaveException(LeaveException.Way.BACK);
            case "q", "Q" -> throw new LeaveException(LeaveException.Way.STOP);
            default -> {
                return line;
            }
        }
    }

    private void present(Question<?> question) throws LeaveException {
        speak();
        lightScene();
        terminal.watch(this::missing);
        terminal.pose(question.posed());
    }

    /** What keeps the light from being seen while an answer is awaited. A light that is back is shown as if it had never gone. */
    private Optional<Phrase> missing() {
        if (light.isEmpty() || setup.isEmpty()) {
            return Optional.empty();
        }
        Optional<Phrase> now = light.get().missing();
        if (now.isEmpty() && isMissing) {
            now = light.get().show(setup.get(), scene);
        }
        isMissing = now.isPresent();
        return now.map(FittingBench::waits);
    }

    private static Phrase waits(Phrase why) {
        return Phrase.of(
                "light_waits",
                "The light waits: " + why.english() + ". (Ctrl-C stops; all answers are kept.)",
                "why",
                why);
    }

    /** Shows the scene, however long the controller is missing. */
    private void lightScene() throws LeaveException {
        if (light.isEmpty() || setup.isEmpty()) {
            return;
        }
        Optional<Phrase> said = Optional.empty();
        Optional<Phrase> trouble = light.get().show(setup.get(), scene);
        while (trouble.isPresent()) {
            if (terminal.ended()) {
                throw new LeaveException(LeaveException.Way.INPUT_ENDED);
            }
            if (!trouble.equals(said)) {
                terminal.say(waits(trouble.get()));
            }
            said = trouble;
            trouble = light.get().show(setup.get(), scene);
        }
        if (said.isPresent()) {
            terminal.say(Phrase.of("light_back", "It is back."));
        }
    }

    /** Finds something out, perhaps with questions; not repeated if the journal has the result. */
    interface Search {
        String find() throws LeaveException, IOException;
    }

    /**
     * Finds something out, or takes it from the journal. Answers given during the search are not kept separately.
     *
     * @throws LeaveException if the user leaves instead
     * @throws IOException if it cannot be saved
     */
    String find(Search search) throws LeaveException, IOException {
        Optional<String> known = journal.nextFound();
        answeredByJournal = known.isPresent();
        if (known.isPresent()) {
            return known.get();
        }
        finding = true;
        try {
            String found = search.find();
            journal.found(found);
            return found;
        } finally {
            finding = false;
        }
    }

    /** Asks something whose answer is not worth keeping. */
    <T> T askAside(Question<T> question) throws LeaveException, IOException {
        finding = true;
        try {
            return askAloud(question);
        } finally {
            finding = false;
        }
    }
}
