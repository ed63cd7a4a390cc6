package dev.lampwright.toml;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Changes values of a TOML text and leaves everything else unchanged, byte for byte: comments, order, empty lines, line ends, indentation,
 * spelling. Paths are those of {@link TomlDocument}: names from the outermost table on, elements of arrays by their index.
 *
 * <p>A new value goes where others of its table are: below their header, after dotted keys with the same beginning, into the same braces. A
 * new table gets a header if its neighbours have one, otherwise braces. Every change is read back: one that would touch another value is
 * refused, and the text stays unchanged.
 */
public final class TomlEditor {
    private static final String BYTE_ORDER_MARK = "\uFEFF";

    /** An element that no array has. */
    private static final String NOTHING = "-";

    private final String mark;
    private final String newline;
    private String text;
    private TomlLayout layout;
    private Map<String, Object> values;

    private TomlEditor(String mark, String text) {
        this.mark = mark;
        this.text = text;
        newline = TomlLines.end(text);
        layout = TomlLayout.of(text);
        values = Toml.read(text).values();
    }

    /**
     * Starts editing.
     *
     * @param text valid TOML, possibly after a byte order mark, which stays
     * @return an editor
     * @throws IllegalArgumentException if the text is not valid
     */
    public static TomlEditor of(String text) {
        String mark = text.startsWith(BYTE_ORDER_MARK) ? BYTE_ORDER_MARK : "";
        String unmarked = text.substring(mark.length());
        List<TomlMistake> mistakes = Toml.read(unmarked).mistakes();
        if (!mistakes.isEmpty()) {
            TomlMistake first = mistakes.get(0);
            throw new IllegalArgumentException("line " + first.line() + ": " + first.what());
        }
        return new TomlEditor(mark, unmarked);
    }

    /**
     * The current text.
     *
     * @return valid TOML
     */
    public String text() {
        return mark + text;
    }

    /**
     * What is at a path.
     *
     * @param path names from the outermost table on
     * @return the value, of a kind listed at {@link TomlDocument#values}; empty if there is none
     */
    public Optional<Object> get(List<String> path) {
        return TomlValues.at(values, path);
    }

    /**
     * Gives a key a value. In an existing table or array, only what differs is changed. A value that is already there is not written again.
     *
     * @param path one name or more; missing tables are created; the index after the last of an array appends to it
     * @param value of a kind listed at {@link TomlDocument#values}
     * @throws IllegalArgumentException if the path leads through a value that contains nothing, or beyond an array's end
     */
    public void set(List<String> path, Object value) {
        require(path);
        change(path, path, () -> put(path, value));
        if (!get(path).map(now -> TomlValues.same(now, value)).orElse(false)) {
            throw new IllegalStateException("the editor has written another value at " + path);
        }
    }

    /**
     * Removes a value, a table or an element of an array. The comment after a value goes with its line, comments above stay. A table or an
     * array that exists only through its contents goes with the last of them.
     *
     * @param path one name or more; nothing happens if it does not exist
     */
    public void remove(List<String> path) {
        require(path);
        List<String> around = path.subList(0, path.size() - 1);
        boolean element = get(around).filter(List.class::isInstance).isPresent();
        change(path, element ? within(around, NOTHING) : path, () -> cut(path));
    }

    /**
     * Inserts an element into an array.
     *
     * @param array path of an existing array
     * @param index where it goes, 0 to the array's length
     * @param value the element
     * @throws IllegalArgumentException if there is no such array, or no such position in it, or if it consists of headers and the value is
     *     not a table
     */
    public void insert(List<String> array, int index, Object value) {
        TomlPart part = layout.find(array);
        if (part == null || !part.isArray() || index < 0 || index > part.elements.size()) {
            throw new IllegalArgumentException("no array has a place " + index + " at " + array);
        }
        change(array, array, () -> insertInto(part, index, value));
    }

