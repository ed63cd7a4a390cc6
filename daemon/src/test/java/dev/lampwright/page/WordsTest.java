package dev.lampwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.broker.BrokerState;
import dev.lampwright.desk.Ask;
import dev.lampwright.desk.Reason;
import dev.lampwright.link.LinkState;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.Silence;
import dev.lampwright.tool.plan.Verdict;
import dev.lampwright.tool.survey.Doing;
import dev.lampwright.tool.survey.Role;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whether the page has texts for everything that it says, in each of its languages. */
class WordsTest {
    private static final Path FOLDER = Path.of("src/main/resources/dev/lampwright/page");
    private static final List<String> TABLES = List.of("english", "german", "spanish", "french", "chinese");
    /** What the names of the tables begin with whose words one page alone has. */
    private static final List<String> OWN = List.of("bench_", "fit_");

    /** A line of a table: a code and its text, or its singular and plural forms. */
    private static final Pattern LINE = Pattern.compile("  \"([\\w.]+)\": (\"[^\"]*\"|\\{ .* }),");

    /** A code in a script, and the beginning of one that a word from elsewhere completes. */
    private static final Pattern WHOLE = Pattern.compile("\"([a-z]+(?:\\.\\w+)+)\"");

    private static final Pattern BEGUN = Pattern.compile("`([a-z]+(?:\\.\\w+)*\\.)\\$\\{");
    /** What looks like a code but is not: names of files, of browser storage, and of signals. */
    private static final Pattern NO_CODE =
            Pattern.compile(".*\\.(js|svg|png|css|html|webmanifest)|(lampwright|bed|nozzle|chamber|job)\\..*");

    private static final Pattern ASKED = Pattern.compile("\\.coded\\(\\s*\"(\\w+[a-z])\"");
    private static final Pattern REFUSED =
            Pattern.compile("(?:UnusableException|refuse\\(Phrase\\.of)\\(\\s*\"(\\w+)\"");
    private static final Pattern OFFERED = Pattern.compile("\\.named\\(\"(\\w+[a-z])\"");
    private static final Pattern SKIPPED = Pattern.compile("\\.skipped\\(\"(\\w+)\"");
    /** What comes before the first comma: a code, or one of two. A refusal has texts of its own. */
    private static final Pattern TOLD =
            Pattern.compile("(?<!refuse\\()\\b(?:Phrase|Why)\\.of\\(([^,]*),|\\bitem\\(([^,]*),");

    private static final Pattern CODE = Pattern.compile("\"([a-z][a-z_]*[a-z])\"");
    /** What a page would show in English. Only a terminal prints lines that begin with "Sorry". */
    private static final Pattern UNCODED = Pattern.compile("\\b(?:say|print)\\(\\s*\"(?!Sorry: )[^\"]*\\w[^\"]*\"");
    /** What the page of the fitting does not repeat, as it has it elsewhere, or which only a terminal can use. */
    private static final Set<String> UNTOLD = Set.of(
            "caution",
            "step",
            "none_found",
            "order_unfit",
            "start",
            "heard_reason",
            "heard_open",
            "heard_state_by_hand",
            "heard_choose");
    /** Where the fitting, and what it is made of, speaks. */
    private static final List<String> SPEAKING = List.of(
            "tool/fit",
            "tool/survey",
            "tool/plan",
            "link",
            "broker/BrokerWords.java",
            "broker/FirstContact.java",
            "cli/SurveyedPrinter.java",
            "cli/FitReview.java");

    private static final Pattern NAMED = Pattern.compile("data-(?:say|label)=\"([\\w.]+)\"");
    private static final Pattern PLACE = Pattern.compile("\\{(\\w+)}");

