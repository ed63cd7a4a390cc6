package dev.lampwright.page;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.Browser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;

/** Takes the README's pictures of the live page; not a test. Arguments: the page's address, a state to wait for, a folder. */
final class PagePictures {
    private PagePictures() {}

    public static void main(String... arguments) throws IOException {
        Path folder = Path.of(arguments[2]);
        try (Browser browser = Browser.start()) {
            take(browser, arguments, "light", 1180, 980, folder.resolve("page-light.png"));
            take(browser, arguments, "dark", 360, 780, folder.resolve("page-phone.png"));
        }
    }

    private static void take(Browser browser, String[] arguments, String scheme, int width, int height, Path file)
            throws IOException {
        browser.resize(width, height, 2);
        browser.prefer(scheme, false);
        browser.open(arguments[0]);
        Await.until(
                "state " + arguments[1],
                Duration.ofMinutes(2),
                () -> browser.text("state").equals(arguments[1]));
        Await.until(
                "some seconds of current",
                () -> String.valueOf(browser.run("return document.getElementById('chart-line').getAttribute('d')"))
                                .length()
                        > 200);
        Files.copy(browser.picture(), file, StandardCopyOption.REPLACE_EXISTING);
    }
}