    /**
     * Adds comment lines directly above a key or a header.
     *
     * @param path of something that has its own line; otherwise nothing happens
     * @param comments lines without their hash
     */
    public void comment(List<String> path, List<String> comments) {
        lineOf(path).ifPresent(begin -> become(new TomlInserts(text, newline).comments(begin, comments)));
    }

    /**
     * The comment after a value on its line.
     *
     * @param path of a value with its own line
     * @return the comment with its hash; empty if there is none
     */
    public String behind(List<String> path) {
        TomlPart part = layout.find(path);
        return part == null || part.key == null || part.container().kind != TomlPart.Kind.SECTION
                ? ""
                : text.substring(part.to, new TomlLines(text).after(part.to)).strip();
    }

    /**
     * The text of a table with a header of its own: its comments above, the header, and all headers within it.
     *
     * @param path of the table
     * @return whole lines, as they are; empty if the table has no header
     */
    public Optional<String> section(List<String> path) {
        TomlPart part = layout.find(path);
        if (part == null || part.around == null || part.kind != TomlPart.Kind.SECTION) {
            return Optional.empty();
        }
        TomlLines lines = new TomlLines(text);
        TomlCuts cuts = new TomlCuts(text);
        StringBuilder all = new StringBuilder();
        int end = -1;
        for (TomlPart each : layout.sectionsWithin(part)) {
            int begin = lines.commentsAbove(lines.begin(each.from));
            boolean next = end >= 0 && text.substring(end, begin).isBlank();
            all.append(text, next ? end : begin, cuts.endOf(each));
            end = cuts.endOf(each);
        }
        return Optional.of(all.toString());
    }

    /**
     * The comment lines directly above a key or a header.
     *
     * @param path of something that has its own line
     * @return lines without hash and surrounding blanks; empty if there are none
     */
    public List<String> comments(List<String> path) {
        TomlLines lines = new TomlLines(text);
        List<String> comments = new ArrayList<>();
        int end = lineOf(path).orElse(0);
        for (int at = lines.commentsAbove(end); at < end; at = lines.after(at)) {
            comments.add(
                    text.substring(at, lines.after(at)).strip().substring(1).strip());
        }
        return comments;
    }

    /**
     * Gives a value another name in its place: in its headers, in its own key, and in dotted keys that lead through it. Nothing else of the
     * text changes.
     *
     * @param path of an existing value with a name
     * @param name what to call it
     * @throws IllegalArgumentException if there is no such value, it has no name, or there is one of that name already
     */
    public void rename(List<String> path, String name) {
        TomlPart part = layout.find(path);
        List<String> around = path.isEmpty() ? path : path.subList(0, path.size() - 1);
        if (part == null || part.around == null || part.around.isArray() || layout.find(within(around, name)) != null) {
            throw new IllegalArgumentException(path + " cannot be renamed to " + name);
        }
        Object value = get(path).orElseThrow();
        Object others = TomlValues.without(values, path);
        String before = text;
        become(new TomlNames(text, layout).renamed(part, name));
        boolean right = Toml.read(text).mistakes().isEmpty()
                && TomlValues.same(others, TomlValues.without(values, within(around, name)))
                && get(within(around, name))
                        .map(now -> TomlValues.same(now, value))
                        .orElse(false);
        if (!right) {
            become(before);
            throw new IllegalStateException("the editor would have changed more than " + path);
        }
    }

    /**
     * Adds sections after those of a table, or at the end if there are none, with an empty line between.
     *
     * @param table the table, such as the one that the new sections are in
     * @param sections TOML with a header before its first key, and any comments; its line ends become those of the text
     * @throws IllegalStateException if the text already has some of it or would not be valid with it; nothing has changed then
     */
    public void append(List<String> table, String sections) {
        String before = text;
        String lines = sections.strip().replace("\r\n", "\n").replace("\n", newline);
        TomlPart part = layout.find(table);
        List<TomlPart> neighbours = part == null ? List.of() : layout.sectionsWithin(part);
        become(new TomlInserts(text, newline).sectionBehind(neighbours.isEmpty() ? null : last(neighbours), lines));
        if (!Toml.read(text).mistakes().isEmpty()) {
            become(before);
            throw new IllegalStateException("the sections do not fit the rest of the file");
        }
    }

