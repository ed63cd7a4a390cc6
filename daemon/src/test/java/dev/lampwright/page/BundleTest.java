package dev.lampwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** Our own rules. The browser tests show that the page's modules do the same bundled as separately. */
class BundleTest {
    @Test
    void modulesComeBeforeThoseThatNeedThemAndEachOnce() {
        Map<String, String> modules = Map.of(
                "last",
                        "import { twice, three } from \"./middle.js\";\nimport { one } from \"./first.js\";\nrun(one, twice, three);\n",
                "middle",
                        "import { one } from \"./first.js\";\nexport function twice() {}\nexport const three = one;\n",
                "first", "// one and only\nexport class one {}\n");
        assertEquals("""
                "use strict";
                const first_js = (() => {
                // one and only
                class one {}
                return { one };
                })();
                const middle_js = (() => {
                const { one } = first_js;
                function twice() {}
                const three = one;
                return { twice, three };
                })();
                const last_js = (() => {
                const { twice, three } = middle_js;
                const { one } = first_js;
                run(one, twice, three);
                return {  };
                })();
                """, Bundle.of("last", modules::get));
    }

    @Test
    void othersWaitForAModuleThatWaits() {
        String bundle = Bundle.of(
                "last",
                Map.of(
                        "last",
                        "import { one } from \"./first.js\";\n",
                        "first",
                        "await one();\nexport function one() {}\n")::get);
        assertTrue(bundle.contains("const first_js = await (async () => {\nawait one();\n"), bundle);
        assertTrue(bundle.contains("const last_js = (() => {\n"), bundle);
    }

    @Test
    void whatItDoesNotKnowIsRefused() {
        String circle = assertThrows(
                        IllegalStateException.class, () -> Bundle.of("a", name -> "import { x } from \"./a.js\";\n"))
                .getMessage();
        assertTrue(circle.contains("circle"), circle);
        for (String line :
                new String[] {"export default 7;", "import * as all from \"./b.js\";", "import \"./b.js\";"}) {
            String why = assertThrows(IllegalStateException.class, () -> Bundle.of("a", name -> line + "\n"))
                    .getMessage();
            assertTrue(why.contains(line), why);
        }
    }
}
