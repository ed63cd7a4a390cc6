package dev.lampwright.handbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Plain English everywhere: none of the phrases that sound translated, each with the better wording (DEVELOPERS.md, "The style"). In string
 * literals of the product, the page's files, configuration texts, the package's files, the documents, and the comments of Java and firmware.
 */
class WordingTest {
    /** What to look for, and what to write. */
    private static final Map<Pattern, String> PHRASES = new LinkedHashMap<>();

    static {
        rather("(?<!there )(is|are) no(?! (longer|more|less)\\b) [a-z]+", "is not a …");
        rather("which is no ", "which is not a …");
        rather("called wrongly", "usage error");
        rather("(is|are|was|were|be) told(?! (apart|from))", "is reported, is logged, is configured: whichever it is");
        rather("tells (how|that|which|whether)", "reports, shows or says");
        rather("how (it|the (daemon|printer|controller|broker)) does", "the status of …");
        rather("mend(s|ed|ing)?", "fix");
        rather("reckon(s|ed|ing)?", "calculate, count");
        rather("anew", "again");
        rather("once more", "again");
        rather("for so long", "for this long");
        rather("after so many seconds", "after this many seconds");
        rather("ha(s|ve) no use", "does not apply here, cannot be combined with");
        rather("stands? (beside|side by side)", "is next to, goes with");
        rather("may stand", "is allowed");
        rather("is there (already|twice)", "already exists, appears twice");
        rather("must be there", "is required");
        rather("that is there(?= is)", "that exists");
        rather("wants? (a|its|an|to be)", "requires, needs");
        rather("for it is", "because it is");
        rather("at the least", "at least");
        rather("in vain", "without success");
        rather("says not", "does not say");
        rather("have you a", "do you have a");
        rather("spoken to", "reached, asked");
        rather("if (this|it|that) stays so", "if this persists");
        rather("is not right", "is not valid, is wrong");
        rather("lets? (us|lampwright) in", "accepts the login");
        rather("no safety device", "not a safety device");
        rather("may (not )?be (read|written|made) by", "can(not) be read by");
        rather("goes on and on", "continues");
        rather("by a hand|a hand has", "by hand");
        rather("come anew|pass again", "is getting through again");
        rather("look at the broker", "check the broker");
        rather("makes no sense", "is not possible");
        rather("as usual", "by default");
        rather("put (?:it |them )?out of", "remove from");
        rather("is your [a-z]+ elsewhere, ", "if your … is elsewhere, …");
        rather("can(?:not| not) be had", "is not available, cannot be opened");
        rather("clock on the wall", "local time, wall clock");
        rather("in good order", "intact, working");
        rather("by chance", "at random, accidentally");
        rather("by way of", "through, via");
        rather("passed over", "skipped, ignored");
        rather("that which", "what");
    }

    private static final Pattern COMMENT_OR_TEXT = Pattern.compile(
            "//[^\\n]*|/\\*.*?\\*/|'(?:\\\\.|[^'\\\\\\n])+'|\"\"\"(?<block>.*?)\"\"\"|\"(?<line>(?:\\\\.|[^\"\\\\\\n])*)\"",
            Pattern.DOTALL);

    private static final Pattern LINE_IN_COMMENT = Pattern.compile("[ \t]*\n[ \t]*(?:\\*(?!/)|//)?[ \t]*");

    private static void rather(String phrase, String better) {
        PHRASES.put(Pattern.compile("\\b(?:" + phrase + ")\\b", Pattern.CASE_INSENSITIVE), better);
    }

    private static List<Path> below(String folder, String ending) throws IOException {
        try (Stream<Path> files = Files.walk(Page.ROOT.resolve(folder))) {
            return files.filter(file -> file.toString().matches(".*\\.(" + ending + ")"))
                    .sorted()
                    .toList();
        }
    }

    /** Where each phrase of the list is in some text, with what to write. */
    private static List<String> found(Path file, String text) {
        List<String> found = new ArrayList<>();
        PHRASES.forEach((phrase, better) -> {
            Matcher at = phrase.matcher(text);
            while (at.find()) {
                long line = text.substring(0, at.start()).lines().count();
                found.add("%s:%d: \"%s\"; write: %s".formatted(Page.ROOT.relativize(file), line, at.group(), better));
            }
        });
        return found;
    }

    /** The text with everything but its string literals made blank, so that lines keep their numbers. */
    static String literals(String source) {
        StringBuilder texts = new StringBuilder(source.replaceAll("[^\\n]", " "));
        Matcher part = COMMENT_OR_TEXT.matcher(source);
        while (part.find()) {
            String name = part.group("block") != null ? "block" : "line";
            if (part.group(name) != null) {
                texts.replace(part.start(name), part.end(name), part.group(name));
            }
        }
        return texts.toString();
    }

