package dev.lampwright.page;

import dev.lampwright.rig.Rig;
import dev.lampwright.rig.Rigs;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The page at {@code /} of a process with several rigs: a list of links to their pages. What is wrong with one is for those whom the door lets in. */
final class RigList implements Site.Front {
    private final Rigs rigs;

    RigList(Rigs rigs) {
        this.rigs = rigs;
    }

    @Override
    public boolean answer(HttpCall call) throws IOException {
        if (!call.path().equals("/")) {
            return false;
        }
        if (List.of("GET", "HEAD").contains(call.method())) {
            call.answer(200, new StaticFile("text/html; charset=utf-8", html().getBytes(StandardCharsets.UTF_8)));
        } else {
            call.answer(new HttpCall.Refusal(405, "only GET, HEAD goes here"));
        }
        return true;
    }

    private String html() {
        StringBuilder html = new StringBuilder("<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\">"
                + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">"
                + "<title>Lampwright</title></head><body><h1>Lampwright</h1><ul>");
        for (Rig rig : rigs.all()) {
            if (rig.daemon().isPresent()) {
                html.append("<li><a href=\"")
                        .append(rig.name())
                        .append("/\">")
                        .append(rig.name())
                        .append("</a></li>");
            }
        }
        return html.append("</ul></body></html>\n").toString();
    }
}
