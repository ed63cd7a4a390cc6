package dev.lampwright.testing;

import java.io.File;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.openqa.selenium.By;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;

/** A real Chromium without a window (of the Debian packages {@code chromium} and {@code chromium-driver}), driven by Selenium. */
public final class Browser implements AutoCloseable {
    private static final File PROGRAM = new File("/usr/bin/chromium");
    private static final File DRIVER = new File("/usr/bin/chromedriver");
    private static final Duration LONGEST_SCRIPT = Duration.ofSeconds(30);

    private final ChromeDriver driver;

    private Browser(ChromeDriver driver) {
        this.driver = driver;
    }

    /**
     * Starts one.
     *
     * @return a browser that shows nothing
     * @throws AssertionError if it is not installed
     */
    public static Browser start() {
        if (!PROGRAM.canExecute() || !DRIVER.canExecute()) {
            throw new AssertionError("install the Debian packages chromium and chromium-driver");
        }
        ChromeOptions options = new ChromeOptions();
        options.setBinary(PROGRAM);
        options.addArguments(List.of(
                "--headless=new",
                "--no-sandbox",
                "--disable-dev-shm-usage",
                "--disable-gpu",
                "--force-color-profile=srgb",
                "--hide-scrollbars",
                "--lang=en-GB"));
        ChromeDriverService service =
                new ChromeDriverService.Builder().usingDriverExecutable(DRIVER).build();
        ChromeDriver driver = new ChromeDriver(service, options);
        driver.manage().timeouts().scriptTimeout(LONGEST_SCRIPT);
        Browser browser = new Browser(driver);
        browser.speak("en-GB");
        return browser;
    }

    /** Goes to an address, and waits until the page there has been loaded. */
    public void open(String url) {
        driver.get(url);
    }

    /** Empties the cache. */
    public void forgetFiles() {
        driver.executeCdpCommand("Network.clearBrowserCache", Map.of());
    }

    /** Resizes the view, in px. */
    public void resize(int width, int height, double density) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", density, "mobile", false));
    }

    /**
     * Sets the viewer's preferences.
     *
     * @param scheme {@code dark} or {@code light}
     * @param calm whether motion should be reduced
     */
    public void prefer(String scheme, boolean calm) {
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of(
                        "features",
                        List.of(
                                Map.of("name", "prefers-color-scheme", "value", scheme),
                                Map.of("name", "prefers-reduced-motion", "value", calm ? "reduce" : "no-preference"))));
    }

    /** Sets the viewer's language from the next page on, as a tag of BCP 47. */
    public void speak(String language) {
        driver.executeCdpCommand(
                "Emulation.setUserAgentOverride",
                Map.of("userAgent", run("return navigator.userAgent"), "acceptLanguage", language));
    }

    /** Sets whether the viewer forces all colours, as in a high-contrast mode. */
    public void forceColours(boolean forced) {
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of("features", List.of(Map.of("name", "forced-colors", "value", forced ? "active" : "none"))));
    }

    /** The element with an id. */
    public WebElement byId(String id) {
        return driver.findElement(By.id(id));
    }

    /** The elements that match a CSS selector. */
    public List<WebElement> all(String selector) {
        return driver.findElements(By.cssSelector(selector));
    }

    /** The visible text of the element with an id; empty if it is hidden. */
    public String text(String id) {
        return String.valueOf(run("return document.getElementById(arguments[0]).innerText", id));
    }

    /** Runs a script in the page, and returns its result. */
    public Object run(String script, Object... arguments) {
        return driver.executeScript(script, arguments);
    }

    /** Runs a script that calls its last argument when it is done, and returns what it passes. */
    public Object await(String script, Object... arguments) {
        return driver.executeAsyncScript(script, arguments);
    }

    /** The messages in the page's console since the last call. */
    public List<String> complaints() {
        return driver.manage().logs().get("browser").getAll().stream()
                .map(entry -> entry.getLevel() + " " + entry.getMessage())
                .toList();
    }

    /** The driver, for keys and the like. */
    public ChromeDriver driver() {
        return driver;
    }

    /** A screenshot, as a file that is deleted with the process. */
    public Path picture() {
        return driver.getScreenshotAs(OutputType.FILE).toPath();
    }

    @Override
    public void close() {
        driver.quit();
    }
}
