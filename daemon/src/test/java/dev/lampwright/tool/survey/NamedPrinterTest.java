package dev.lampwright.tool.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** What a survey writes, for a file with several printers. */
class NamedPrinterTest {
    @Test
    void everySectionOfThePrinterGetsItsName() {
        String text = """
                [broker]
                url = "mqtt://127.0.0.1"
                [printer.state]
                topic = "printer.state"
                # [printer.state]
                [[printer.condition]]
                state = "fault"
                """;
        assertEquals("""
                [broker]
                url = "mqtt://127.0.0.1"
                [printers.birch.state]
                topic = "printer.state"
                # [printers.birch.state]
                [[printers.birch.condition]]
                state = "fault"
                """, ProposedConfig.named(text, "birch"));
    }
}
