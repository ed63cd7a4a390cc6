package dev.lampwright.link;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class ControllerLinkTest {
    @Test
    void lightsAController() {
        try (LinkRig rig = new LinkRig().started()) {
            rig.publishUntilShown(7);
            assertEquals(LinkState.LIT, rig.link.status().state());
            System.out.println(rig.link.status());
        }
    }
}
