package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.Axe;
import dev.lampwright.testing.Browser;
import java.time.Duration;
import java.util.List;
import java.util.function.BooleanSupplier;

/** The look editor as it is in a browser: what a person does there, and what is read there. */
final class Editor {
    private static final Duration LONG = Duration.ofSeconds(30);

    private final PageBench bench;
    private final Browser browser;

    Editor(PageBench bench) {
        this.bench = bench;
        browser = bench.browser();
    }

    /** Opens a look, and waits until it is on the bench. */
    void open(String look) {
        browser.open(bench.url() + "bench.html?look=" + look);
        awaitName(look);
    }

    void awaitName(String look) {
        await(look + " is on the bench", () -> browser.text("name").equals(look));
    }

    /** Waits for something; what the page says is part of the failure. */
    void await(String description, BooleanSupplier so) {
        Await.until(
                () -> description + "; the page says: " + browser.text("answer") + " | " + browser.text("news"),
                so,
                LONG);
    }

    /** Waits until the page has answered so. */
    void awaitAnswer(String beginning) {
        await("answer " + beginning, () -> browser.text("answer").startsWith(beginning));
    }

    /** Presses what a selector of CSS finds first. */
    void press(String selector) {
        await("there is " + selector, () -> !browser.all(selector).isEmpty());
        browser.run("document.querySelector(arguments[0]).click()", selector);
    }

    /** Presses one of the buttons of the question that is asked. */
    void answer(String words) {
        await("a question", () -> (Boolean) browser.run("return document.getElementById('question').open"));
        Object pressed = browser.run(
                "const one = [...document.querySelectorAll('#question-answers button')].find((b) => b.textContent === arguments[0]);"
                        + " one?.click(); return one !== undefined;",
                words);
        assertEquals(true, pressed, words);
    }

    /** Gives a control a value as if somebody had typed or chosen it. */
    void give(String selector, String value) {
        await("there is " + selector, () -> !browser.all(selector).isEmpty());
        browser.run(
                "const one = document.querySelector(arguments[0]); one.value = arguments[1];"
                        + " one.dispatchEvent(new Event('input', { bubbles: true })); one.dispatchEvent(new Event('change', { bubbles: true }));",
                selector,
                value);
    }

    /** Adds a layer of a kind. */
    void add(String kind) {
        int before = sentences().size();
        press("[data-add=" + kind + "]");
        await("one layer more", () -> sentences().size() == before + 1);
    }

    /** Adds a layer that differs from all that were there, and waits until the draft with it is kept. */
    void addAndAwaitDraft(String kind) {
        add(kind);
        awaitDraft();
    }

    void awaitDraft() {
        await("the draft is kept", () -> browser.text("keep-draft").startsWith("Draft of "));
    }

    void awaitNoDraft() {
        await("no draft", () -> content("keep-draft").isEmpty());
    }

    void save(String look) {
        press("#save");
        awaitAnswer(look + " is saved in ");
    }

    /** The text of an element, shown or not. */
    String content(String id) {
        return String.valueOf(browser.run("return document.getElementById(arguments[0]).textContent", id));
    }

    /** The layers in words, the topmost first. */
    List<String> sentences() {
        return texts(".sentence");
    }

    /** The texts of all elements that a selector of CSS finds. */
    List<String> texts(String selector) {
        List<?> found = (List<?>)
                browser.run("return [...document.querySelectorAll(arguments[0])].map((e) => e.textContent)", selector);
        return found.stream().map(String::valueOf).toList();
    }

    boolean isFocused(String selector) {
        return (Boolean) browser.run("return document.activeElement.matches(arguments[0])", selector);
    }

    /** Whether all of an element is inside the view, and nothing lies on its middle. */
    boolean isSeen(String selector) {
        return (Boolean) browser.run("""
                const one = document.querySelector(arguments[0]);
                const { left, top, right, bottom } = one.getBoundingClientRect();
                const above = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
                return top >= 0 && left >= 0 && right <= innerWidth && bottom <= innerHeight && right > left && one.contains(above);
                """, selector);
    }

    /** What axe-core finds wrong with the page as it is. */
    List<String> violations(String state) {
        return Axe.violations(browser, state, 11);
    }

    /**
     * What the page has complained of since the last call. A refusal is not a complaint, nor is the browser's note that it does not ask
     * before it leaves a page that nobody has touched by hand.
     */
    List<String> complaints() {
        return browser.complaints().stream()
                .filter(line -> line.startsWith("SEVERE"))
                .filter(line -> !line.contains("Failed to load resource") && !line.contains("'beforeunload'"))
                .toList();
    }
}
