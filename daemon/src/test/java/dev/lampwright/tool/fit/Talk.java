package dev.lampwright.tool.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;

/** A terminal used by a {@link Person}. */
final class Talk implements Terminal {
    private final Person person;
    private final List<String> all = new ArrayList<>();
    private final List<String> since = new ArrayList<>();
    private BiFunction<Integer, String, Optional<String>> typing = (count, answer) -> Optional.of(answer);
    private int count;

    Talk(Person person) {
        this.person = person;
    }

    /** What is typed instead of the person's answer, by how many were typed before; empty is the end of the input. */
    Talk typing(BiFunction<Integer, String, Optional<String>> newTyping) {
        typing = newTyping;
        return this;
    }

    /** Everything that was printed. */
    String text() {
        return String.join("\n", all);
    }

    /** How many lines were typed. */
    int count() {
        return count;
    }

    @Override
    public void print(String line) {
        all.add(line);
        since.add(line);
    }

    @Override
    public Optional<String> readLine() {
        String answer = person.answer(since);
        since.clear();
        Optional<String> typed = typing.apply(count++, answer);
        all.add("> " + typed.orElse("(end)"));
        return typed;
    }

    @Override
    public boolean ended() {
        return false;
    }
}
