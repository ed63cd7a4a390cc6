package dev.lampwright.page;

import com.sun.net.httpserver.Headers;
import dev.lampwright.http.HostName;
import java.net.InetAddress;
import java.net.URI;
import java.net.URISyntaxException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;

/**
 * Who gets in. A request has to call the page by a name of its own, so that no foreign name can be pointed at it (DNS rebinding); no other
 * site's page may ask for anything; and where there is a token, it has to be known. The server's tokens open all of its pages; a rig can have
 * tokens of its own, which open the page of that rig and nothing else. The page of a first fitting requires a token from other computers only.
 */
final class AccessCheck {
    /** How long a browser that does not come back is remembered. Common practice, no source. */
    private static final Duration PASS_LIFE = Duration.ofDays(30);

    /** The path of cookies for all pages. */
    private static final String ALL = "/";

    private static final String BEARER = "Bearer ";
    /** What servers add that pass requests on (RFC 9110, section 7.6.3; RFC 7239; common practice). */
    private static final List<String> FORWARDED =
            List.of("Forwarded", "Via", "X-Forwarded-For", "X-Forwarded-Host", "X-Forwarded-Proto", "X-Real-IP");

    private static final Set<String> OWN_SITES = Set.of("same-origin", "none");

    private final Set<String> hosts;
    private final PageTokens tokens;
    private final Supplier<PageTokens> own;
    private final String place;
    private final boolean tls;
    private final boolean opensHere;
    private final String cookieName;
    private final String cookieEnd;
    private final WrongTokens wrongTokens;

    /**
     * Makes the check of a whole server, which has seen no wrong token.
     *
     * @param hosts names that the page goes by, beside {@code localhost} and addresses; in lower case
     * @param tokens what has to be known; if there is none to ask with, everybody may ask
     * @param port where it is; cookies do not tell ports apart, so their name does
     * @param tls whether browsers come through a server with TLS, so that cookies may go no other way
     */
    AccessCheck(List<String> hosts, PageTokens tokens, int port, boolean tls) {
        this(hosts, tokens, () -> PageTokens.NONE, port, tls, false);
    }

    /**
     * Makes the check of the page of a first fitting: browsers on this very computer may do everything without a token.
     *
     * @param tokens what others have to know
     * @param next the tokens of the page that opens afterwards; none until the configuration is written
     * @param port where it is
     */
    static AccessCheck first(PageTokens tokens, Supplier<PageTokens> next, int port) {
        return new AccessCheck(List.of(), tokens, next, port, false, true);
    }

    private AccessCheck(
            List<String> hosts, PageTokens tokens, Supplier<PageTokens> own, int port, boolean tls, boolean opensHere) {
        this.hosts = Set.copyOf(hosts);
        this.tokens = tokens;
        this.own = own;
        this.opensHere = opensHere;
        place = ALL;
        this.tls = tls;
        cookieName = "lampwright-" + port;
        cookieEnd = "; HttpOnly; SameSite=Strict" + (tls ? "; Secure" : "");
        wrongTokens = new WrongTokens();
    }

    private AccessCheck(AccessCheck whole, String place, PageTokens own) {
        hosts = whole.hosts;
        tokens = whole.tokens;
        this.own = () -> own;
        this.place = place;
        opensHere = false;
        cookieName = whole.cookieName;
        cookieEnd = whole.cookieEnd;
        tls = whole.tls;
        wrongTokens = whole.wrongTokens;
    }

    /**
     * The check of one rig's page, which lets in also those who know a token of that rig. Wrong tokens are counted together.
     *
     * @param rig its name
     * @param rigTokens what lets people use its page and no other
     */
    AccessCheck ofRig(String rig, PageTokens rigTokens) {
        return new AccessCheck(this, ALL + rig + "/", rigTokens);
    }

    /** Refuses a request that uses a foreign name for the page. An address is not one: it cannot belong to another site. */
    Optional<HttpCall.Refusal> refuseHost(Headers headers) {
        return HostName.isOwn(first(headers, "Host"), hosts)
                ? Optional.empty()
                : Optional.of(new HttpCall.Refusal(
                        421, "this page does not have that name; add it to page.hosts if it should"));
    }

    /** Refuses requests from another site's page, according to the browser's headers and the origin. */
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

    /** Whether a token is required. */
    boolean needsToken() {
        return tokens.asking().isPresent();
    }

    /** Whether somebody may see all pages of the server, and not only this one. */
    boolean opensAll(Headers headers) {
        return !needsToken()
                || passes(headers).anyMatch(pass -> tokens.ofPass(pass) != PageTokens.Right.NONE)
                || bearer(headers)
                        .filter(token -> tokens.ofToken(token) != PageTokens.Right.NONE)
                        .isPresent();
    }

    /** Whether this is a token of the rig, which opens its page. */
    boolean isOwn(String token) {
        return own.get().ofToken(token) != PageTokens.Right.NONE;
    }

    /** The path of the page: {@code /} for all of them. */
    String place() {
        return place;
    }

    private PageTokens.Right right(Headers headers) {
        PageTokens also = own.get();
        return passes(headers)
                .map(pass -> tokens.ofPass(pass).orBetter(also.ofPass(pass)))
                .reduce(usual(), PageTokens.Right::orBetter);
    }

    private PageTokens.Right ofToken(String given) {
        return usual().orBetter(tokens.ofToken(given)).orBetter(own.get().ofToken(given));
    }

    /** What everybody may do. */
    private PageTokens.Right usual() {
        return needsToken() ? PageTokens.Right.NONE : PageTokens.Right.ASK;
    }

    /** Whether a token is one that counts here, or none does. */
    private boolean knows(String given) {
        boolean none = !needsToken() && tokens.editing().isEmpty();
        return none || tokens.ofToken(given).orBetter(own.get().ofToken(given)) != PageTokens.Right.NONE;
    }

