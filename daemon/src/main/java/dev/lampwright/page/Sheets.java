package dev.lampwright.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;

/**
 * The page's files, by path. The scripts, written as modules, are sent as one; {@code index.html} refers to files by their tag, so that a
 * browser keeps them for good and requests a new one when it changes.
 */
final class Sheets {
    private static final Map<String, String> TYPES = Map.of(
            "css", "text/css; charset=utf-8",
            "js", "text/javascript; charset=utf-8",
            "svg", "image/svg+xml",
            "png", "image/png",
            "webmanifest", "application/manifest+json");

    /** Path of the page with all rigs. */
    static final String SHELF = "/shelf.html";

    /** Path of the page on which lights are fitted. */
    static final String FIT = "/fit.html";

    /** Files that are sent unchanged. */
    private static final String[] FILES = {
        "icon.svg", "icon-192.png", "icon-512.png", "app.webmanifest", "page.css", "shelf.css", "bench.css", "fit.css"
    };

    /** Scripts made from modules; each may refer to earlier ones. */
    private static final String[] SCRIPTS = {"worker", "notices", "page", "shelf", "bench", "fit"};

    /** The words of the pages, in files of their own: a browser requests those of one language. */
    private static final String[] WORDS = {"english", "german", "spanish", "french", "chinese"};

    /** What the names of the files begin with that have the words of one page alone. */
    private static final String[] WORDS_OF = {"", "bench_", "fit_"};

    /**
     * What several pages have in them: what is in their heads, how a person with a token gets in, and whether flashing light is drawn as it
     * flashes.
     */
    private static final List<String> PARTS = List.of("head.html", "entry.html", "motion.html");

    private static final String NO_HANDBOOK = "<p id=\"handbook\" hidden>";

    private Sheets() {}

    /**
     * Creates all, so that a running page reads no files.
     *
     * @param handbook whether there is a handbook to link to
     */
    static Map<String, Sheet> all(boolean handbook) {
        Map<String, Sheet> sheets = new LinkedHashMap<>();
        for (String name : FILES) {
            String type = TYPES.get(name.substring(name.lastIndexOf('.') + 1));
            sheets.put("/" + name, Sheet.of(type, bytes(name)));
        }
        for (String page : WORDS_OF) {
            for (String language : WORDS) {
                String name = page + language + ".js";
                sheets.put("/" + name, Sheet.of(TYPES.get("js"), bytes(name)));
            }
        }
        for (String name : SCRIPTS) {
            String script = Bundle.of(name, module -> text(module + ".js"));
            sheets.put("/" + name + ".js", Sheet.of(TYPES.get("js"), tagged(script, sheets)));
        }
        Sheet shelf = html(page("shelf.html"), sheets);
        Sheet bench = html(page("bench.html"), sheets);
        Sheet fit = html(page("fit.html"), sheets);
        sheets.put("/", html(index(handbook), sheets));
        sheets.put(SHELF, shelf);
        sheets.put("/bench.html", bench);
        sheets.put(FIT, fit);
        return sheets;
    }

    private static Sheet html(String text, Map<String, Sheet> sheets) {
        return Sheet.of("text/html; charset=utf-8", tagged(text, sheets));
    }

    /** A page with the parts in it that it shares with others. */
    private static String page(String name) {
        String page = text(name);
        for (String part : PARTS) {
            page = page.replaceAll(" *<!-- " + part + " -->\n", Matcher.quoteReplacement(text(part)));
        }
        return page;
    }

    private static String index(boolean handbook) {
        String index = page("index.html");
        return handbook ? index.replace(NO_HANDBOOK, NO_HANDBOOK.replace(" hidden", "")) : index;
    }

    /** A text in which each file is referred to by its tag. */
    private static byte[] tagged(String text, Map<String, Sheet> sheets) {
        String tagged = text;
        for (Map.Entry<String, Sheet> sheet : sheets.entrySet()) {
            String name = sheet.getKey().substring(1);
            tagged = tagged.replace(
                    "\"" + name + "\"", "\"" + name + "?v=" + sheet.getValue().tag() + "\"");
        }
        return tagged.getBytes(StandardCharsets.UTF_8);
    }

    private static String text(String name) {
        return new String(bytes(name), StandardCharsets.UTF_8);
    }

    private static byte[] bytes(String name) {
        try (InputStream in = Sheets.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the page's file " + name + " is missing");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
