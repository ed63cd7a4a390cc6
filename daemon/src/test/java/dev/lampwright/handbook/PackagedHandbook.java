package dev.lampwright.handbook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.commonmark.ext.gfm.tables.TableBlock;
import org.commonmark.ext.gfm.tables.TableHead;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.CustomNode;
import org.commonmark.node.Heading;
import org.commonmark.node.Link;
import org.commonmark.node.Text;
import org.commonmark.renderer.html.AttributeProvider;
import org.commonmark.renderer.html.HtmlRenderer;

/**
 * The handbook as packaged: one folder with each page as text and as HTML, with the pictures, and with the front page, the controller's
 * page and the wire format among them. Links between pages are adapted; links to files that are not in the package become plain words.
 */
public final class PackagedHandbook {
    private static final Pattern TARGET = Pattern.compile("(?<=\\]\\()([^)#\\s]+)?(#[^)\\s]*)?(?=\\))");

    /** A link whose words have no brackets in them. */
    private static final Pattern LINK = Pattern.compile("(?<!!)\\[([^\\[\\]]+)\\]\\(([^)\\s]+)\\)");

    private static final String INDEX = "index";

    /** A file that pages link to, which goes into the folder too. */
    private static final String EXAMPLE = "daemon/src/main/resources/dev/lampwright/config/example.toml";

    private static final String EXAMPLE_COPY = "example.toml";

    private static final String FRAME = """
            <!DOCTYPE html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <title>%s · Lampwright</title>
            <link rel="stylesheet" href="handbook.css">
            </head>
            <body>
            <nav aria-label="Handbook"><a href="index.html">The handbook</a></nav>
            <main>
            %s</main>
            </body>
            </html>
            """;

    private final Map<String, String> names = new LinkedHashMap<>();
    private final Path folder;

    private PackagedHandbook(Path folder) {
        this.folder = folder;
        names.put("README.md", "front-page");
        names.put("firmware-notes/README.md", "controller");
        names.put("firmware-notes/wire.md", "wire");
        for (Path page : Page.inHandbook()) {
            String name = page.getFileName().toString().replace(".md", "");
            names.put("daemon/doc/" + page.getFileName(), name.equals("README") ? INDEX : name);
        }
    }

    /**
     * Writes it.
     *
     * @param args the folder to write to
     */
    public static void main(String[] args) throws IOException {
        write(Path.of(args[0]));
    }

    /** Writes it. */
    static void write(Path folder) throws IOException {
        new PackagedHandbook(Files.createDirectories(folder)).write();
    }

    private void write() throws IOException {
        for (Map.Entry<String, String> name : names.entrySet()) {
            Page page = Page.of(Page.ROOT.resolve(name.getKey()));
            copyPictures(page);
            Files.writeString(folder.resolve(name.getValue() + ".md"), withLinks(page, ".md"));
            Files.writeString(folder.resolve(name.getValue() + ".html"), html(page));
        }
        Files.copy(Page.ROOT.resolve(EXAMPLE), folder.resolve(EXAMPLE_COPY), StandardCopyOption.REPLACE_EXISTING);
        try (var style = PackagedHandbook.class.getResourceAsStream("handbook.css")) {
            Files.copy(style, folder.resolve("handbook.css"), StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private void copyPictures(Page page) throws IOException {
        for (String target : new TreeSet<>(page.targets())) {
            if (isPicture(target)) {
                Path copy = folder.resolve(inFolder(target));
                Files.createDirectories(copy.getParent());
                Files.copy(page.file().resolveSibling(target), copy, StandardCopyOption.REPLACE_EXISTING);
            }
        }
    }

    private static boolean isPicture(String target) {
        return target.matches(".*\\.(png|gif|svg)") && !target.contains(":");
    }

    /** Pictures of all pages are below the handbook's own folder. */
    private static String inFolder(String target) {
        return target.replaceFirst("^(\\.\\./)*(daemon/(doc/)?)?", "");
    }

    /** The text with its links adapted, except in code blocks, where the same characters mean something else. */
    private String withLinks(Page page, String ending) {
        StringBuilder text = new StringBuilder();
        boolean inCode = false;
        for (String line : page.text().lines().toList()) {
            inCode ^= line.startsWith("```");
            text.append(inCode ? line : withLinks(page, line, ending)).append('\n');
        }
        return text.toString();
    }

    private String withLinks(Page page, String line, String ending) {
        String living = LINK.matcher(line)
                .replaceAll(link -> Matcher.quoteReplacement(
                        target(page, link.group(2), ending).isPresent() ? link.group() : link.group(1)));
        return TARGET.matcher(living)
                .replaceAll(found -> Matcher.quoteReplacement(
                        target(page, found.group(), ending).orElse(found.group())));
    }

    /** The target of a link in the package; empty if the package does not have it. */
    private Optional<String> target(Page page, String target, String ending) {
        int hash = target.indexOf('#');
        String path = hash < 0 ? target : target.substring(0, hash);
        String anchor = hash < 0 ? "" : target.substring(hash);
        if (target.matches("[a-z]+:.*") || path.isEmpty()) {
            return Optional.of(target);
        }
        if (isPicture(path)) {
            return Optional.of(inFolder(path));
        }
        String to = Page.of(page.file().resolveSibling(path).normalize(), "").name();
        if (names.containsKey(to)) {
            return Optional.of(names.get(to) + ending + anchor);
        }
        String index = to + "/README.md";
        if (names.containsKey(index)) {
            return Optional.of(names.get(index) + ending + anchor);
        }
        return to.equals(EXAMPLE) ? Optional.of(EXAMPLE_COPY) : Optional.empty();
    }

    private String html(Page page) {
        Page linked = Page.of(page.file(), page.text());
        linked.tree().accept(new AbstractVisitor() {
            @Override
            public void visit(Link link) {
                fit(page, link);
            }

            /** Markdown cannot write a table without a head: an empty one is for layout only, and a screen reader should not read it. */
            @Override
            public void visit(CustomNode node) {
                if (node instanceof TableHead && Page.words(node).isBlank()) {
                    node.unlink();
                } else {
                    super.visit(node);
                }
            }
        });
        String title = page.titles().get(0).text();
        return FRAME.formatted(title, renderer(page).render(linked.tree()));
    }

    private void fit(Page page, Link link) {
        Optional<String> target = target(page, link.getDestination(), ".html");
        if (target.isPresent()) {
            link.setDestination(target.get());
        } else {
            link.insertBefore(new Text(Page.words(link)));
            link.unlink();
        }
    }

    private static HtmlRenderer renderer(Page page) {
        var anchors = page.titles().iterator();
        return HtmlRenderer.builder()
                .extensions(List.of(TablesExtension.create()))
                .attributeProviderFactory(context -> (AttributeProvider) (node, tag, attributes) -> {
                    if (node instanceof Heading) {
                        attributes.put("id", anchors.next().anchor());
                    } else if (tag.equals("img")) {
                        attributes.computeIfPresent("src", (key, target) -> inFolder(target));
                    } else if (tag.equals("th")) {
                        attributes.put("scope", "col");
                    } else if (node instanceof TableBlock && !(node.getFirstChild() instanceof TableHead)) {
                        attributes.put("role", "presentation");
                    }
                })
                .build();
    }
}
