package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Where questions are put and answers come from: lines of text, so that anything that reads and writes lines can answer. One that has more
 * than lines takes questions and phrases as they are.
 */
public interface Terminal {
    /**
     * Writes a line.
     *
     * @param line without its end
     */
    void print(String line);

    /**
     * Waits for the next line.
     *
     * @return the line without its end; empty if there will be no more
     */
    Optional<String> readLine();

    /**
     * Whether there will be no more lines. Does not wait.
     *
     * @return true once everything has been read, or somebody asks for the end
     */
    boolean ended();

    /**
     * A step begins, or is repeated with its earlier answers. Lines need nothing here: the step's first question names the step.
     *
     * @param at its number, from 1; 0 if steps have no numbers
     * @param of how many steps there are
     * @param name of the step; empty between steps
     */
    default void enter(int at, int of, String name) {}

    /**
     * Says something.
     *
     * @param phrase a line, or an empty one
     */
    default void say(Phrase phrase) {
        print(phrase.english());
    }

    /**
     * Puts a question, whose answer {@link #readLine} is to return next.
     *
     * @param question the question
     */
    default void pose(Posed question) {
        print(question.words().english());
        question.lines().forEach(this::print);
    }

    /**
     * Says what is to be looked at, again and again, while the next line is awaited. Lines need nothing here: they hear of it once they
     * answer.
     *
     * @param missing what keeps the light from being seen now; empty if nothing does. It may take seconds
     */
    default void watch(Supplier<Optional<Phrase>> missing) {}

    /**
     * Refuses the last line; the question stays.
     *
     * @param why what would be right
     */
    default void refuse(Phrase why) {
        print("Sorry: " + why.english() + ", or ? for help.");
    }

    /**
     * Whether the last line only tries an answer: the light is to follow it, and the question stays.
     *
     * @return false for a real answer
     */
    default boolean isTrying() {
        return false;
    }

    /**
     * Whether an answer may name any file of this computer.
     *
     * @return false if people without a shell here may answer
     */
    default boolean mayNameFiles() {
        return true;
    }
}
