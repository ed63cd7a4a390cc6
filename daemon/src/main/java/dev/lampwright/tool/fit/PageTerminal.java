package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/**
 * A terminal whose questions are drawn on a page: one thread asks and waits, others see the question and type the answer. Messages since the
 * last answer go with the question.
 */
final class PageTerminal implements Terminal {
    private static final Optional<String> END = Optional.empty();
    /** What a page words itself, has in its question or help, or has controls for. */
    private static final Set<String> UNSAID = Set.of(
            "caution",
            "step",
            "none_found",
            "order_unfit",
            "start",
            "heard_reason",
            "heard_open",
            "heard_state_by_hand",
            "heard_choose");

    private static final Set<String> KEYS = Set.of("b", "q", "?");

    /** How often the light is looked at while somebody thinks. */
    private static final Duration LOOK = Duration.ofMillis(250);

    private final List<Phrase> pending = new ArrayList<>();
    private List<Phrase> shown = List.of();
    private Optional<Posed> question = Optional.empty();
    private Map<String, Object> step = Map.of();
    private Optional<String> typed = END;
    private Optional<Phrase> refused = Optional.empty();
    private Optional<Phrase> missing = Optional.empty();
    private Supplier<Optional<Phrase>> watch = Optional::empty;
    private boolean asking;
    private boolean trying;
    private boolean ended;
    private long number;
    private long changes;

    @Override
    public synchronized void print(String line) {
        say(Phrase.plain(line));
    }

    @Override
    public synchronized void enter(int at, int of, String name) {
        step = Map.of("at", at, "of", of, "name", name);
        change();
    }

    @Override
    public synchronized void say(Phrase phrase) {
        if (!phrase.english().isBlank() && !UNSAID.contains(phrase.code())) {
            pending.add(phrase);
        }
        change();
    }

    @Override
    public synchronized void pose(Posed posed) {
        question = Optional.of(posed);
        shown = List.copyOf(pending);
        pending.clear();
        refused = Optional.empty();
        number++;
        change();
    }

    @Override
    public synchronized void refuse(Phrase why) {
        refused = Optional.of(why);
        change();
    }

    @Override
    public synchronized void watch(Supplier<Optional<Phrase>> newWatch) {
        watch = newWatch;
    }

    @Override
    public Optional<String> readLine() {
        beginToAsk();
        while (!isAnswered()) {
            note(watch.get());
        }
        return endOfAsking();
    }

    private synchronized void beginToAsk() {
        asking = true;
        trying = false;
        if (!pending.isEmpty()) {
            shown = List.copyOf(pending);
            pending.clear();
        }
        change();
    }

    /** Waits for an answer, for a moment. */
    private synchronized boolean isAnswered() {
        if (typed.isEmpty() && !ended) {
            rest(LOOK.toNanos());
        }
        return typed.isPresent() || ended;
    }

    private synchronized void note(Optional<Phrase> now) {
        if (!now.equals(missing)) {
            missing = now;
            change();
        }
    }

    private synchronized Optional<String> endOfAsking() {
        asking = false;
        missing = Optional.empty();
        change();
        Optional<String> line = ended ? END : typed;
        typed = END;
        return line;
    }

    @Override
    public synchronized boolean isTrying() {
        return trying;
    }

    @Override
    public synchronized boolean ended() {
        return ended;
    }

    @Override
    public boolean mayNameFiles() {
        return false;
    }

    /** Ends the wait for a line; there will be no more. */
    synchronized void stop() {
        ended = true;
        change();
    }

    /**
     * Answers a question, unless it is not asked any more.
     *
     * @param of the number of the question
     * @param line the answer
     * @param onlyTries whether the light is to follow it and nothing else
     * @return whether it was taken
     */
    synchronized boolean type(long of, String line, boolean onlyTries) {
        if (!isAsking(of)) {
            return false;
        }
        if (KEYS.contains(line.strip().toLowerCase(Locale.ROOT))) {
            refuse(Phrase.of("key", "that cannot be the answer here; choose another"));
            return true;
        }
        return take(line, onlyTries);
    }

    /** Goes back to the question before. */
    synchronized boolean back(long from) {
        return isAsking(from) && take("b", false);
    }

    private boolean take(String line, boolean onlyTries) {
        typed = Optional.of(line);
        trying = onlyTries;
        asking = false;
        if (!onlyTries) {
            refused = Optional.empty();
        }
        notifyAll();
        return true;
    }

    private boolean isAsking(long of) {
        return asking && !ended && of == number;
    }

    /** The form of what is asked; empty if nothing is asked, or something else. */
    synchronized Optional<Form> form(long of) {
        return isAsking(of) ? question.map(Posed::form) : Optional.empty();
    }

    /** Waits until somebody can answer again, or there is nothing more to answer. */
    synchronized void awaitQuestion(Duration patience) {
        long until = System.nanoTime() + patience.toNanos();
        for (long left = patience.toNanos(); !asking && !ended && left > 0; left = until - System.nanoTime()) {
            rest(left);
        }
    }

    /** Waits until there is something new. */
    synchronized void awaitChange(long after, Duration patience) {
        long until = System.nanoTime() + patience.toNanos();
        for (long left = patience.toNanos(); changes == after && left > 0; left = until - System.nanoTime()) {
            rest(left);
        }
    }

    private void rest(long nanos) {
        try {
            TimeUnit.NANOSECONDS.timedWait(this, nanos);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            ended = true;
        }
    }

    private void change() {
        changes++;
        notifyAll();
    }

    /** What there is to see, as JSON has it. */
    synchronized Map<String, Object> view() {
        Map<String, Object> view = new LinkedHashMap<>();
        view.put("changes", changes);
        boolean open = (asking || trying) && !ended;
        view.put("asking", open);
        view.put("number", number);
        view.put("step", step);
        view.put(
                "said",
                (open && !(trying && !pending.isEmpty()) ? shown : pending)
                        .stream().map(PageTerminal::phrase).toList());
        question.filter(posed -> open).ifPresent(posed -> view.put("question", question(posed)));
        refused.ifPresent(why -> view.put("refused", phrase(why)));
        missing.ifPresent(why -> view.put("missing", phrase(why)));
        return view;
    }

    private static Map<String, Object> question(Posed posed) {
        Map<String, Object> question = phrase(posed.words());
        question.put("help", posed.help());
        question.put(
                "choices",
                posed.choices().stream()
                        .map(choice -> {
                            Map<String, Object> one = phrase(choice.words());
                            one.put("key", choice.key());
                            return one;
                        })
                        .toList());
        Form form = posed.form();
        question.put("kind", form.kind().name().toLowerCase(Locale.ROOT));
        question.put("least", form.least());
        question.put("most", form.most());
        question.put("usual", form.usual());
        question.put("skip", form.skip());
        question.put("suggestions", form.suggestions());
        return question;
    }

    private static Map<String, Object> phrase(Phrase phrase) {
        Map<String, Object> one = new LinkedHashMap<>();
        one.put("code", phrase.code());
        one.put("values", values(phrase.values()));
        one.put("text", phrase.english());
        return one;
    }

    /** Numbers stay numbers, so that they are written as the reader's language writes them. */
    private static Map<String, Object> values(Map<String, Object> values) {
        Map<String, Object> shown = new LinkedHashMap<>();
        values.forEach((name, value) -> shown.put(name, value(value)));
        return shown;
    }

    private static Object value(Object value) {
        if (value instanceof Phrase inner) {
            return phrase(inner);
        }
        if (value instanceof List<?> several) {
            return several.stream().map(PageTerminal::value).toList();
        }
        return value instanceof Number ? value : String.valueOf(value);
    }
}
