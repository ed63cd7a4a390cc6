package dev.lampwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.PageSettings;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The handbook that the package installs, as the page serves it. */
@Timeout(60)
class HandbookTest {
    @TempDir
    private Path folder;

    private Path installed() throws IOException {
        Path handbook = Files.createDirectories(folder.resolve("handbook"));
        Files.writeString(handbook.resolve("index.html"), "<h1>The handbook</h1>");
        Files.writeString(handbook.resolve("index.md"), "# The handbook");
        Files.createDirectories(handbook.resolve("pictures"));
        Files.write(handbook.resolve("pictures/job.png"), new byte[] {1, 2, 3});
        Files.writeString(folder.resolve("secret.html"), "not for everybody");
        return handbook;
    }

    @Test
    void isServedWithItsPicturesAndNothingElseIs() throws IOException, InterruptedException {
        try (PageRig rig = PageRig.usual();
                PageServer server = serving(rig, Handbook.in(installed()))) {
            assertEquals(
                    "<h1>The handbook</h1>", get(server, "handbook/index.html").body());
            assertEquals(
                    "text/html; charset=utf-8",
                    get(server, "handbook/index.html")
                            .headers()
                            .firstValue("content-type")
                            .orElseThrow());
            assertEquals(200, get(server, "handbook/pictures/job.png").statusCode());
            assertEquals(404, get(server, "handbook/index.md").statusCode());
            assertEquals(404, get(server, "handbook/").statusCode());
            assertEquals(404, get(server, "handbook/%2e%2e/secret.html").statusCode());
            assertTrue(get(server, "").body().contains("<p id=\"handbook\"><a href=\"handbook/index.html\""));
        }
    }

    @Test
    void withoutOneThePageDoesNotLinkToIt() throws IOException, InterruptedException {
        Handbook none = Handbook.in(folder.resolve("nowhere"));
        assertFalse(none.exists());
        try (PageRig rig = PageRig.usual();
                PageServer server = serving(rig, none)) {
            assertEquals(404, get(server, "handbook/index.html").statusCode());
            assertTrue(get(server, "").body().contains("<p id=\"handbook\" hidden>"));
        }
    }

    private static PageServer serving(PageRig rig, Handbook handbook) throws IOException {
        PageSettings settings = rig.daemon().tap().config().page().orElseThrow();
        return new PageServer(
                settings, () -> Map.of("", rig.daemon()), Optional.empty(), Advice.NONE, Workshop.NONE, handbook);
    }

    private static HttpResponse<String> get(PageServer server, String path) throws IOException, InterruptedException {
        return HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(URI.create(server.url() + path)).build(),
                        HttpResponse.BodyHandlers.ofString());
    }
}
