package dev.lampwright.page;

import com.sun.net.httpserver.Headers;
import dev.lampwright.http.HostName;
import java.net.InetAddress;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Who gets in. A request has to call the page by a name of its own, so that no foreign name can be pointed at it (DNS rebinding); no other
 * site's page may ask for anything; and where there is a token, it has to be known.
 */
final class AccessCheck {
    private static final String BEARER = "Bearer ";
    private static final Set<String> OWN_SITES = Set.of("same-origin", "none");

    private final Set<String> hosts;
    private final Optional<Token> token;
    private final String cookieName;
    private final WrongTokens wrongTokens = new WrongTokens();

    /**
     * Makes a check that has seen no wrong token.
     *
     * @param hosts names that the page goes by, beside {@code localhost} and addresses; in lower case
     * @param token what has to be known, if anything
     * @param port where it is; cookies do not tell ports apart, so their name does
     */
    AccessCheck(List<String> hosts, Optional<Token> token, int port) {
        this.hosts = Set.copyOf(hosts);
        this.token = token;
        cookieName = "lampwright-" + port;
    }

    /** Refuses a request that calls the page by a foreign name. An address is none: it belongs to nobody else's site. */
    Optional<HttpCall.Refusal> refuseHost(Headers headers) {
        return HostName.isOwn(first(headers, "Host"), hosts)
                ? Optional.empty()
                : Optional.of(new HttpCall.Refusal(
                        421, "this page does not go by that name; name it in page.hosts if it should"));
    }

    /** Refuses what another site's page asks for: by the browser's word for it, and by the origin that it names. */
    Optional<HttpCall.Refusal> refuseSite(Headers headers) {
        String site = first(headers, "Sec-Fetch-Site");
        String origin = first(headers, "Origin");
        boolean own = (site.isEmpty() || OWN_SITES.contains(site)) && (origin.isEmpty() || isOwn(origin, headers));
        return own
                ? Optional.empty()
                : Optional.of(new HttpCall.Refusal(403, "only this page itself may ask for that"));
    }

    private static boolean isOwn(String origin, Headers headers) {
        try {
            return first(headers, "Host").equalsIgnoreCase(new URI(origin).getRawAuthority());
        } catch (URISyntaxException e) {
            return false;
        }
    }

    /** Refuses who does not know the token: it comes as a cookie's pass, or bare in the header {@code Authorization}. */
    Optional<HttpCall.Refusal> refuseStranger(Headers headers, InetAddress from) {
        if (token.isEmpty() || passes(headers).anyMatch(token.get()::isPass)) {
            return Optional.empty();
        }
        String authorization = first(headers, "Authorization");
        if (!authorization.startsWith(BEARER)) {
            return Optional.of(new HttpCall.Refusal(
                    401, "this page needs its token; enter it first", Map.of("WWW-Authenticate", "Bearer")));
        }
        return refuseToken(authorization.substring(BEARER.length()).strip(), from);
    }

    /**
     * Refuses a wrong token. The right one is always let in, even while its address is asked to wait: behind a server with TLS all viewers
     * have one address, and nobody's wrong tokens may shut out somebody who has the right one. So what protects the page is the length of the
     * token; the wait only turns away clients that keep to it.
     */
    Optional<HttpCall.Refusal> refuseToken(String given, InetAddress from) {
        if (token.isEmpty() || token.get().is(given)) {
            wrongTokens.right(from);
            return Optional.empty();
        }
        long now = System.nanoTime();
        long wait = wrongTokens.waitSeconds(from, now);
        if (wait > 0) {
            String seconds = Long.toString(wait);
            return Optional.of(new HttpCall.Refusal(
                    429, "too many wrong tokens; try again in " + seconds + " s", Map.of("Retry-After", seconds)));
        }
        wrongTokens.wrong(from, now);
        return Optional.of(new HttpCall.Refusal(
                401,
                "that is not the token; it is the first line of the file that page.token_file names",
                Map.of("WWW-Authenticate", "Bearer")));
    }

    /** The cookie that lets a browser in from now on, which no script and no other site can use. */
    String cookie() {
        String pass = token.map(Token::pass).orElse("");
        return cookieName + "=" + pass + "; Path=/; Max-Age=31536000; HttpOnly; SameSite=Strict";
    }

    private Stream<String> passes(Headers headers) {
        String prefix = cookieName + "=";
        return headers.getOrDefault("Cookie", List.of()).stream()
                .flatMap(line -> Stream.of(line.split(";", -1)))
                .map(String::strip)
                .filter(pair -> pair.startsWith(prefix))
                .map(pair -> pair.substring(prefix.length()));
    }

    private static String first(Headers headers, String name) {
        String value = headers.getFirst(name);
        return value == null ? "" : value;
    }
}