    /**
     * Removes comment lines directly above a key or a header.
     *
     * @param path of something that has its own line; otherwise nothing happens
     * @param beginning the beginning of the lines to remove, after hash and blanks
     */
    public void uncomment(List<String> path, String beginning) {
        TomlLines lines = new TomlLines(text);
        Optional<Integer> end = lineOf(path);
        if (end.isEmpty()) {
            return;
        }
        StringBuilder kept = new StringBuilder();
        int from = lines.commentsAbove(end.get());
        for (int at = from; at < end.get(); at = lines.after(at)) {
            String line = text.substring(at, lines.after(at));
            boolean goes = line.strip().substring(1).strip().startsWith(beginning);
            kept.append(goes ? "" : line);
        }
        become(text.substring(0, from) + kept + text.substring(end.get()));
    }

    /** Where the line of a key or a header begins, with nothing before it. */
    private Optional<Integer> lineOf(List<String> path) {
        TomlPart part = layout.find(path);
        if (part == null || part.around == null) {
            return Optional.empty();
        }
        if (part.key != null && part.container().kind == TomlPart.Kind.SECTION) {
            return Optional.of(new TomlLines(text).begin(part.key.from()));
        }
        return part.kind == TomlPart.Kind.SECTION
                ? Optional.of(new TomlLines(text).begin(part.from))
                : Optional.empty();
    }

    private static void require(List<String> path) {
        if (path.isEmpty()) {
            throw new IllegalArgumentException("the outermost table has no key");
        }
    }

    /** Makes a change, or none at all if it would change more than is at a path. */
    private void change(List<String> path, List<String> mayVanish, Runnable change) {
        String before = text;
        Object others = TomlValues.without(values, path);
        try {
            change.run();
        } catch (IllegalArgumentException e) {
            become(before);
            throw e;
        }
        boolean right =
                Toml.read(text).mistakes().isEmpty() && TomlValues.same(others, TomlValues.without(values, mayVanish));
        if (!right) {
            become(before);
            throw new IllegalStateException("the editor would have changed more than " + path);
        }
    }

    private void become(String next) {
        text = next;
        layout = TomlLayout.of(next);
        values = Toml.read(next).values();
    }

    private void put(List<String> path, Object value) {
        TomlPart part = layout.find(path);
        if (part == null) {
            add(path, value);
        } else if (!TomlValues.same(get(path).orElseThrow(), value)) {
            replace(path, part, value);
        }
    }

    private void replace(List<String> path, TomlPart part, Object value) {
        boolean madeByContents = part.kind == TomlPart.Kind.ON_THE_WAY || part.kind == TomlPart.Kind.DOTTED;
        if (value instanceof Map<?, ?> table && part.isTable() && !(madeByContents && table.isEmpty())) {
            table.forEach((name, inner) -> put(within(path, name), inner));
            List.copyOf(layout.find(path).inner.keySet()).stream()
                    .filter(name -> !table.containsKey(name))
                    .forEach(name -> cut(within(path, name)));
        } else if (value instanceof List<?> array && part.isArray() && fits(part, array)) {
            replaceElements(path, array);
        } else if (part.isLiteral()) {
            become(new TomlInserts(text, newline).replace(part, written(part, value)));
        } else if (part.around.kind == TomlPart.Kind.SECTIONS) {
            throw new IllegalArgumentException("headers make the array at " + path + ": its elements are tables");
        } else {
            cut(path);
            add(path, value);
        }
    }

