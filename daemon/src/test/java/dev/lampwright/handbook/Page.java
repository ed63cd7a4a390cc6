package dev.lampwright.handbook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Code;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.Heading;
import org.commonmark.node.Image;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.Paragraph;
import org.commonmark.node.SoftLineBreak;
import org.commonmark.node.Text;
import org.commonmark.parser.Parser;

/**
 * A document in Markdown, parsed by CommonMark's rules with tables.
 *
 * @param file where it is
 * @param text all of it
 * @param tree its structure
 */
public record Page(Path file, String text, Node tree) {
    /** The repository's folder. */
    public static final Path ROOT = Path.of("..").toAbsolutePath().normalize();

    /** The handbook's folder. */
    public static final Path HANDBOOK = ROOT.resolve("daemon/doc");

    private static final Parser PARSER =
            Parser.builder().extensions(List.of(TablesExtension.create())).build();

    /**
     * A heading.
     *
     * @param level 1 for the page's title
     * @param text without markup
     * @param anchor what follows the # in a link to it
     */
    public record Title(int level, String text, String anchor) {}

    /**
     * A block of code.
     *
     * @param language what follows the fence; empty for none
     */
    public record Block(String language, String text) {}

    /** Reads a file. */
    public static Page of(Path file) {
        try {
            return of(file, Files.readString(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Page of(Path file, String text) {
        return new Page(file, text, PARSER.parse(text));
    }

    /** All documents that users and developers read: the front page, the handbook, the developers' page, the controller's pages. */
    public static List<Page> all() {
        List<Path> files = new ArrayList<>(List.of(
                ROOT.resolve("README.md"),
                ROOT.resolve("DEVELOPERS.md"),
                ROOT.resolve("firmware-notes/README.md"),
                ROOT.resolve("firmware-notes/wire.md")));
        files.addAll(inHandbook());
        return files.stream().map(Page::of).toList();
    }

    /** The handbook's files, by name. */
    static List<Path> inHandbook() {
        try (Stream<Path> files = Files.list(HANDBOOK)) {
            return files.filter(file -> file.toString().endsWith(".md"))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Its name from the repository's folder on. */
    public String name() {
        return ROOT.relativize(file.toAbsolutePath().normalize()).toString();
    }

    /** Its headings, in order. */
    public List<Title> titles() {
        List<Title> titles = new ArrayList<>();
        Map<String, Integer> seen = new HashMap<>();
        tree.accept(new AbstractVisitor() {
            @Override
            public void visit(Heading heading) {
                String text = words(heading);
                String anchor = anchor(text);
                int before = seen.merge(anchor, 1, Integer::sum) - 1;
                titles.add(new Title(heading.getLevel(), text, before == 0 ? anchor : anchor + "-" + before));
            }
        });
        return titles;
    }

    /** The targets of links and pictures, in order. */
    public List<String> targets() {
        List<String> targets = new ArrayList<>();
        tree.accept(new AbstractVisitor() {
            @Override
            public void visit(Link link) {
                targets.add(link.getDestination());
                visitChildren(link);
            }

            @Override
            public void visit(Image image) {
                targets.add(image.getDestination());
                visitChildren(image);
            }
        });
        return targets;
    }

    /** Its blocks of code, in order. */
    public List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        tree.accept(new AbstractVisitor() {
            @Override
            public void visit(FencedCodeBlock block) {
                blocks.add(new Block(block.getInfo(), block.getLiteral()));
            }
        });
        return blocks;
    }

    /** Code within lines of text. */
    public List<String> inlineCode() {
        List<String> code = new ArrayList<>();
        tree.accept(new AbstractVisitor() {
            @Override
            public void visit(Code found) {
                code.add(found.getLiteral());
            }
        });
        return code;
    }

    /** The targets of its table of contents; empty if it has none. */
    List<String> contents() {
        for (Node node = tree.getFirstChild(); node != null; node = node.getNext()) {
            if (node instanceof Paragraph && words(node).startsWith("On this page:")) {
                return linksIn(node);
            }
        }
        return List.of();
    }

    private static List<String> linksIn(Node node) {
        List<String> links = new ArrayList<>();
        for (Node part = node.getFirstChild(); part != null; part = part.getNext()) {
            if (part instanceof Link link) {
                links.add(words(link) + " " + link.getDestination());
            }
        }
        return links;
    }

    /** The text of a node without markup. */
    static String words(Node node) {
        StringBuilder words = new StringBuilder();
        node.accept(new AbstractVisitor() {
            @Override
            public void visit(Text text) {
                words.append(text.getLiteral());
            }

            @Override
            public void visit(Code code) {
                words.append(code.getLiteral());
            }

            @Override
            public void visit(SoftLineBreak soft) {
                words.append(' ');
            }
        });
        return words.toString();
    }

    /**
     * The anchor that the usual viewers of Markdown give a heading: in small letters, blanks as hyphens, and nothing else but letters, digits,
     * hyphens and low lines (common practice, no standard).
     */
    static String anchor(String heading) {
        return heading.toLowerCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{N}_ -]", "")
                .replace(' ', '-');
    }
}
