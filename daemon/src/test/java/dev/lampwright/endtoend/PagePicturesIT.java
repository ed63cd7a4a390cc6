package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.Browser;
import dev.lampwright.testing.RunningDaemon;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/** Takes the README's pictures of the live page, of the demo half through its job: {@code mvn verify -Dit.test=PagePicturesIT -Dpictures=pictures}. */
@EnabledIfSystemProperty(named = "pictures", matches = ".+")
@Timeout(300)
class PagePicturesIT {
    private static final Duration LONG = Duration.ofMinutes(2);
    private static final String HALF_DONE = """
            const share = Number(/(\\d+)/.exec(document.getElementById('share').innerText)?.[1]);
            const chart = document.getElementById('chart-line').getAttribute('d') ?? '';
            return document.getElementById('state').innerText === 'Printing' && share >= 45 && share <= 80
              && chart.length > arguments[0];
            """;

    @Test
    void takeThem() throws IOException {
        Path folder = Path.of(System.getProperty("pictures"));
        Process demo = new ProcessBuilder(RunningDaemon.command(List.of(), "demo", "--colours", "plain"))
                .redirectErrorStream(true)
                .start();
        try (BufferedReader out = demo.inputReader(StandardCharsets.UTF_8);
                Browser browser = Browser.start()) {
            String first = out.readLine();
            assertTrue(first.contains("http://"), first);
            browser.open(first.substring(first.indexOf("http://")));
            take(browser, "dark", 1440, 900, folder.resolve("page-dark.png"));
            take(browser, "light", 1440, 900, folder.resolve("page-light.png"));
            take(browser, "dark", 360, 740, folder.resolve("page-phone.png"));
        } finally {
            demo.destroy();
        }
    }

    private static void take(Browser browser, String scheme, int width, int height, Path file) throws IOException {
        browser.resize(width, height, 1.5);
        browser.prefer(scheme, false);
        Await.until("half a job", LONG, () -> (Boolean) browser.run(HALF_DONE, 400));
        Files.copy(browser.picture(), file, StandardCopyOption.REPLACE_EXISTING);
    }
}
