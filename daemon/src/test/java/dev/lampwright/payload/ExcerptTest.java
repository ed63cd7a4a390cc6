package dev.lampwright.payload;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.SmallStack;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ExcerptTest {
    @Test
    void takesTheGroupOfTheFirstMatch() throws UnreadableException {
        Excerpt excerpt = new Excerpt("tip (?<value>[0-9.]+)");
        assertEquals(Optional.of("180.5"), excerpt.from("bed 41 of 60, tip 180.5 of 215, tip 3"));
        assertEquals(Optional.empty(), excerpt.from("bed 41 of 60"));
    }

    @Test
    void aGroupThatTookNoPartIsNotThere() throws UnreadableException {
        assertEquals(Optional.empty(), new Excerpt("a|(?<value>b)").from("a"));
    }

    /**
     * Expressions whose steps multiply with each character: the first is on OWASP's page on regular expression denial of service (from
     * memory); for the others there, this runtime finds a shorter way.
     */
    @ParameterizedTest
    @ValueSource(strings = {"(.*a){20}$", "((a|aa)+)\\2$"})
    void noTextTakesForever(String evil) {
        Excerpt excerpt = new Excerpt("(?<value>^" + evil + ")");
        UnreadableException e = assertThrows(UnreadableException.class, () -> excerpt.from("a".repeat(60) + "!"));
        assertTrue(e.getMessage().contains("too many steps"), e.getMessage());
    }

    @Test
    void noTextIsTooDeep() {
        Excerpt excerpt = new Excerpt("(?<value>(a|b)*)c");
        assertThrows(UnreadableException.class, () -> excerpt.from("ab".repeat(2000)));
    }

    @Test
    void aTextThatIsTooLongIsRefused() {
        assertThrows(UnreadableException.class, () -> new Excerpt("(?<value>a)").from("a".repeat(4001)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"(", "(?<value>[0-9]", "*", "(?<value>a)(?<value>b)"})
    void refusesWhatIsNotAnExpression(String expression) {
        assertTrue(assertThrows(IllegalArgumentException.class, () -> new Excerpt(expression))
                .getMessage()
                .startsWith("is not a valid regular expression: "));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "[0-9]+", "([0-9]+)", "(?<number>[0-9]+)", "(?x)a # (?<value>a)", "\\Q(?<value>a)"})
    void refusesWhatTakesNothing(String expression) {
        assertTrue(assertThrows(IllegalArgumentException.class, () -> new Excerpt(expression))
                .getMessage()
                .startsWith("has no group named value; "));
    }

    @Test
    void anExpressionOfAnyLengthOverflowsNoStack() throws InterruptedException {
        String allowed = "(?:".repeat(40) + "a?".repeat(400) + ")".repeat(40) + "(?<value>b)";
        for (String expression :
                List.of("(".repeat(20_000), "[a".repeat(480), "a?".repeat(20_000), allowed, "a|".repeat(480))) {
            Optional<Throwable> failure = SmallStack.thrownBy(() -> new Excerpt(expression));
            assertTrue(
                    failure.filter(thrown -> !(thrown instanceof IllegalArgumentException))
                            .isEmpty(),
                    () -> "of " + expression.length() + " characters: " + failure);
        }
        assertTrue(assertThrows(IllegalArgumentException.class, () -> new Excerpt("a".repeat(1001)))
                .getMessage()
                .startsWith("is longer than 1000 characters; "));
        assertTrue(assertThrows(IllegalArgumentException.class, () -> new Excerpt("(".repeat(51)))
                .getMessage()
                .startsWith("has brackets more than 50 deep; "));
    }

    @Test
    void equalIfTheyCutAlike() {
        assertEquals(new Excerpt("(?<value>a)"), new Excerpt("(?<value>a)"));
        assertEquals(new Excerpt("(?<value>a)").hashCode(), new Excerpt("(?<value>a)").hashCode());
    }
}