    private static String text(String file) {
        try {
            return Files.readString(FOLDER.resolve(file));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** Its texts by code; several forms in one, as written there. */
    private static Map<String, String> table(String name) {
        Map<String, String> table = new LinkedHashMap<>();
        List<String> lines = text(name + ".js").lines().toList();
        for (String line : lines.subList(3, lines.size() - 1)) {
            if (!line.isEmpty()) {
                Matcher entry = LINE.matcher(line);
                assertTrue(entry.matches(), () -> name + " has a line of another form: " + line);
                assertEquals(null, table.put(entry.group(1), entry.group(2)), () -> name + " has twice " + line);
            }
        }
        return table;
    }

    private static Set<String> places(String text) {
        String words = text.replaceAll("\\b(one|many|other): ", "");
        return PLACE.matcher(words.startsWith("{ ") ? words.substring(2) : words)
                .results()
                .map(place -> place.group(1))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static List<String> scripts() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".js")
                            && !TABLES.contains(withoutOwn(name).replace(".js", "")))
                    .sorted()
                    .toList();
        }
    }

    private static String withoutOwn(String name) {
        return OWN.stream()
                .filter(name::startsWith)
                .findFirst()
                .map(own -> name.substring(own.length()))
                .orElse(name);
    }

    /** All codes, those that one page alone has among them. */
    private static Set<String> codes() {
        Set<String> codes = new TreeSet<>(table("english").keySet());
        for (String own : OWN) {
            Set<String> more = table(own + "english").keySet();
            assertTrue(more.stream().noneMatch(codes::contains), "a code is in one table alone");
            codes.addAll(more);
        }
        return codes;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "german",
                "spanish",
                "french",
                "chinese",
                "bench_german",
                "bench_spanish",
                "bench_french",
                "bench_chinese",
                "fit_german",
                "fit_spanish",
                "fit_french",
                "fit_chinese"
            })
    void everyLanguageHasTheSameCodesWithTheSameValues(String name) {
        String own = name.substring(0, name.length() - withoutOwn(name).length());
        Map<String, String> english = table(own + "english");
        Map<String, String> other = table(name);
        assertEquals(new ArrayList<>(english.keySet()), new ArrayList<>(other.keySet()), name);
        Map<String, Set<String>> differ = new TreeMap<>();
        english.forEach((code, text) -> {
            Set<String> mine = places(text);
            Set<String> theirs = places(other.get(code));
            boolean forms = text.startsWith("{") || other.get(code).startsWith("{");
            if (!mine.equals(theirs) && !(forms && Set.of("count").containsAll(theirs))) {
                differ.put(code, theirs);
            }
        });
        assertEquals(Map.of(), differ, name);
    }

    /** What a script makes of a word from the daemon, or of one of its own words, begins like some code. */
    @Test
    void whateverIsSaidHasATextAndEveryTextIsSaid() throws IOException {
        Set<String> codes = codes();
        StringBuilder all = new StringBuilder();
        for (String page : List.of("index", "shelf", "bench", "fit", "entry", "motion")) {
            all.append(text(page + ".html"));
        }
        for (String script : scripts()) {
            all.append(text(script));
        }
        Set<String> said = found(WHOLE, all);
        Set<String> begun = found(BEGUN, all);
        assertTrue(said.size() > 50 && begun.contains("state."), "the scripts have been read");
        Set<String> unsaid = new TreeSet<>(codes);
        unsaid.removeIf(code -> all.indexOf('"' + code + '"') >= 0);
        unsaid.removeIf(code -> begun.stream().anyMatch(code::startsWith));
        assertEquals(Set.of(), unsaid, "texts that nothing says");
        said.addAll(found(NAMED, all));
        said.removeIf(code -> codes.contains(code) || NO_CODE.matcher(code).matches());
        assertEquals(Set.of(), said, "said without a text");
        begun.removeIf(beginning -> codes.stream().anyMatch(code -> code.startsWith(beginning)));
        assertEquals(Set.of(), begun, "no text begins so");
    }

    /** What the fitting asks, offers and says by code, in its sources. */
    @Test
    void everyCodeOfTheFittingHasAText() throws IOException {
        String sources = sources();
        List<String> wanted = new ArrayList<>();
        found(ASKED, sources).forEach(code -> wanted.addAll(List.of("fit.q." + code, "fit.help." + code)));
        found(REFUSED, sources).forEach(code -> wanted.add("fit.no." + code));
        found(OFFERED, sources).forEach(code -> wanted.add("fit.o." + code));
        found(SKIPPED, sources).forEach(code -> wanted.add("fit.skip." + code));
        assertTrue(wanted.size() > 80, "the sources have been read");
        wanted.removeAll(table("fit_english").keySet());
        assertEquals(List.of(), wanted);
    }

    private static String sources() throws IOException {
        StringBuilder sources = new StringBuilder();
        for (String speaking : SPEAKING) {
            try (Stream<Path> files = Files.walk(Path.of("src/main/java/dev/lampwright", speaking))) {
                for (Path file : files.filter(Files::isRegularFile).toList()) {
                    sources.append(Files.readString(file));
                }
            }
        }
        return sources.toString();
    }

    /** Whatever the fitting, its controller, its broker and its survey say has a text in every language. */
    @Test
    void everythingThatTheFittingSaysHasAText() throws IOException {
        String sources = sources();
        Set<String> told = new TreeSet<>();
        TOLD.matcher(sources)
                .results()
                .map(found -> found.group(1) == null ? found.group(2) : found.group(1))
                .forEach(codes -> told.addAll(found(CODE, codes)));
        words(Role.values()).forEach(word -> told.add("role_" + word));
        words(Doing.values()).forEach(word -> told.add("doing_" + word));
        words(PrinterState.values()).forEach(word -> told.add("state_" + word));
        words(Verdict.Severity.values()).forEach(word -> told.add("verdict_" + word));
        assertTrue(told.size() > 120, told::toString);
        told.removeAll(UNTOLD);
        Set<String> codes = table("fit_english").keySet();
        told.removeIf(code -> codes.contains("fit.say." + code) || codes.contains("fit.q." + code));
        assertEquals(Set.of(), told);
        assertEquals(
                Set.of(),
                UNCODED.matcher(sources).results().map(MatchResult::group).collect(Collectors.toSet()));
    }

    private static Set<String> found(Pattern pattern, CharSequence text) {
        return pattern.matcher(text)
                .results()
                .map(found -> found.group(1))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** What the daemon may report in a word, and every reason for which it may refuse. */
    @Test
    void everyWordOfTheDaemonHasAText() {
        Set<String> codes = table("english").keySet();
        List<String> wanted = new ArrayList<>();
        words(PrinterState.values()).forEach(word -> wanted.add("state." + word));
        words(Silence.values()).forEach(word -> wanted.add("silence." + word));
        words(LinkState.values()).forEach(word -> wanted.add("link." + word));
        words(BrokerState.Phase.values()).forEach(word -> wanted.add("broker." + word));
        words(Reason.values()).forEach(word -> wanted.add("why." + word));
        Ask.words().forEach(word -> wanted.add("done." + word));
        wanted.removeIf(codes::contains);
        assertEquals(List.of(), wanted);
    }

    private static Stream<String> words(Enum<?>[] constants) {
        return Arrays.stream(constants).map(constant -> constant.name().toLowerCase(Locale.ROOT));
    }
}
