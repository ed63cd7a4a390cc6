package dev.lampwright.tool.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Here;
import dev.lampwright.tool.fit.Findings.Board;
import dev.lampwright.tool.fit.Findings.DimmerUse;
import dev.lampwright.tool.fit.Findings.Hanging;
import dev.lampwright.tool.fit.Findings.Run;
import dev.lampwright.tool.fit.Findings.Strip;
import dev.lampwright.tool.fit.Findings.Supply;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** The summary of a fitting. The currents are sums by hand: 30 pixels of 3 × 20 mA and 1 mA dark draw 30 × 61 mA = 1830 mA. */
class HandOverTest {
    private static final Path FILE = Path.of("alder.toml");
    private static final String FAULT = "[printer.state]\ntopic = \"shop/alder/job\"\nfault = [\"JAM\"]\n";

    private static final Findings FITTED = Findings.NONE
            .withBoard(new Board("/dev/ttyACM0", 500_000, new Here(1, "1.1.0", 1, 400, 1219, 6, 1, 10_000, false)))
            .withSupply(new Supply(5, false, OptionalDouble.of(4), OptionalDouble.of(3), 2400))
            .withOrder("GRB")
            .withStrip(new Strip(30, false))
            .withZones(Map.of("bed", new Run(9, 0)))
            .withPrinter(FAULT);

    private static List<String> lines(Findings found, boolean faults) {
        return Phrase.english(HandOver.lines(found, faults, FILE));
    }

    @Test
    void saysWhatIsFittedAndWhatItMayDraw() {
        Findings measured = FITTED.withCurrents(new Findings.Currents(List.of(), new Findings.Milliamps(1, 0.1)));
        assertEquals(
                List.of(
                        "Fitted:",
                        "  - 30 pixels, order GRB, at /dev/ttyACM0",
                        "  - zone bed: pixels 9-0",
                        "It may draw:",
                        "  - the strip: 1830 mA at 5 V, all of it at full",
                        "Uncertain:",
                        "  - The currents are not measured: 20 mA a channel is assumed, which is more than most strips take.",
                        ""),
                lines(FITTED, true));
        assertEquals("", lines(measured, true).get(lines(measured, true).size() - 1));
    }

    @Test
    void aCeilingBelowFullLightIsSaid() {
        List<String> lines =
                lines(FITTED.withSupply(new Supply(5, false, OptionalDouble.of(2), OptionalDouble.of(1), 800)), true);
        assertEquals(
                "  - the strip: 800 mA at 5 V, the ceiling; all at full would take 1830 mA and is dimmed to it",
                lines.get(4));
    }

    @Test
    void lightsOnDimmersHaveTheirOwnSupply() {
        List<String> lines = lines(
                FITTED.withDimmers(
                        List.of(
                                new DimmerUse(Hanging.WHITE, "work", 700),
                                new DimmerUse(Hanging.NOTHING, "", 1),
                                new DimmerUse(Hanging.WHITE, "shelf", 500)),
                        new Supply(24, false, OptionalDouble.of(2), OptionalDouble.empty(), 1000)),
                true);
        assertEquals("  - light work: dimmer 0", lines.get(3));
        assertEquals("  - light shelf: dimmer 2", lines.get(4));
        assertEquals("  - the lights on dimmers: 1000 mA at 24 V", lines.get(7));
    }

    @Test
    void aFaultThatIsNeverShownComesFirst() {
        assertEquals(
                "  - Nothing is bound to a fault, so a fault will never be shown. Add the printer's words as fault = [...]"
                        + " in [printer.state].",
                lines(FITTED, false).get(6));
        assertEquals(
                "  - The words for a fault are guessed, not heard. Compare them with the printer's manual.",
                lines(FITTED.withPrinter(FAULT.strip() + "    # not heard: a guess\n"), true)
                        .get(6));
        assertEquals(
                "  - It is not known where the printer reports what, so the lights cannot follow it yet. Run 'lampwright fit alder.toml'"
                        + " and listen while it heats up and prints.",
                lines(FITTED.withPrinter(PrinterStep.STAND_IN), false).get(6));
    }

    @Test
    void aSupplyThatIsNotKnownIsSaid() {
        Findings fromBoard =
                FITTED.withSupply(new Supply(5, true, OptionalDouble.empty(), OptionalDouble.empty(), 450));
        assertEquals(
                "  - The strip's supply is not known, so the ceiling is what a USB port gives.",
                lines(fromBoard, true).get(6));
    }
}
