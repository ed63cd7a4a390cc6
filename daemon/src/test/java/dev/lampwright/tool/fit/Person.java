package dev.lampwright.tool.fit;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BinaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Somebody who reads the questions and answers them only from what they see: knows where the zones should be and what is on the dimmers,
 * but nothing about the strip's order and length.
 */
final class Person {
    private static final Map<SecretStrip.Seen, String> HUES = Map.of(
            SecretStrip.Seen.RED,
            "1",
            SecretStrip.Seen.GREEN,
            "2",
            SecretStrip.Seen.BLUE,
            "3",
            SecretStrip.Seen.WHITE,
            "4",
            SecretStrip.Seen.DIFFERENT,
            "5",
            SecretStrip.Seen.NOTHING,
            "0");
    private static final Map<Findings.Hanging, String> HANGING = Map.of(
            Findings.Hanging.NOTHING, "0",
            Findings.Hanging.WHITE, "1",
            Findings.Hanging.RED, "2",
            Findings.Hanging.GREEN, "3",
            Findings.Hanging.BLUE, "4");

    private final Eyes eyes;
    private final Map<String, Findings.Run> zones = new LinkedHashMap<>();
    private final Map<Integer, Findings.DimmerUse> dimmers = new LinkedHashMap<>();
    private final Map<String, Deque<String>> said = new LinkedHashMap<>();
    private final Deque<String> toMove = new ArrayDeque<>();
    private final List<String> questions = new ArrayList<>();
    private List<Integer> corners = List.of();
    private BinaryOperator<String> slip = (question, answer) -> answer;

    Person(Eyes eyes) {
        this.eyes = eyes;
        say("What feeds the strip", "1");
        say("How many volts", "");
        say("How many amperes", "10");
        say("What fuse", "10");
        say("The ceiling will be", "");
        say("How many pixels", "");
        say("What does the strip look like", "");
        say("Do you want the live page", "n");
        say("Is a meter connected", "y");
        say("Measure again?", "y");
        say("How many mA does the strongest", "900");
        say("What is its name", "");
        say("Which MQTT broker", "");
        say("What is lampwright's user name there", "");
        say("Should lampwright listen", "n");
        say("Press Enter to write", "");
        say("There are earlier answers in", "");
    }

    /** Sets the answers to a question that begins with a text, one after the other, the last one from then on. */
    Person say(String question, String... answers) {
        said.put(question, new ArrayDeque<>(List.of(answers)));
        return this;
    }

    /** The first pixels of the sides of a frame, from the second side on. */
    Person corners(Integer... firsts) {
        corners = List.of(firsts);
        return this;
    }

    /** Where an existing zone should be. */
    Person moves(String zone, int first, int last) {
        toMove.add(zone);
        return wants(zone, first, last);
    }

    /** Where a zone should be. */
    Person wants(String zone, int first, int last) {
        zones.put(zone, new Findings.Run(first, last));
        return this;
    }

    /** What is on a dimmer. */
    Person hung(int dimmer, Findings.DimmerUse use) {
        dimmers.put(dimmer, use);
        return this;
    }

    /** Changes answers about what is seen, by question and answer, for somebody who makes mistakes. */
    Person slips(BinaryOperator<String> newSlip) {
        slip = newSlip;
        return this;
    }

    /** All questions so far. */
    List<String> questions() {
        return questions;
    }

    /** How often questions that begin with a text were asked. */
    long asked(String question) {
        return questions.stream().filter(each -> each.startsWith(question)).count();
    }

    /** Answers what is on the terminal; the question is the last line that is not one of the options. */
    String answer(List<String> lines) {
        String question = lines.stream()
                .filter(line -> !line.startsWith(" ") && !line.isBlank() && !line.startsWith("Sorry: "))
                .reduce((first, second) -> second)
                .orElseGet(() -> questions.get(questions.size() - 1));
        questions.add(question);
        return seen(question).map(answer -> slip.apply(question, answer)).orElseGet(() -> known(question));
    }

    private String known(String question) {
        return said.keySet().stream()
                .filter(question::startsWith)
                .findFirst()
                .map(said::get)
                .map(answers -> answers.size() > 1 ? answers.remove() : answers.element())
                .orElseThrow(() -> new AssertionError("nobody knows what to say to: " + question));
    }

    private Optional<String> seen(String question) {
        if (question.startsWith("Is something lit at the end")) {
            return yes(lit(0) || lit(1));
        }
        if (question.contains("hat colour")) {
            return Optional.of(colour());
        }
        if (question.startsWith("The first pixel should be red")) {
            return Optional.of(proof(question.contains("fourth") ? "RGBW" : "RGB"));
        }
        if (question.contains("Is a pixel lit anywhere")) {
            return yes(!litPixels().isEmpty());
        }
        if (question.startsWith("A single pixel should be lit")) {
            return Optional.of(last());
        }
        return seenLater(question);
    }

