package dev.lampwright.tool.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Finds the order of channels by asking the most informative question. Every combination of order and strip length is a belief with a
 * weight; each answer makes those beliefs more likely that would have produced it (Bayes' rule). A few answers in a hundred are assumed to
 * be wrong, so none decides alone, and later answers correct a wrong one. The next question is the one whose answer has the most
 * information, after Shannon: the entropy of its answers minus that of the noise.
 */
final class OrderSearch {
    /** Share of answers that are assumed to be wrong. Our own choice. */
    private static final double WRONG = 0.04;

    /** A belief that is worth verifying. Our own choice. */
    private static final double LIKELY = 0.8;

    /** A belief that is enough once verified. Our own choice. */
    private static final double SURE = 0.98;

    /** Strips of this many pixels or more cannot be distinguished by what is lit. */
    private static final int LONG = 5;

    private static final double SHORT_PRIOR = 0.005;
    private static final double WHITE_PRIOR = 0.3;

    /** What is lit for a question: every third or every fourth byte, with different offsets, and single bytes. */
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

    private static final List<SecretStrip.Seen> ANSWERS = List.of(SecretStrip.Seen.values());
    private static final List<SecretStrip> STRIPS = strips();

    /** How likely each answer is, by question and strip. */
    private static final Map<List<Integer>, double[][]> LIKELIHOODS = likelihoods();

    private final double[] weights;
    private final Map<List<Integer>, Integer> unsure = new HashMap<>();
    private final Set<String> proved = new HashSet<>();

    /** What somebody answers when an order is verified. */
    enum Proof {
        RIGHT,
        /** Right as far as it goes, but the strip has fewer pixels than the test pattern. */
        SHORT,
        WRONG
    }

    OrderSearch() {
        weights = STRIPS.stream().mapToDouble(OrderSearch::prior).toArray();
    }

    private static List<SecretStrip> strips() {
        List<SecretStrip> strips = new ArrayList<>();
        for (int pixels = 1; pixels <= LONG; pixels++) {
            for (String letters : List.of("RGB", "RGBW")) {
                for (String order : orders(letters)) {
                    strips.add(new SecretStrip(order, pixels));
                }
            }
        }
        return List.copyOf(strips);
    }

    private static double prior(SecretStrip strip) {
        double length = strip.pixels() == LONG ? 1 - (LONG - 1) * SHORT_PRIOR : SHORT_PRIOR;
        boolean white = strip.order().length() == 4;
        return length * (white ? WHITE_PRIOR / 24 : (1 - WHITE_PRIOR) / 6);
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

    private static Map<List<Integer>, double[][]> likelihoods() {
        Map<List<Integer>, double[][]> all = new HashMap<>();
        for (List<Integer> bytes : QUESTIONS) {
            all.put(
                    bytes,
                    STRIPS.stream().map(strip -> likelihoods(strip.seen(bytes))).toArray(double[][]::new));
        }
        return all;
    }

    private static double[] likelihoods(Optional<SecretStrip.Seen> seen) {
        double[] likelihoods = new double[ANSWERS.size()];
        Arrays.fill(likelihoods, seen.isPresent() ? WRONG / (ANSWERS.size() - 1) : 1.0 / ANSWERS.size());
        seen.ifPresent(hue -> likelihoods[ANSWERS.indexOf(hue)] = 1 - WRONG);
        return likelihoods;
    }

    /** The bytes to light for the most informative question. */
    List<Integer> next() {
        return QUESTIONS.stream()
                .max(Comparator.comparingDouble(
                        bytes -> information(bytes) * Math.pow(0.5, unsure.getOrDefault(bytes, 0))))
                .orElseThrow();
    }

    /** Takes an answer; empty if the user is not sure. */
    void answered(List<Integer> bytes, Optional<SecretStrip.Seen> answer) {
        if (answer.isEmpty()) {
            unsure.merge(bytes, 1, Integer::sum);
            return;
        }
        double[][] likelihoods = LIKELIHOODS.get(bytes);
        int given = ANSWERS.indexOf(answer.get());
        weigh(strip -> likelihoods[strip][given]);
    }

    /** The order to verify, if a likely enough one has not been verified yet. */
    Optional<String> likely() {
        String best = best();
        return belief(best) >= LIKELY && !proved.contains(best) ? Optional.of(best) : Optional.empty();
    }

    /** The order that is found, once it is. */
    Optional<String> found() {
        String best = best();
        return belief(best) >= SURE && proved.contains(best) ? Optional.of(best) : Optional.empty();
    }

    private String best() {
        return STRIPS.stream()
                .map(SecretStrip::order)
                .distinct()
                .max(Comparator.comparingDouble(this::belief))
                .orElseThrow();
    }

    /** How likely an order is, 0 to 1. */
    double belief(String order) {
        return IntStream.range(0, weights.length)
                .filter(i -> STRIPS.get(i).order().equals(order))
                .mapToDouble(i -> weights[i])
                .sum();
    }

    /** The bytes that show red, green and blue, and white, on the first pixels if an order is right. */
    static List<Integer> proof(String order) {
        String letters = letters(order);
        return IntStream.range(0, letters.length())
                .mapToObj(pixel -> pixel * order.length() + order.indexOf(letters.charAt(pixel)))
                .toList();
    }

    /** What is seen when an order is verified on a strip. */
    static Proof seen(String order, SecretStrip strip) {
        if (!strip.shows(proof(order), letters(order))) {
            return Proof.WRONG;
        }
        return strip.pixels() < order.length() ? Proof.SHORT : Proof.RIGHT;
    }

    /** Takes what was seen of the {@link #proof} pattern of an order. */
    void proved(String order, Proof answer) {
        if (answer != Proof.WRONG) {
            proved.add(order);
        }
        weigh(strip -> seen(order, STRIPS.get(strip)) == answer ? 1 - WRONG : WRONG / 2);
    }

    private static String letters(String order) {
        return "RGBW".substring(0, order.length());
    }

    private interface Likelihood {
        double of(int strip);
    }

    private void weigh(Likelihood likelihood) {
        for (int i = 0; i < weights.length; i++) {
            weights[i] *= likelihood.of(i);
        }
        double sum = Arrays.stream(weights).sum();
        for (int i = 0; i < weights.length; i++) {
            weights[i] /= sum;
        }
    }

    /** The average information of the answer, in bits. */
    private double information(List<Integer> bytes) {
        double[][] likelihoods = LIKELIHOODS.get(bytes);
        double[] chances = new double[ANSWERS.size()];
        double noise = 0;
        for (int i = 0; i < weights.length; i++) {
            for (int a = 0; a < chances.length; a++) {
                chances[a] += weights[i] * likelihoods[i][a];
            }
            noise += weights[i] * entropy(likelihoods[i]);
        }
        return entropy(chances) - noise;
    }

    private static double entropy(double[] chances) {
        double bits = 0;
        for (double chance : chances) {
            bits -= chance > 0 ? chance * Math.log(chance) / Math.log(2) : 0;
        }
        return bits;
    }
}
