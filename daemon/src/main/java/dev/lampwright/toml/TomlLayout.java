package dev.lampwright.toml;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.stream.Stream;

/** Where everything is in a valid text. */
final class TomlLayout implements TomlMarks {
    private final String text;
    private final TomlPart root = new TomlPart(null, "", TomlPart.Kind.SECTION);
    private final List<TomlPart> sections = new ArrayList<>();
    private final Deque<TomlPart> open = new ArrayDeque<>();
    private TomlPart section = root;
    private TomlPart next;
    private TomlPart last;
    private int keyFrom;
    private List<Integer> nameEnds = new ArrayList<>();

    private TomlLayout(String text) {
        this.text = text;
        sections.add(root);
    }

    /**
     * Finds where everything is.
     *
     * @param text valid TOML
     */
    static TomlLayout of(String text) {
        TomlLayout layout = new TomlLayout(text);
        Toml.read(text, layout);
        return layout;
    }

    TomlPart root() {
        return root;
    }

    /** What is at a path; null if there is nothing. */
    TomlPart find(List<String> path) {
        TomlPart part = root;
        for (String name : path) {
            part = part == null ? null : part.find(name);
        }
        return part;
    }

    /** The headers of a part and of those within it, in the order of the text. */
    List<TomlPart> sectionsWithin(TomlPart part) {
        return sections.stream().filter(each -> each.isWithin(part)).toList();
    }

    /** The values with keys that are within a part, in the order of the text. */
    List<TomlPart> pairsWithin(TomlPart part) {
        return sections.stream()
                .flatMap(TomlLayout::pairs)
                .filter(each -> each.isWithin(part))
                .toList();
    }

    private static Stream<TomlPart> pairs(TomlPart container) {
        return container.pairs.stream().flatMap(pair -> Stream.concat(Stream.of(pair), values(pair)));
    }

    private static Stream<TomlPart> values(TomlPart value) {
        return Stream.concat(pairs(value), value.elements.stream().flatMap(TomlLayout::values));
    }

    @Override
    public void keyBegins(int at) {
        keyFrom = at;
        nameEnds = new ArrayList<>();
    }

    @Override
    public void nameEnds(int at) {
        nameEnds.add(at);
    }

    @Override
    public void header(List<String> names, boolean element, int from, int to) {
        TomlPart around = walk(root, names, TomlPart.Kind.ON_THE_WAY);
        String name = names.get(names.size() - 1);
        if (element) {
            TomlPart array =
                    around.inner.computeIfAbsent(name, any -> new TomlPart(around, name, TomlPart.Kind.SECTIONS));
            section = new TomlPart(array, Integer.toString(array.elements.size()), TomlPart.Kind.SECTION);
            array.elements.add(section);
        } else {
            section = around.inner.computeIfAbsent(name, any -> new TomlPart(around, name, TomlPart.Kind.SECTION));
            section.kind = TomlPart.Kind.SECTION;
        }
        section.from = from;
        section.to = to;
        section.header = new TomlPart.Key(keyFrom, nameEnds);
        sections.add(section);
    }

    /** The table of the last of the names; missing ones are created. */
    private static TomlPart walk(TomlPart from, List<String> names, TomlPart.Kind made) {
        TomlPart part = from;
        for (String name : names.subList(0, names.size() - 1)) {
            TomlPart around = part;
            TomlPart there = part.inner.computeIfAbsent(name, any -> new TomlPart(around, name, made));
            part = there.kind == TomlPart.Kind.SECTIONS ? there.elements.get(there.elements.size() - 1) : there;
        }
        return part;
    }

    @Override
    public void pair(List<String> names) {
        TomlPart container = open.isEmpty() ? section : open.peek();
        TomlPart around = walk(container, names, TomlPart.Kind.DOTTED);
        next = new TomlPart(around, names.get(names.size() - 1), TomlPart.Kind.SCALAR);
        next.key = new TomlPart.Key(keyFrom, nameEnds);
        around.inner.put(next.name, next);
        container.pairs.add(next);
    }

    @Override
    public void valueBegins(int at) {
        TomlPart part = next == null ? element(open.peek()) : next;
        next = null;
        part.from = at;
        part.kind = text.charAt(at) == '{'
                ? TomlPart.Kind.BRACES
                : text.charAt(at) == '[' ? TomlPart.Kind.BRACKETS : TomlPart.Kind.SCALAR;
        open.push(part);
    }

    private static TomlPart element(TomlPart array) {
        TomlPart element = new TomlPart(array, Integer.toString(array.elements.size()), TomlPart.Kind.SCALAR);
        array.elements.add(element);
        return element;
    }

    @Override
    public void valueEnds(int at) {
        last = open.pop();
        last.to = at;
    }

    @Override
    public void comma(int at) {
        last.comma = at;
    }
}
