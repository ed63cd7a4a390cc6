package dev.lampwright.tool.fit;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Browser;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.function.Consumer;
import org.openqa.selenium.Keys;

/** Does on the page what a {@link Person} says, with the keyboard alone. */
final class PageHands {
    private static final Duration LONG = Duration.ofSeconds(40);
    private static final int MOST_TABS = 60;

    /** What the page holds, as the daemon sends it to the holder. */
    private static final String VIEW = """
            const done = arguments[arguments.length - 1];
            fetch('fit/beat', { method: 'POST', headers: { 'Content-Type': 'application/json' },
              body: JSON.stringify({ lease: sessionStorage.getItem('lampwright.fit ' + location.pathname.replace(/[^/]*$/, '')) ?? '', changes: -1 }) })
              .then((response) => response.text()).then(done, () => done('{}'));
            """;

    private final Browser browser;
    private final Person person;
    private final Deque<String> passwords = new ArrayDeque<>();
    private Consumer<JsonNode> look = question -> {};

    PageHands(Browser browser, Person person) {
        this.browser = browser;
        this.person = person;
    }

    /** What is typed where a password is asked for, one after the other, the last one from then on. */
    PageHands withPassword(String... secrets) {
        passwords.addAll(List.of(secrets));
        return this;
    }

    /** What is done with each question before it is answered. */
    PageHands looking(Consumer<JsonNode> newLook) {
        look = newLook;
        return this;
    }

    /** What the daemon sends to the page. */
    JsonNode view() {
        try {
            return new ObjectMapper().readTree(String.valueOf(browser.await(VIEW)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Waits until the page shows a question other than one by its number, or the end. */
    JsonNode next(long after) {
        Await.until(
                () -> "the next question after " + after + ": " + view(),
                () -> {
                    JsonNode view = view();
                    boolean asks = view.path("talk").path("asking").asBoolean()
                            && view.path("talk").path("number").asLong() > after;
                    return asks ? isDrawn(view) : !view.path("running").asBoolean(true);
                },
                LONG);
        return view();
    }

    private boolean isDrawn(JsonNode view) {
        return (Boolean) browser.run(
                "const a = document.getElementById('answers'); return !a.inert && a.childElementCount > 0"
                        + " && Number(a.dataset.number) === arguments[0]",
                view.path("talk").path("number").asLong());
    }

    /** Answers questions until there are no more, or the given number has been answered; returns how many were. */
    int answer(int most) {
        long last = 0;
        int count = 0;
        while (count < most) {
            JsonNode view = next(last);
            if (!view.path("running").asBoolean()) {
                return count;
            }
            JsonNode talk = view.path("talk");
            last = talk.path("number").asLong();
            look.accept(talk.path("question"));
            answer(talk.path("question"));
            count++;
        }
        return count;
    }

    private void answer(JsonNode question) {
        String kind = question.path("kind").asText();
        if (kind.equals("secret")) {
            type(passwords.size() > 1 ? passwords.remove() : passwords.element());
            return;
        }
        String line = person.answer(List.of(question.path("text").asText()));
        switch (kind) {
            case "choice", "corner" -> press("#answers [data-key='" + line + "']");
            case "enter" -> press("#answers button");
            case "slider" -> slide(question.path("text").asText(), line);
            default -> {
                if (line.isEmpty() && !question.path("skip").asText().isEmpty()) {
                    press("#skip");
                } else {
                    type(line);
                }
            }
        }
    }

    /** Moves the slider until the person sees what they want. */
    private void slide(String question, String first) {
        String line = first;
        while (!line.isEmpty()) {
            tabTo("#value");
            int steps = line.length() == 1 ? 1 : Integer.parseInt(line.substring(1));
            String before = browser.text("answers");
            for (int i = 0; i < steps; i++) {
                key(line.startsWith("+") ? Keys.ARROW_RIGHT : Keys.ARROW_LEFT);
            }
            Await.until("the slider has moved", () -> !browser.text("answers").equals(before));
            awaitLight();
            line = person.answer(List.of(question));
        }
        press("#answers .main");
    }

    /** Nothing that was tried is under way. */
    private void awaitLight() {
        Await.until("the light follows", () ->
                (Boolean) browser.run("return document.getElementById('value').dataset.busy === 'false'"));
    }

    private void type(String line) {
        tabTo("#value");
        if (!line.isEmpty()) {
            key(Keys.chord(Keys.CONTROL, "a"), line);
        }
        key(Keys.ENTER);
    }

    /** Goes to a control with the Tab key, and presses Enter. */
    void press(String selector) {
        tabTo(selector);
        key(Keys.ENTER);
    }

    void tabTo(String selector) {
        for (int i = 0; i < MOST_TABS && !isFocused(selector); i++) {
            key(Keys.TAB);
        }
        if (!isFocused(selector)) {
            throw new AssertionError("no way to " + selector + " with the Tab key from "
                    + browser.run("return document.activeElement.outerHTML") + ": "
                    + browser.run("return document.querySelector('main').innerText"));
        }
    }

    private boolean isFocused(String selector) {
        return (Boolean) browser.run("return document.activeElement.matches(arguments[0])", selector);
    }

    private void key(CharSequence... keys) {
        browser.driver().switchTo().activeElement().sendKeys(keys);
    }
}
