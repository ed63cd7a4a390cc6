package dev.lampwright.tool.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every order that a strip can have, identified only by the colours that it shows. */
class OrderSearchTest {
    /** Questions that a whole search may take before somebody loses patience; our own choice. */
    private static final int PATIENCE = 13;

    private static final int NEVER = -1;

    private static List<String> allOrders() {
        return Stream.concat(OrderSearch.orders("RGB").stream(), OrderSearch.orders("RGBW").stream())
                .toList();
    }

    /** What somebody answers in front of a strip of some length: a mixture is named after its brightest part, here white or red. */
    private static SecretStrip.Seen hue(SecretStrip strip, List<Integer> bytes) {
        return strip.seen(bytes).orElse(SecretStrip.Seen.WHITE);
    }

    /** How many questions it took to find the order, with one answer wrong. */
    private static int find(SecretStrip strip, int wrongAt, SecretStrip.Seen wrong) {
        OrderSearch search = new OrderSearch();
        for (int asked = 0; asked < PATIENCE; asked++) {
            Optional<String> likely = search.likely();
            if (search.found().isPresent()) {
                assertEquals(strip.order(), search.found().get(), strip + ", wrong at " + wrongAt);
                return asked;
            }
            if (likely.isPresent()) {
                search.proved(likely.get(), OrderSearch.seen(likely.get(), strip));
            } else {
                List<Integer> bytes = search.next();
                search.answered(bytes, Optional.of(asked == wrongAt ? wrong : hue(strip, bytes)));
            }
        }
        throw new AssertionError(strip + " is not found, wrong at " + wrongAt + " with " + wrong);
    }

    @Test
    void thereAreSixOrdersOfThreeChannelsAndTwentyFourOfFour() {
        assertEquals(30, allOrders().stream().distinct().count());
    }

    @Test
    void threeChannelsTakeThreeQuestionsAndFourTakeFive() {
        for (String order : allOrders()) {
            int questions = find(new SecretStrip(order, 100), NEVER, SecretStrip.Seen.RED);
            assertTrue(questions <= (order.length() == 3 ? 3 : 5), order + " took " + questions);
        }
    }

    @Test
    void shortStripsAreFoundTooAsFarAsTheyCanBeToldApart() {
        for (String order : allOrders()) {
            for (int pixels = 1; pixels <= 6; pixels++) {
                find(new SecretStrip(order, pixels), NEVER, SecretStrip.Seen.RED);
            }
        }
    }

    @Test
    void oneWrongAnswerIsMended() {
        for (String order : allOrders()) {
            for (int wrongAt = 0; wrongAt < 4; wrongAt++) {
                for (SecretStrip.Seen wrong : SecretStrip.Seen.values()) {
                    find(new SecretStrip(order, 60), wrongAt, wrong);
                }
            }
        }
    }

    @Test
    void somebodyWhoIsNotSureIsAskedSomethingElse() {
        OrderSearch search = new OrderSearch();
        List<Integer> first = search.next();
        search.answered(first, Optional.empty());
        search.answered(search.next(), Optional.empty());
        assertTrue(!search.next().equals(first) || search.likely().isEmpty());
        assertEquals(1, allOrders().stream().mapToDouble(search::belief).sum(), 1e-9);
    }

    @Test
    void theProofShowsItsColoursOnlyOnAStripOfThatOrder() {
        for (String guess : allOrders()) {
            for (String order : allOrders()) {
                OrderSearch.Proof seen = OrderSearch.seen(guess, new SecretStrip(order, 50));
                assertEquals(guess.equals(order), seen == OrderSearch.Proof.RIGHT, guess + " on " + order);
            }
        }
    }
}