    /** Text in single quotes stays that way if possible. */
    private String written(TomlPart part, Object value) {
        return value instanceof String words && text.charAt(part.from) == '\''
                ? TomlText.literal(words)
                : TomlText.of(value);
    }

    private static boolean fits(TomlPart array, List<?> elements) {
        return array.kind == TomlPart.Kind.BRACKETS || (!elements.isEmpty() && areTables(elements));
    }

    private static boolean areTables(List<?> elements) {
        return elements.stream().allMatch(each -> each instanceof Map);
    }

    /** Leaves identical elements at the beginning and at the end alone. */
    private void replaceElements(List<String> path, List<?> wanted) {
        List<?> now = (List<?>) get(path).orElseThrow();
        int least = Math.min(now.size(), wanted.size());
        int first = 0;
        while (first < least && TomlValues.same(now.get(first), wanted.get(first))) {
            first++;
        }
        int last = 0;
        while (last < least - first
                && TomlValues.same(now.get(now.size() - 1 - last), wanted.get(wanted.size() - 1 - last))) {
            last++;
        }
        int changed = least - first - last;
        for (int i = first; i < first + changed; i++) {
            put(within(path, i), wanted.get(i));
        }
        for (int i = first + changed; i < wanted.size() - last; i++) {
            insertInto(layout.find(path), i, wanted.get(i));
        }
        for (int i = now.size() - last - 1; i >= first + changed; i--) {
            if (now.size() > wanted.size()) {
                cut(within(path, i));
            }
        }
    }

    private void insertInto(TomlPart array, int index, Object value) {
        if (array.kind == TomlPart.Kind.BRACKETS) {
            become(new TomlInserts(text, newline).element(array, index, TomlText.of(value)));
            return;
        }
        if (!(value instanceof Map<?, ?> table)) {
            throw new IllegalArgumentException("headers make this array: its elements are tables");
        }
        String header = "[[" + TomlText.key(array.headerNames()) + "]]";
        TomlInserts inserts = new TomlInserts(text, newline);
        become(
                index < array.elements.size()
                        ? inserts.sectionAbove(array.elements.get(index), header, table)
                        : inserts.sectionBehind(last(layout.sectionsWithin(array)), header, table));
    }

    private static <T> T last(List<T> some) {
        return some.get(some.size() - 1);
    }

    private void add(List<String> path, Object value) {
        int depth = path.size() - 1;
        while (layout.find(path.subList(0, depth)) == null) {
            depth--;
        }
        TomlPart there = layout.find(path.subList(0, depth));
        List<String> rest = path.subList(depth, path.size());
        if (there.isArray() && TomlPart.index(rest.get(0)) == there.elements.size()) {
            insertInto(there, there.elements.size(), nested(rest.subList(1, rest.size()), value));
        } else if (there.isTable()) {
            addTo(there, rest, value);
        } else {
            throw new IllegalArgumentException(
                    path + " cannot be added: " + path.subList(0, depth) + " is not a table");
        }
    }

    private static Object nested(List<String> names, Object value) {
        Object nested = value;
        for (int i = names.size() - 1; i >= 0; i--) {
            nested = Map.of(names.get(i), nested);
        }
        return nested;
    }

    private void addTo(TomlPart table, List<String> rest, Object value) {
        String pair = TomlText.key(rest) + " = " + TomlText.of(value);
        TomlInserts inserts = new TomlInserts(text, newline);
        if (table.kind == TomlPart.Kind.BRACES) {
            become(inserts.pairInBraces(table, pair));
        } else if (table.kind == TomlPart.Kind.DOTTED) {
            become(behindDotted(table, pair));
        } else if (getsHeader(table, rest, value)) {
            addSections(table, rest, value);
        } else if (table.kind == TomlPart.Kind.SECTION) {
            become(inserts.pairInSection(table, TomlText.pair(rest, value, newline), firstHeader()));
        } else {
            addSection(table, Map.of(rest.get(0), value));
        }
    }