    /**
     * Refuses a request without the required right: a token comes as a pass in a cookie, or directly in the header {@code Authorization}.
     *
     * @param needed the required right
     */
    Optional<HttpCall.Refusal> refuse(PageTokens.Right needed, Headers headers, InetAddress from) {
        if (opensHere && isHere(headers, from)) {
            return Optional.empty();
        }
        PageTokens.Right right = right(headers);
        Optional<String> bearer = bearer(headers);
        if (right.compareTo(needed) < 0 && bearer.isPresent()) {
            Optional<HttpCall.Refusal> wrong = refuseToken(bearer.get(), from);
            if (wrong.isPresent()) {
                return wrong;
            }
            right = right.orBetter(ofToken(bearer.get()));
        }
        if (right == PageTokens.Right.NONE) {
            return Optional.of(new HttpCall.Refusal(
                            401, "this page needs its token; enter it first", Map.of("WWW-Authenticate", "Bearer"))
                    .coded("needs_token", Map.of()));
        }
        if (right.compareTo(needed) >= 0) {
            return Optional.empty();
        }
        return needed == PageTokens.Right.EDIT && right == PageTokens.Right.ASK
                ? refuseEditing(headers, from)
                : Optional.of(new HttpCall.Refusal(
                                403, "your token lets you watch; to ask, enter the one that page.token_file names")
                        .coded("only_watching", Map.of()));
    }

    /** Refuses who may ask and has not entered the token for saving looks; where there is none, who is not on this very machine. */
    private Optional<HttpCall.Refusal> refuseEditing(Headers headers, InetAddress from) {
        if (tokens.editing().isPresent()) {
            return Optional.of(
                    new HttpCall.Refusal(403, "to save looks, enter the token that page.edit_token_file names")
                            .coded("needs_edit_token", Map.of()));
        }
        return isHere(headers, from)
                ? Optional.empty()
                : Optional.of(new HttpCall.Refusal(
                                403,
                                "looks can be saved in a browser on the computer that Lampwright runs on; to save"
                                        + " them elsewhere, set page.edit_token_file")
                        .coded("only_here", Map.of()));
    }

    /** Whether a browser on this machine asks, and no server in between for somebody else's. */
    boolean isHere(Headers headers, InetAddress from) {
        return from.isLoopbackAddress()
                && !tls
                && FORWARDED.stream().noneMatch(headers::containsKey)
                && HostName.isLoopback(first(headers, "Host"));
    }

    /**
     * Refuses a wrong token. The right one is always accepted, even while its address is asked to wait: behind a server with TLS all
     * viewers have one address, and wrong tokens from one must not lock out another who has the right one. So the length of the token
     * protects the page; the wait only turns away clients that respect it.
     */
    Optional<HttpCall.Refusal> refuseToken(String given, InetAddress from) {
        if (knows(given)) {
            wrongTokens.right(from);
            return Optional.empty();
        }
        long now = System.nanoTime();
        long wait = wrongTokens.waitSeconds(from, now);
        if (wait > 0) {
            String seconds = Long.toString(wait);
            return Optional.of(new HttpCall.Refusal(
                            429,
                            "too many wrong tokens; try again in " + seconds + " s",
                            Map.of("Retry-After", seconds))
                    .coded("too_many_wrong", Map.of("seconds", seconds)));
        }
        wrongTokens.wrong(from, now);
        return Optional.of(new HttpCall.Refusal(
                        401,
                        "that is not the token; "
                                + (opensHere
                                        ? "run sudo lampwright page, which prints it as a code"
                                        : "it is the first line of the file that page.token_file names"),
                        Map.of("WWW-Authenticate", "Bearer"))
                .coded("wrong_token", Map.of()));
    }

    /** The cookie that lets a browser in from now on, which no script and no other site can use. A rig's goes to the page of that rig alone. */
    String cookie(String token) {
        String pass = tokens.pass(token);
        return pass.isEmpty() ? cookie(place, own.get().pass(token)) : cookie(ALL, pass);
    }

    /**
     * The cookie for the page that opens after a first fitting, for a browser that has been let in for the fitting by its token. That token
     * ends with the fitting.
     */
    Optional<String> nextCookie(Headers headers) {
        boolean entered = opensHere && passes(headers).anyMatch(pass -> tokens.ofPass(pass) == PageTokens.Right.EDIT);
        return entered ? own.get().editing().map(token -> cookie(ALL, token.pass())) : Optional.empty();
    }

    /**
     * The same for a browser that has some already, so that only one that stays away for a month has to enter its token again; none for any
     * other.
     */
    List<String> renewedCookies(Headers headers) {
        List<String> renewed = new ArrayList<>();
        passes(headers).distinct().forEach(pass -> {
            if (tokens.ofPass(pass) != PageTokens.Right.NONE) {
                renewed.add(cookie(ALL, pass));
            } else if (own.get().ofPass(pass) != PageTokens.Right.NONE) {
                renewed.add(cookie(place, pass));
            }
        });
        return renewed;
    }

    private String cookie(String path, String pass) {
        return cookieName + "=" + pass + "; Path=" + path + "; Max-Age=" + PASS_LIFE.toSeconds() + cookieEnd;
    }

    /** The cookies that take them away. */
    List<String> noCookies() {
        return Stream.of(ALL, place)
                .distinct()
                .map(path -> cookieName + "=; Path=" + path + "; Max-Age=0" + cookieEnd)
                .toList();
    }

    private static Optional<String> bearer(Headers headers) {
        String authorization = first(headers, "Authorization");
        return authorization.startsWith(BEARER)
                ? Optional.of(authorization.substring(BEARER.length()).strip())
                : Optional.empty();
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