    /** Where each phrase is in the comments of a source text, also across lines; the line is the one where the comment begins. */
    private static List<String> foundInComments(Path file, String source) {
        List<String> found = new ArrayList<>();
        Matcher part = COMMENT_OR_TEXT.matcher(source);
        while (part.find()) {
            String comment = part.group();
            if (comment.startsWith("/")) {
                String above = source.substring(0, part.start()).replaceAll("[^\n]", "");
                found.addAll(
                        found(file, above + LINE_IN_COMMENT.matcher(comment).replaceAll(" ")));
            }
        }
        return found;
    }

    @Test
    void messagesAreInPlainWords() throws IOException {
        List<String> found = new ArrayList<>();
        for (Path file : below("daemon/src/main/java", "java")) {
            if (!file.endsWith("package-info.java")) {
                found.addAll(found(file, literals(Files.readString(file))));
            }
        }
        assertNone(found);
    }

    @Test
    void pageAndFilesAreInPlainWords() throws IOException {
        List<String> found = new ArrayList<>();
        for (Path file : below("daemon/src/main/resources/dev/lampwright", "js|html|toml")) {
            String text = Files.readString(file);
            found.addAll(found(file, file.toString().endsWith(".js") ? literals(text) : text));
        }
        for (Path file : below("systemd", "toml|service|rules|conf|acl|options|yml")) {
            found.addAll(found(file, Files.readString(file)));
        }
        Path control = Page.ROOT.resolve("systemd/debian/control");
        found.addAll(found(control, Files.readString(control)));
        assertNone(found);
    }

    @Test
    void commentsAreInPlainWords() throws IOException {
        List<String> found = new ArrayList<>();
        for (String folder :
                List.of("daemon/src", "protocol/src", "firmware-notes/reference", "firmware-notes/emulator")) {
            for (Path file : below(folder, "java|c|h|js")) {
                // This file shows the phrases, and Node.js's packages are not ours.
                if (!file.endsWith("WordingTest.java") && !file.toString().contains("node_modules")) {
                    found.addAll(foundInComments(file, Files.readString(file)));
                }
            }
        }
        assertNone(found);
    }

    @Test
    void documentsAreInPlainWords() {
        List<String> found = new ArrayList<>();
        for (Page page : Page.all()) {
            found.addAll(found(page.file(), withoutWhatIsStruckOut(page.text())));
        }
        assertNone(found);
    }

    /** DEVELOPERS.md, "The style", shows what not to write, struck out. */
    private static String withoutWhatIsStruckOut(String text) {
        return text.replaceAll("~~[^~\n]+~~", "");
    }

    private static void assertNone(List<String> found) {
        assertEquals("", String.join("\n", found), "phrases that nobody would say; see DEVELOPERS.md, \"The style\"");
    }

    @Test
    void findsThePhrasesThatItIsFor() {
        List.of(
                        "\"GRX\" is no order",
                        "it was called wrongly",
                        "alder.toml is there already",
                        "has no use beside measured",
                        "This page wants its token",
                        "tells how it does",
                        "the port cannot be had",
                        "what mends it")
                .forEach(text -> assertTrue(!found(Page.ROOT.resolve("x"), text).isEmpty(), text));
    }

    @Test
    void leavesPlainWordsAlone() {
        List.of(
                        "it is no longer heated",
                        "ambient_C is no more than 20",
                        "lampwright tell --config alder.toml",
                        "recommended, amended, commendable",
                        "there is no such file",
                        "nobody can tell them apart")
                .forEach(text -> assertEquals(List.of(), found(Page.ROOT.resolve("x"), text), text));
    }

    @Test
    void findsPhrasesAcrossTheLinesOfAComment() {
        String source = "String s = \"anew\";\n/**\n * What is not\n * the same once\n * more.\n */\n// once\nint a;";
        List<String> found = foundInComments(Page.ROOT.resolve("x"), source);
        assertEquals(1, found.size(), found.toString());
        assertTrue(found.get(0).startsWith("x:2: \"once more\""), found.toString());
    }

    @Test
    void looksAtLiteralsAlone() {
        String source =
                "/** anew */ char c = '\"'; // anew\nString s = \"once\" + \"more\"; String t = \"\"\"\n  anew \\\"x\"\"\";";
        assertEquals(1, found(Page.ROOT.resolve("x"), literals(source)).size(), literals(source));
    }
}
