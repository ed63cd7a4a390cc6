package dev.lampwright.tool.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

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
    /** Widest that a character of the picture's font is taken for, as a share of its size (DejaVu Sans, on the average of words). */
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

    /** Whether the level part of one wire crosses the upright part of another. */
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
