package dev.lampwright.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Finds the order of channels by asking what tells most. Every order is a belief with a weight, together with how short the strip is, up
 * to four pixels; each answer makes those more likely that would have given it (the rule of Bayes). Some answers in a hundred are
 * reckoned to be wrong, so none decides alone, and a wrong one is mended by those after it. The next question is the one whose answer
 * has the most information, after Shannon: the entropy of its answers, less that of the noise.
 */
final class OrderSearch {
    /** Answers that are reckoned to be wrong. Our own choice. */
    private static final double WRONG = 0.04;

    /** A belief that is worth being confirmed. Our own choice. */
    private static final double SURE = 0.8;

    /** Strips of fewer pixels than that are not told apart from one another by what is lit. */
    private static final int LONG = 5;

    private static final double SHORT_PRIOR = 0.005;
    private static final double WHITE_PRIOR = 0.3;

    /** What is lit for a question: every third byte or every fourth, from different ones on, and single bytes. */
    private static final List<List<Integer>> QUESTIONS = List.of(
            List.of(0, 6, 9),
            List.of(1, 7, 10),
            List.of(2, 5, 8),
            List.of(0, 4, 8),
            List.of(1, 5, 9),
            List.of(2, 6, 10),
            List.of(3, 7, 11),
            List.of(0),
            List.of(1),
            List.of(2),
            List.of(3));

    private final List<SecretStrip> strips = new ArrayList<>();
    private final double[] weights;
    private final Map<List<Integer>, Integer> unsure = new HashMap<>();

    OrderSearch() {
        List<String> three = orders("RGB");
        List<String> four = orders("RGBW");
        List<Double> priors = new ArrayList<>();
        for (int pixels = 1; pixels <= LONG; pixels++) {
            double length = pixels == LONG ? 1 - (LONG - 1) * SHORT_PRIOR : SHORT_PRIOR;
            believe(three, pixels, length * (1 - WHITE_PRIOR) / three.size(), priors);
            believe(four, pixels, length * WHITE_PRIOR / four.size(), priors);
        }
        weights = priors.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private void believe(List<String> orders, int pixels, double prior, List<Double> priors) {
        orders.forEach(order -> {
            strips.add(new SecretStrip(order, pixels));
            priors.add(prior);
        });
    }

    /** All orders of some channels. */
    static List<String> orders(String letters) {
        if (letters.length() <= 1) {
            return List.of(letters);
        }
        List<String> orders = new ArrayList<>();
        for (int i = 0; i < letters.length(); i++) {
            String rest = letters.substring(0, i) + letters.substring(i + 1);
            char first = letters.charAt(i);
            orders(rest).forEach(order -> orders.add(first + order));
        }
        return orders;
    }

    /** The bytes to light for the question that tells most. */
    List<Integer> next() {
        return QUESTIONS.stream()
                .max(Comparator.comparingDouble(
                        bytes -> information(bytes) * Math.pow(0.5, unsure.getOrDefault(bytes, 0))))
                .orElseThrow();
    }

    /** Takes an answer; empty from somebody who is not sure. */
    void answered(List<Integer> bytes, Optional<Hue> answer) {
        if (answer.isEmpty()) {
            unsure.merge(bytes, 1, Integer::sum);
        }
        answer.ifPresent(hue -> weigh(strip -> likelihood(strip, bytes, hue)));
    }

    /** The order to be confirmed, if one is likely enough. */
    Optional<String> likely() {
        String best = best();
        return belief(best) >= SURE ? Optional.of(best) : Optional.empty();
    }

    /** The likeliest order. */
    String best() {
        return strips.stream()
                .map(SecretStrip::order)
                .distinct()
                .max(Comparator.comparingDouble(this::belief))
                .orElseThrow();
    }

    /** How likely an order is, 0 to 1. */
    double belief(String order) {
        return IntStream.range(0, weights.length)
                .filter(i -> strips.get(i).order().equals(order))
                .mapToDouble(i -> weights[i])
                .sum();
    }

    /** The bytes that show red, green and blue, and white, on the first pixels if an order is right. */
    static List<Integer> proof(String order) {
        String letters = "RGBW".substring(0, order.length());
        return IntStream.range(0, letters.length())
                .mapToObj(pixel -> pixel * order.length() + order.indexOf(letters.charAt(pixel)))
                .toList();
    }

    /** Takes the answer to whether the {@link #proof} of an order shows what it should. */
    void confirmed(String order, boolean yes) {
        List<Integer> bytes = proof(order);
        String letters = "RGBW".substring(0, order.length());
        weigh(strip -> strip.shows(bytes, letters) == yes ? 1 - WRONG : WRONG);
    }

    private interface Likelihood {
        double of(SecretStrip strip);
    }

    private void weigh(Likelihood likelihood) {
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            weights[i] *= likelihood.of(strips.get(i));
            sum += weights[i];
        }
        for (int i = 0; i < weights.length; i++) {
            weights[i] /= sum;
        }
    }

    private static double likelihood(SecretStrip strip, List<Integer> bytes, Hue answer) {
        int answers = Hue.values().length;
        return strip.seen(bytes)
                .map(hue -> hue == answer ? 1 - WRONG : WRONG / (answers - 1))
                .orElse(1.0 / answers);
    }

    /** What the answer tells on average, in bits. */
    private double information(List<Integer> bytes) {
        Hue[] answers = Hue.values();
        double[] chances = new double[answers.length];
        double noise = 0;
        for (int i = 0; i < weights.length; i++) {
            double[] likelihoods = new double[answers.length];
            for (int a = 0; a < answers.length; a++) {
                likelihoods[a] = likelihood(strips.get(i), bytes, answers[a]);
                chances[a] += weights[i] * likelihoods[a];
            }
            noise += weights[i] * entropy(likelihoods);
        }
        return entropy(chances) - noise;
    }

    private static double entropy(double[] chances) {
        return Arrays.stream(chances)
                .filter(chance -> chance > 0)
                .map(chance -> -chance * Math.log(chance) / Math.log(2))
                .sum();
    }
}
