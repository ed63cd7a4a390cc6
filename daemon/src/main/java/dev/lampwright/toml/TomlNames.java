package dev.lampwright.toml;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The places where a text names a value. */
final class TomlNames {
    private final String text;
    private final TomlLayout layout;

    /** A name in the text: the positions of its beginning and after its end. */
    private record Place(int from, int to) {}

    TomlNames(String text, TomlLayout layout) {
        this.text = text;
        this.layout = layout;
    }

    /**
     * The text with another name for a value.
     *
     * @param part the value
     * @param name what to call it
     */
    String renamed(TomlPart part, String name) {
        String next = text;
        for (Place place : places(part)) {
            next = next.substring(0, place.from()) + TomlText.key(name) + next.substring(place.to());
        }
        return next;
    }

    /** All places where the text names a value, the last first. */
    private List<Place> places(TomlPart part) {
        List<Place> places = new ArrayList<>();
        int depth = part.headerNames().size() - 1;
        layout.sectionsWithin(part).forEach(header -> places.add(place(header.header, depth)));
        for (TomlPart pair : layout.pairsWithin(part)) {
            int index = pair.key.nameEnds().size() - 1;
            TomlPart named = pair;
            while (named != part && index > 0) {
                named = named.around;
                index--;
            }
            if (named == part) {
                places.add(place(pair.key, index));
            }
        }
        places.sort(Comparator.comparingInt(Place::from).reversed());
        return places;
    }

    /** One of the names of a key, without the blanks and the dot before it. */
    private Place place(TomlPart.Key key, int index) {
        int from = index == 0 ? key.from() : text.indexOf('.', key.nameEnds().get(index - 1)) + 1;
        while (Character.isWhitespace(text.charAt(from))) {
            from++;
        }
        return new Place(from, key.nameEnds().get(index));
    }
}
