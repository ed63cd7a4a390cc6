package dev.lampwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.PageSettings;
import java.io.IOException;
import java.net.URI;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PageAddressTest {
    @TempDir
    private Path folder;

    private static PageSettings settings(String lines) {
        return PageRig.config("pixels = 30", lines).page().orElseThrow();
    }

    @Test
    void aPageOfThisMachineAloneIsForNobodyElse() throws IOException {
        PageSettings page = settings("hosts = [\"alder.local\"]");
        assertEquals(List.of("http://127.0.0.1:61117/"), PageAddress.all(page, 61_117));
        assertFalse(PageAddress.isForOthers(page));
        assertTrue(PageAddress.code(page, 61_117, "", page.tokens()).isEmpty());
    }

    @Test
    void namesComeBeforeAddresses() throws IOException {
        PageSettings page =
                settings("address = \"192.168.1.7\"\nhosts = [\"alder.local\"]\ntoken_file = \"/tmp/none\"");
        assertEquals(List.of("http://alder.local:8080/", "http://192.168.1.7:8080/"), PageAddress.all(page, 8080));
        assertEquals(
                List.of("http://[fd00:0:0:0:0:0:0:7]:80/"),
                PageAddress.all(settings("address = \"fd00::7\"\ntoken_file = \"/tmp/none\""), 80));
    }

    /** Of all addresses of this machine, those that others can reach are named. */
    @Test
    void anAddressThatStandsForAllIsNotNamed() throws IOException {
        PageSettings page = settings("address = \"0.0.0.0\"\ntoken_file = \"/tmp/none\"");
        List<String> all = PageAddress.all(page, 61_117);
        assertFalse(all.isEmpty());
        assertFalse(all.contains("http://0.0.0.0:61117/"), all.toString());
    }

    @Test
    void behindTlsItIsReachedByItsNames() throws IOException {
        PageSettings page = settings("tls = true\nhosts = [\"light.example\", \"alder.local\"]");
        assertTrue(PageAddress.isForOthers(page));
        assertEquals(List.of("https://light.example/", "https://alder.local/"), PageAddress.all(page, 61_117));
        assertFalse(PageAddress.isForOthers(settings("tls = true")), "by no name");
    }

    /** Source: RFC 3986, section 3.5 (fragment) and 2.1 (percent-encoding). */
    @Test
    void theTokenStandsBehindTheAddressSoThatNoBrowserSendsIt() throws IOException {
        String token = "100 % of a+token#ä";
        Path file = Files.writeString(folder.resolve("token"), token + "\n");
        PageSettings page = settings("address = \"192.168.1.7\"\ntoken_file = \"" + file + "\"");
        URI address = URI.create(PageAddress.withToken("http://192.168.1.7:61117/", page.tokens()));
        assertEquals("/", address.getPath());
        assertEquals(token, URLDecoder.decode(address.getRawFragment(), StandardCharsets.UTF_8));
        assertEquals(
                address.toString(),
                QrReading.ofSvg(
                        PageAddress.code(page, 61_117, "", page.tokens()).orElseThrow()));
    }
}
