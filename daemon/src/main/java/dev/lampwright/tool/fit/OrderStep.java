package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Setup;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Finds the order of the strip's channels, and whether one of them is white. */
final class OrderStep implements Step {
    private static final int LEVEL = 110;
    private static final int MOST_LIT = 4;
    private static final int PATIENCE = 12;

    private static final List<Question.Option<Optional<SecretStrip.Seen>>> HUES = List.of(
            option("1", "red", "red", SecretStrip.Seen.RED),
            option("2", "green", "green", SecretStrip.Seen.GREEN),
            option("3", "blue", "blue", SecretStrip.Seen.BLUE),
            option("4", "white", "white", SecretStrip.Seen.WHITE),
            option("5", "they differ", "hues_differ", SecretStrip.Seen.DIFFERENT),
            option("0", "nothing is lit", "dark", SecretStrip.Seen.NOTHING),
            new Question.Option<>("", "I am not sure", Optional.empty(), "unsure"));

    private static Question.Option<Optional<SecretStrip.Seen>> option(
            String key, String words, String code, SecretStrip.Seen hue) {
        return new Question.Option<>(key, words, Optional.of(hue), code);
    }

    @Override
    public String name() {
        return "order";
    }

    @Override
    public String title() {
        return "the order of the colours";
    }

    @Override
    public Findings run(Findings before, FittingBench bench) throws LeaveException, IOException {
        String order = search(FittingSetups.of(before), bench);
        boolean white = order.length() == MOST_LIT;
        bench.say(Phrase.of(
                white ? "order_found_white" : "order_found",
                "The order is " + order + (white ? ", with a white channel." : "."),
                "order",
                order));
        return before.withOrder(order);
    }

    private static String search(Setup setup, FittingBench bench) throws LeaveException, IOException {
        OrderSearch search = new OrderSearch();
        int level = FittingSetups.level(setup, MOST_LIT, LEVEL);
        for (int asked = 0; asked < PATIENCE && search.found().isEmpty(); asked++) {
            Optional<String> likely = search.likely();
            if (likely.isPresent()) {
                prove(likely.get(), search, level, setup, bench);
            } else {
                List<Integer> bytes = search.next();
                bench.show(setup, Scenes.bytes(level, bytes));
                search.answered(bytes, bench.ask(hue(bytes, asked)));
            }
        }
        return search.found().isPresent() ? search.found().get() : byHand(level, setup, bench);
    }

    private static void prove(String order, OrderSearch search, int level, Setup setup, FittingBench bench)
            throws LeaveException, IOException {
        OrderSearch.Proof answer = proof(order, level, setup, bench);
        search.proved(order, answer);
        if (answer == OrderSearch.Proof.WRONG) {
            bench.say(Phrase.of(
                    "order_more",
                    "Then an earlier answer was wrong, or the strip is an unusual one. Some more questions:"));
        }
    }

    private static Question<Optional<SecretStrip.Seen>> hue(List<Integer> bytes, int asked) {
        String lit = bytes.size() > 1 ? "are the pixels that are" : "is the pixel that is";
        String words = (asked == 0 ? "What colour " : "And now: what colour ") + lit
                + " lit near the controller? (Question " + (asked + 1) + ", mostly of 3 to 5.)";
        return Question.choice(
                        words,
                        "Among the first pixels of the strip one, two or three are lit. If all have one colour, choose it; if they"
                                + " differ, choose that. Type the number, or the word. If you find colours hard to tell"
                                + " apart, ask someone else, or skip with Enter.",
                        HUES)
                .coded("order_hue", "number", asked + 1, "lit", bytes.size());
    }

    private static OrderSearch.Proof proof(String order, int level, Setup setup, FittingBench bench)
            throws LeaveException, IOException {
        bench.show(setup, Scenes.bytes(level, OrderSearch.proof(order)));
        String fourth = order.length() == MOST_LIT ? ", the fourth white" : "";
        return bench.ask(Question.choice(
                        "The first pixel should be red now, the second green, the third blue" + fourth
                                + ", and no others lit. Is that right?",
                        "Count from the controller's end.",
                        List.of(
                                new Question.Option<>("y", "yes", OrderSearch.Proof.RIGHT).named("yes"),
                                new Question.Option<>("n", "no", OrderSearch.Proof.WRONG).named("no"),
                                new Question.Option<>(
                                                "s", "yes, but the strip has fewer pixels", OrderSearch.Proof.SHORT)
                                        .named("order_short")))
                .coded(order.length() == MOST_LIT ? "order_proof_white" : "order_proof"));
    }

    private static String byHand(int level, Setup setup, FittingBench bench) throws LeaveException, IOException {
        String order = "";
        do {
            bench.say(Phrase.of("order_unfit", "The answers do not fit any order."));
            order = bench.ask(new Question<String>(
                            "If you know the order, type it, for instance GRB or GRBW; or go back with b:",
                            "It is often in the strip's data sheet. Most pixels of the WS2812B kind have GRB.",
                            OrderStep::readOrder)
                    .coded("order_type"));
        } while (proof(order, level, setup, bench) == OrderSearch.Proof.WRONG);
        return order;
    }

    private static String readOrder(String line) throws Question.UnusableException {
        String order = line.toUpperCase(Locale.ROOT);
        if (!Setup.isOrder(order)) {
            throw new Question.UnusableException(
                    "order_letters", "type each of R, G and B once, and W once if there is white");
        }
        return order;
    }
}
