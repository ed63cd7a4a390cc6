package dev.lampwright.handbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every link in the documents leads somewhere, and every longer document begins with its contents. */
class LinksTest {
    private static final int SCREEN = 60;
    private static final int MOST_LINES_OF_THE_FRONT_PAGE = 150;

    private static List<Path> documents() {
        return Page.all().stream().map(Page::file).toList();
    }

    @ParameterizedTest
    @MethodSource("documents")
    void everyLinkLeadsSomewhere(Path file) {
        List<String> dead = new ArrayList<>();
        for (String target : Page.of(file).targets()) {
            if (!target.matches("[a-z]+:.*") && !leads(file, target)) {
                dead.add(target);
            }
        }
        assertEquals(List.of(), dead, file + " has links that lead nowhere");
    }

    private static boolean leads(Path from, String target) {
        String path = target.replaceFirst("#.*", "");
        Path to = path.isEmpty() ? from : from.resolveSibling(path).normalize();
        return Files.exists(to) && to.startsWith(Page.ROOT) && hasAnchor(to, target);
    }

    private static boolean hasAnchor(Path page, String target) {
        int hash = target.indexOf('#');
        return hash < 0
                || Page.of(page).titles().stream()
                        .anyMatch(title -> title.anchor().equals(target.substring(hash + 1)));
    }

    @ParameterizedTest
    @MethodSource("documents")
    void whatIsLongerThanAScreenBeginsWithItsContents(Path file) {
        Page page = Page.of(file);
        List<String> wanted = page.titles().stream()
                .filter(title -> title.level() == 2)
                .map(title -> title.text() + " #" + title.anchor())
                .toList();
        boolean isLong = page.text().lines().count() > SCREEN && wanted.size() > 2;
        if (isLong || !page.contents().isEmpty()) {
            assertEquals(wanted, page.contents(), file + ", the paragraph that begins with \"On this page:\"");
        }
    }

    @ParameterizedTest
    @MethodSource("documents")
    void hasOneTitle(Path file) {
        List<Page.Title> titles = Page.of(file).titles();
        assertEquals(1, titles.get(0).level(), file + " begins with its title");
        assertEquals(1, titles.stream().filter(title -> title.level() == 1).count(), file.toString());
    }

    @Test
    void theIndexNamesEveryPageOfTheHandbook() {
        Path index = Page.HANDBOOK.resolve("README.md");
        TreeSet<String> named = new TreeSet<>(Page.of(index).targets());
        Page.inHandbook().stream()
                .filter(page -> !page.equals(index))
                .forEach(page -> assertTrue(
                        named.contains(page.getFileName().toString()),
                        page.getFileName() + " is not in daemon/doc/README.md; add a row"));
    }

    @Test
    void theFrontPageStaysShort() {
        long lines = Page.of(Page.ROOT.resolve("README.md")).text().lines().count();
        assertTrue(lines <= MOST_LINES_OF_THE_FRONT_PAGE, "README.md has " + lines + " lines; move some to daemon/doc");
    }

    @Test
    void anchorsAreThoseOfTheUsualViewers() {
        assertEquals("survey---into-file", Page.anchor("survey --into FILE"));
        assertEquals("printercondition", Page.anchor("[[printer.condition]]"));
        assertEquals("1-packet", Page.anchor("1. Packet"));
        assertEquals("flashing-step-by-step", Page.anchor("Flashing, step by step"));
    }
}
