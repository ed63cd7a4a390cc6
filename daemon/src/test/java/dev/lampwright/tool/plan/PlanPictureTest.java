package dev.lampwright.tool.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.font.FontRenderContext;
import java.io.File;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class PlanPictureTest {
    /** The assumed maximum width of a character in the picture's font, as a share of its size (DejaVu Sans, on the average of words). */
    private static final double CHARACTER = 0.62;

    private static final String FULL = """
            supply.ceiling_mA = 3000
            strip = { pixels = 60 }
            dimmers.work = { channel = 0, volts = 24, full_mA = 800 }
            dimmers."a <glow> & more" = { channel = 1, volts = 12, full_mA = 300 }
            wiring.supplies."5 V" = { volts = 5, amps = 5 }
            wiring.strip = { wire = "18 AWG", points = [0, 59], length_m = [1, 2.25], fuse_A = 4 }
            wiring.board.logic_V = 3.3
            wiring.computer.supply = "5 V"
            """;

    private static Document picture(String rig) throws Exception {
        String svg = PlanPicture.of(Rigs.plan(rig));
        return DocumentBuilderFactory.newDefaultInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(svg)));
    }

    private static List<Element> elements(Document picture, String tag) {
        NodeList nodes = picture.getElementsByTagName(tag);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            elements.add((Element) nodes.item(i));
        }
        return elements;
    }

    @Test
    void allPartsAreThereWithTheirFigures() throws Exception {
        String words = String.join(
                "\n",
                elements(picture(FULL), "text").stream()
                        .map(Element::getTextContent)
                        .toList());
        for (String part : List.of(
                "Printer",
                "Computer",
                "Controller",
                "Supply 5 V",
                "24 V",
                "12 V",
                "fuse 4 A",
                "to pixel 0: 18 AWG, 1 m",
                "to pixel 59: 18 AWG, 2.25 m",
                "capacitor 1000 µF",
                "330 to 470 Ω",
                "74AHCT125",
                "to the computer",
                "a <glow> & more",
                "from D6",
                "Voltage along the strip",
                "below 4.50 V colour shifts",
                "below 3.50 V pixels brown out")) {
            assertTrue(words.contains(part), part + " is not in\n" + words);
        }
        Cautions.ALL.forEach(caution -> assertTrue(words.contains(caution), caution));
    }

    @Test
    void nothingLiesBesideThePage() throws Exception {
        for (String rig : List.of(
                FULL,
                "strip.pixels = 1",
                "strip.pixels = 9\nwiring.strip.least_V = 9\n",
                "strip.pixels = 5000\nsupply.ceiling_mA = 60000\n")) {
            Document picture = picture(rig);
            double width = Double.parseDouble(picture.getDocumentElement().getAttribute("width"));
            double height = Double.parseDouble(picture.getDocumentElement().getAttribute("height"));
            for (Element text : elements(picture, "text")) {
                double size = Double.parseDouble(text.getAttribute("font-size").replace("px", ""));
                double length = CHARACTER * size * text.getTextContent().length();
                double x = Double.parseDouble(text.getAttribute("x"));
                double left = switch (text.getAttribute("text-anchor")) {
                    case "middle" -> x - length / 2;
                    case "end" -> x - length;
                    default -> x;
                };
                assertTrue(left >= 0 && left + length <= width, text.getTextContent());
                double y = Double.parseDouble(text.getAttribute("y"));
                assertTrue(y > 0 && y < height, text.getTextContent());
            }
        }
    }

    /** A rectangle of the drawing. */
    private record Box(double x, double y, double width, double height) {
        static Box of(Element rect) {
            return new Box(
                    Double.parseDouble(rect.getAttribute("x")),
                    Double.parseDouble(rect.getAttribute("y")),
                    Double.parseDouble(rect.getAttribute("width")),
                    Double.parseDouble(rect.getAttribute("height")));
        }

        boolean holds(double atX, double atY) {
            return atX >= x && atX <= x + width && atY >= y && atY <= y + height;
        }
    }

    private static final String FONTS = "/usr/share/fonts/truetype/dejavu/DejaVuSans";

    private static final String REGULAR = FONTS + ".ttf";

    /** Width of a text in exactly the font that the picture names, if it is installed. */
    private static double measured(String text, double size, boolean bold) {
        String face = bold ? FONTS + "-Bold.ttf" : REGULAR;
        try {
            return Font.createFont(Font.TRUETYPE_FONT, new File(face))
                    .deriveFont((float) size)
                    .getStringBounds(text, new FontRenderContext(null, true, true))
                    .getWidth();
        } catch (IOException | FontFormatException e) {
            return TextWidth.of(text, size, bold);
        }
    }

    private static final String CROWDED = """
            supply.ceiling_mA = 3000
            strip = { pixels = 60 }
            dimmers.work = { channel = 3, volts = 24, full_mA = 800 }
            dimmers.glow = { channels = [0, 1, 2], volts = 24, full_mA = 12500 }
            dimmers."the long shelf above the workbench" = { channels = [4, 5, 6], volts = 12, full_mA = 300 }
            dimmers."WWWWWWWWWWWWWWWW" = { channel = 7, volts = 36, full_mA = 300 }
            wiring.supplies."the big grey one behind the shelf" = { volts = 24, amps = 50, connector_A = 45 }
            wiring.supplies."a supply of five volts with a name" = { volts = 5, amps = 5, connector_A = 5 }
            wiring.computer = { amps = 5, supply = "a supply of five volts with a name" }
            wiring.strip = { points = [0, 20, 59] }
            """;

    /**
     * A text that begins in a box ends in it, and one that begins outside of all boxes of parts extends into none. Widths are measured with
     * the picture's font.
     */
    @Test
    void labelsNeverLeaveTheirBoxes() throws Exception {
        for (String rig : List.of(FULL, CROWDED, CROWDED + "wiring.board.logic_V = 3.3\n", "strip.pixels = 1")) {
            Document picture = picture(rig);
            List<Box> boxes = elements(picture, "rect").stream()
                    .filter(rect -> rect.hasAttribute("rx"))
                    .map(Box::of)
                    .toList();
            for (Element text : elements(picture, "text")) {
                double size = Double.parseDouble(text.getAttribute("font-size").replace("px", ""));
                boolean bold = text.getAttribute("font-weight").equals("bold");
                double width = measured(text.getTextContent(), size, bold);
                double x = Double.parseDouble(text.getAttribute("x"));
                double y = Double.parseDouble(text.getAttribute("y"));
                double left = switch (text.getAttribute("text-anchor")) {
                    case "middle" -> x - width / 2;
                    case "end" -> x - width;
                    default -> x;
                };
                for (Box box : boxes) {
                    if (box.holds(x, y - size / 3)) {
                        assertTrue(
                                left >= box.x && left + width <= box.x + box.width && y <= box.y + box.height,
                                text.getTextContent() + " leaves " + box);
                    } else {
                        boolean beside = left + width <= box.x
                                || left >= box.x + box.width
                                || y - 0.7 * size >= box.y + box.height
                                || y <= box.y;
                        assertTrue(beside, text.getTextContent() + " runs into " + box);
                    }
                }
            }
        }
    }

    /** The texts in the boxes of an ordinary rig are complete. */
    @Test
    void nothingIsShortenedInAnOrdinaryRig() throws Exception {
        for (String rig : List.of(FULL, """
                strip.pixels = 30
                dimmers.glow = { channels = [0, 1, 2], volts = 24, full_mA = 500 }
                dimmers.work = { channel = 3, volts = 24, full_mA = 800 }
                """)) {
            for (Element text : elements(picture(rig), "text")) {
                assertFalse(
                        text.getTextContent().endsWith("…")
                                && !text.getTextContent().startsWith("a <glow>"),
                        text.getTextContent());
            }
        }
    }

    /** The table of widths is that of the font, if it is installed. */
    @Test
    void widthsAreThoseOfTheFont() {
        assumeTrue(new File(REGULAR).canRead(), "the font is not installed");
        for (String text : List.of("from D9, D10, D11", "Supply 5 V", "WWW iii", "mains in: licensed people only")) {
            for (boolean bold : new boolean[] {false, true}) {
                assertEquals(measured(text, 13, bold), TextWidth.of(text, 13, bold), 0.02 * measured(text, 13, bold));
            }
        }
    }

    @Test
    void whatIsTooWideIsShortened() {
        assertEquals("short", TextWidth.fitted("short", 12, false, 100));
        String fitted = TextWidth.fitted("a name that is far too long for this box", 12, true, 100);
        assertTrue(fitted.startsWith("a name") && fitted.endsWith("…"), fitted);
        assertTrue(TextWidth.of(fitted, 12, true) <= 100);
    }

    /** Design rule of the drawing: a + wire is never crossed by another wire of the strip. */
    @Test
    void wiresToTheStripDoNotCross() throws Exception {
        List<Element> wires =
                elements(picture("strip.pixels = 60\nwiring.strip.points = [0, 20, 40, 59]\n"), "polyline").stream()
                        .filter(line -> line.getAttribute("stroke-width").equals("3"))
                        .filter(line ->
                                List.of(PictureStyle.PLUS, PictureStyle.MINUS).contains(line.getAttribute("stroke")))
                        .filter(line -> line.getAttribute("points").split(" ").length == 3)
                        .toList();
        assertEquals(8, wires.size());
        for (Element one : wires) {
            for (Element other : wires) {
                assertTrue(
                        one == other || !crosses(one, other),
                        one.getAttribute("points") + " and " + other.getAttribute("points"));
            }
        }
    }

    /** Whether the level part of one wire crosses the vertical part of another. */
    private static boolean crosses(Element level, Element upright) {
        double[] a = numbers(level);
        double[] b = numbers(upright);
        return a[0] < b[4] && b[4] < a[2] && b[3] < a[1] && a[1] < b[5];
    }

    private static double[] numbers(Element line) {
        return Arrays.stream(line.getAttribute("points").split("[ ,]"))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    @Test
    void theSamePlanGivesTheSamePicture() {
        assertEquals(PlanPicture.of(Rigs.plan(FULL)), PlanPicture.of(Rigs.plan(FULL)));
    }
}
