package dev.lampwright.handbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The handbook in the package: every page as text and as HTML, and no dead link once it is installed. */
class PackagedHandbookTest {
    private static final Pattern REFERENCE = Pattern.compile("(?:href|src)=\"([^\"]+)\"");

    @TempDir
    private static Path folder;

    @BeforeAll
    static void write() throws IOException {
        PackagedHandbook.write(folder);
    }

    private static List<Path> files(String ending) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(ending)).toList();
        }
    }

    @Test
    void hasEveryPageTwice() throws IOException {
        assertEquals(Page.inHandbook().size() + 3, files(".md").size());
        for (Path text : files(".md")) {
            Path html = Path.of(text.toString().replace(".md", ".html"));
            assertTrue(Files.readString(html).startsWith("<!DOCTYPE html>\n<html lang=\"en\">"), html.toString());
        }
    }

    @Test
    void noLinkInTheHtmlLeadsNowhere() throws IOException {
        List<String> dead = new ArrayList<>();
        for (Path page : files(".html")) {
            Matcher reference = REFERENCE.matcher(Files.readString(page));
            while (reference.find()) {
                if (!leads(page, reference.group(1))) {
                    dead.add(page.getFileName() + ": " + reference.group(1));
                }
            }
        }
        assertEquals(List.of(), dead);
    }

    /** A screen reader reads the heads of a table with each cell, so an empty one only takes time. */
    @Test
    void noTableHasAnEmptyHead() throws IOException {
        for (Path page : files(".html")) {
            String text = Files.readString(page);
            assertFalse(text.contains("<th scope=\"col\"></th>"), page.toString());
            assertEquals(
                    text.split("<table>", -1).length,
                    text.split("<thead>", -1).length,
                    page + ": a table without a head is for layout only");
        }
    }

    private static boolean leads(Path page, String target) throws IOException {
        if (target.startsWith("https://")) {
            return true;
        }
        String[] parts = target.split("#", 2);
        Path to = parts[0].isEmpty() ? page : page.resolveSibling(parts[0]);
        return Files.isRegularFile(to)
                && (parts.length == 1 || Files.readString(to).contains(" id=\"" + parts[1] + "\""));
    }

    @Test
    void noLinkInTheTextLeadsNowhere() throws IOException {
        List<String> dead = new ArrayList<>();
        for (Path text : files(".md")) {
            Page.of(text).targets().stream()
                    .filter(target -> !target.matches("https://.*|#.*"))
                    .filter(target -> !Files.isRegularFile(text.resolveSibling(target.replaceFirst("#.*", ""))))
                    .forEach(target -> dead.add(text.getFileName() + ": " + target));
        }
        assertEquals(List.of(), dead);
    }

    @Test
    void linksInTheTextLeadToTextThatIsThere() throws IOException {
        String index = Files.readString(folder.resolve("index.md"));
        assertTrue(index.contains("](controller.md)"), index);
        assertTrue(index.contains("](front-page.md)"), index);
        String file = Files.readString(folder.resolve("file.md"));
        assertTrue(file.contains("](example.toml)"), file);
    }

    @Test
    void fetchesNothingFromElsewhere() throws IOException {
        for (Path page : files(".html")) {
            assertTrue(!Files.readString(page).matches("(?s).*src=\"https?:.*"), page.toString());
        }
    }
}