    private String behindDotted(TomlPart table, String pair) {
        TomlPart before = last(pairsOf(table));
        int names = before.key.nameEnds().size();
        for (TomlPart part = before; part != table; part = part.around) {
            names--;
        }
        return new TomlInserts(text, newline).pairBehind(before, names, pair);
    }

    private TomlPart firstHeader() {
        List<TomlPart> sections = layout.sectionsWithin(layout.root());
        return sections.size() > 1 ? sections.get(1) : null;
    }

    /** Whether a new value is a table that gets a header, or is in one that does. */
    private boolean getsHeader(TomlPart table, List<String> rest, Object value) {
        boolean holds =
                value instanceof Map || (value instanceof List<?> array && !array.isEmpty() && areTables(array));
        boolean among = table.around == null
                || table.kind == TomlPart.Kind.ON_THE_WAY
                || table.inner.values().stream().anyMatch(TomlPart::hasHeaders);
        return among && (holds || rest.size() > 1);
    }

    private void addSections(TomlPart table, List<String> rest, Object value) {
        List<String> names = new ArrayList<>(table.headerNames());
        names.addAll(rest);
        TomlPart before = table.around == null ? null : last(layout.sectionsWithin(table));
        TomlInserts inserts = new TomlInserts(text, newline);
        if (value instanceof Map<?, ?> pairs) {
            become(inserts.sectionBehind(before, "[" + TomlText.key(names) + "]", pairs));
        } else if (value instanceof List<?> array && !array.isEmpty() && areTables(array)) {
            become(inserts.sectionBehind(before, "[[" + TomlText.key(names) + "]]", (Map<?, ?>) array.get(0)));
            List<String> path = within(pathOf(table), rest);
            array.stream().skip(1).forEach(each -> {
                TomlPart made = layout.find(path);
                insertInto(made, made.elements.size(), each);
            });
        } else {
            String header = "[" + TomlText.key(names.subList(0, names.size() - 1)) + "]";
            become(inserts.sectionBehind(before, header, Map.of(last(rest), value)));
        }
    }

    /** Gives a table its own header if so far it exists only through headers within it. */
    private void addSection(TomlPart table, Map<String, Object> pairs) {
        String header = "[" + TomlText.key(table.headerNames()) + "]";
        become(new TomlInserts(text, newline)
                .sectionAbove(layout.sectionsWithin(table).get(0), header, pairs));
    }

    /** Removes what is at a path; of several parts the last first, so that the others keep their paths until they are removed. */
    private void cut(List<String> path) {
        boolean more = layout.find(path) != null;
        while (more) {
            TomlPart part = layout.find(path);
            List<TomlPart> sections = layout.sectionsWithin(part);
            TomlCuts cuts = new TomlCuts(text);
            if (!sections.isEmpty()) {
                become(cuts.section(last(sections)));
            } else if (part.isLiteral() && part.key == null) {
                become(cuts.element(part));
            } else {
                become(cuts.pair(part.isLiteral() ? part : last(pairsOf(part))));
            }
            boolean element = part.around.isArray() && sections.size() < 2;
            more = !element && layout.find(path) != null;
        }
    }

    /** The values of a table that was created by dotted keys, at the place of those keys. */
    private List<TomlPart> pairsOf(TomlPart dotted) {
        return layout.pairsWithin(dotted).stream()
                .filter(each -> each.container() == dotted.container())
                .toList();
    }

    private static List<String> pathOf(TomlPart part) {
        List<String> path = new ArrayList<>();
        for (TomlPart each = part; each.around != null; each = each.around) {
            path.add(0, each.name);
        }
        return path;
    }

    private static List<String> within(List<String> path, Object name) {
        List<String> inner = new ArrayList<>(path);
        if (name instanceof List<?> names) {
            names.forEach(each -> inner.add(each.toString()));
        } else {
            inner.add(name.toString());
        }
        return List.copyOf(inner);
    }
}