    private Optional<String> seenLater(String question) {
        Matcher corner = Pattern.compile(
                        "Pixel \\d+ is marked\\. Move the mark to the first pixel after corner (\\d) .*")
                .matcher(question);
        if (corner.matches()) {
            return Optional.of(move(corners.get(Integer.parseInt(corner.group(1)) - 1)));
        }
        Matcher mark = Pattern.compile("Pixel \\d+ is marked\\. Move the mark to (one|the other) end of (\\w+):.*")
                .matcher(question);
        if (mark.matches()) {
            Findings.Run run = zones.get(mark.group(2));
            int low = Math.min(run.first(), run.last());
            int high = Math.max(run.first(), run.last());
            return Optional.of(move(mark.group(1).equals("one") ? low : high));
        }
        if (question.startsWith("Which zone is next")) {
            return Optional.of(nextZone(question));
        }
        Matcher whole = Pattern.compile("All of (\\w+) is lit now.*").matcher(question);
        if (whole.matches()) {
            return yes(litPixels().equals(range(zones.get(whole.group(1)))));
        }
        Matcher band = Pattern.compile("A band runs along (\\w+)\\..*").matcher(question);
        if (band.matches()) {
            Findings.Run run = zones.get(band.group(1));
            return yes(Integer.signum(eyes.drift()) == Integer.signum(run.last() - run.first()));
        }
        return seenLast(question);
    }

    private Optional<String> seenLast(String question) {
        Matcher step = Pattern.compile("Step (\\d+) of 20\\..*").matcher(question);
        if (step.matches()) {
            int brightest = eyes.pixels().get(0).red();
            return Optional.of(brightest > 40 ? "-" : brightest < 30 ? "+" : "");
        }
        if (question.startsWith("Reading ")) {
            return Optional.of(TypedNumbers.shown(eyes.meter()));
        }
        if (question.startsWith("The controller has ")) {
            return yes(!dimmers.isEmpty());
        }
        if (question.startsWith("Dimmer ")) {
            return Optional.of(HANGING.get(use().what()));
        }
        if (question.startsWith("How many mA does it take")) {
            return Optional.of(Integer.toString(use().fullMilliamps()));
        }
        return Optional.empty();
    }

    private String nextZone(String question) {
        if (!toMove.isEmpty()) {
            return toMove.remove();
        }
        int at = question.indexOf("So far: ");
        List<String> done = at < 0
                ? List.of()
                : List.of(question.substring(at + 8, question.length() - 1).split(", "));
        return zones.keySet().stream()
                .filter(zone -> !done.contains(zone))
                .findFirst()
                .orElse("");
    }

    private Findings.DimmerUse use() {
        return dimmers.getOrDefault(eyes.dimmer(), new Findings.DimmerUse(Findings.Hanging.NOTHING, "", 1));
    }

    private static Optional<String> yes(boolean so) {
        return Optional.of(so ? "y" : "n");
    }

    private boolean lit(int pixel) {
        List<StripModel.Pixel> pixels = eyes.pixels();
        return pixel < pixels.size() && pixels.get(pixel).lit();
    }

    private List<Integer> litPixels() {
        List<StripModel.Pixel> pixels = eyes.pixels();
        List<Integer> lit = new ArrayList<>();
        for (int i = 0; i < pixels.size(); i++) {
            if (pixels.get(i).lit()) {
                lit.add(i);
            }
        }
        return lit;
    }

    private static List<Integer> range(Findings.Run run) {
        List<Integer> range = new ArrayList<>();
        for (int i = Math.min(run.first(), run.last()); i <= Math.max(run.first(), run.last()); i++) {
            range.add(i);
        }
        return range;
    }

    private String colour() {
        List<SecretStrip.Seen> hues = eyes.pixels().stream()
                .filter(StripModel.Pixel::lit)
                .map(StripModel.Pixel::hue)
                .distinct()
                .toList();
        SecretStrip.Seen seen =
                hues.isEmpty() ? SecretStrip.Seen.NOTHING : hues.size() > 1 ? SecretStrip.Seen.DIFFERENT : hues.get(0);
        return HUES.get(seen);
    }

    private String proof(String letters) {
        List<Integer> lit = litPixels();
        int count = Math.min(letters.length(), eyes.pixels().size());
        boolean right = lit.size() == count;
        for (int i = 0; i < count; i++) {
            right &= lit.contains(i) && eyes.pixels().get(i).hue() == SecretStrip.Seen.of(letters.charAt(i));
        }
        return !right ? "n" : count < letters.length() ? "s" : "y";
    }

    private String last() {
        List<Integer> lit = litPixels();
        if (lit.isEmpty()) {
            return "n";
        }
        return lit.equals(List.of(eyes.pixels().size() - 1)) ? "y" : "m";
    }

    /** The mark is the pixel that is red and green. */
    private String move(int target) {
        List<StripModel.Pixel> pixels = eyes.pixels();
        for (int i = 0; i < pixels.size(); i++) {
            if (pixels.get(i).red() > 0 && pixels.get(i).green() > 0) {
                return i == target ? "" : target - i == 1 ? "+" : i < target ? "+" + (target - i) : "-" + (i - target);
            }
        }
        throw new AssertionError("no mark is to be seen");
    }
}
