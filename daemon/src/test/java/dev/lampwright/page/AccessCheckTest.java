package dev.lampwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.net.httpserver.Headers;
import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AccessCheckTest {
    private static final InetAddress FROM = InetAddress.getLoopbackAddress();

    private static final String VIEW_TOKEN = "only-to-have-a-look-at-it";

    private final AccessCheck open = new AccessCheck(List.of("alder.local"), PageTokens.NONE, 61117, false);

    @TempDir
    private Path folder;

    private static Headers headers(String... namesAndValues) {
        Headers headers = new Headers();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            headers.add(namesAndValues[i], namesAndValues[i + 1]);
        }
        return headers;
    }

    private AccessCheck guarded() throws IOException {
        return guarded(PageRig.TOKEN, false);
    }

    /** With one token for people who may ask, and another for those who may only watch. */
    private AccessCheck guarded(String token, boolean tls) throws IOException {
        return new AccessCheck(
                List.of(),
                new PageTokens(Optional.of(token(token)), Optional.of(token(VIEW_TOKEN)), Optional.empty()),
                61117,
                tls);
    }

    private Token token(String text) throws IOException {
        return Token.read("token_file", file(text + "\n"));
    }

    private static Optional<HttpCall.Refusal> asking(AccessCheck door, String... headers) {
        return door.refuse(PageTokens.Right.ASK, headers(headers), FROM);
    }

    private static Optional<HttpCall.Refusal> watching(AccessCheck door, String... headers) {
        return door.refuse(PageTokens.Right.WATCH, headers(headers), FROM);
    }

    private static String pair(String cookie) {
        return cookie.substring(0, cookie.indexOf(';'));
    }

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("token"), text);
    }

    private static int status(Optional<HttpCall.Refusal> refusal) {
        return refusal.map(HttpCall.Refusal::status).orElse(200);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "localhost",
                "localhost:61117",
                "LOCALHOST:1",
                "127.0.0.1:61117",
                "[::1]:61117",
                "192.168.1.7",
                "alder.local:61117"
            })
    void ownNamesAndAddressesAreLetIn(String host) {
        assertEquals(200, status(open.refuseHost(headers("Host", host))));
    }

    /** What another site sees of this page after it has pointed its own name at it. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "evil.example",
                "evil.example:61117",
                "localhost.evil.example",
                "alder.local.evil.example",
                "127.0.0.1.evil.example",
                "127.0.0.1@evil.example",
                "",
                "::1"
            })
    void foreignNamesAreNot(String host) {
        assertEquals(421, status(open.refuseHost(headers("Host", host))));
    }

    @Test
    void noNameAtAllIsForeign() {
        assertEquals(421, status(open.refuseHost(headers())));
    }

    /** Sec-Fetch-Site: W3C Fetch Metadata; Origin: RFC 6454. */
    @ParameterizedTest
    @CsvSource({
        "same-origin, http://localhost:61117, 200",
        "none, , 200",
        ", http://localhost:61117, 200",
        ", https://localhost:61117, 200",
        ", , 200",
        "same-site, http://localhost:61117, 403",
        "cross-site, http://evil.example, 403",
        "cross-site, , 403",
        ", http://evil.example, 403",
        ", http://localhost:7118, 403",
        ", null, 403",
        ", http://localhost:61117.evil.example, 403",
        "same-origin, http://evil.example, 403",
    })
    void onlyItsOwnPageMayAsk(String site, String origin, int status) {
        Headers headers = headers("Host", "localhost:61117");
        if (site != null) {
            headers.add("Sec-Fetch-Site", site);
        }
        if (origin != null) {
            headers.add("Origin", origin);
        }
        assertEquals(status, status(open.refuseSite(headers)));
    }

    @Test
    void withoutATokenThereAreNoStrangers() {
        assertEquals(200, status(asking(open)));
    }

    @Test
    void aStrangerIsAskedForTheToken() throws IOException {
        HttpCall.Refusal refusal = watching(guarded()).orElseThrow();
        assertEquals(401, refusal.status());
        assertEquals("Bearer", refusal.headers().get("WWW-Authenticate"));
    }

    @Test
    void theTokenLetsProgramsIn() throws IOException {
        AccessCheck door = guarded();
        assertEquals(200, status(asking(door, "Authorization", "Bearer " + PageRig.TOKEN)));
        assertEquals(401, status(asking(door, "Authorization", "Bearer " + PageRig.TOKEN + "x")));
        assertEquals(401, status(asking(door, "Authorization", "Bearer ")));
    }

    @Test
    void theCookieLetsBrowsersInAndDoesNotTellTheToken() throws IOException {
        String cookie = guarded().cookie(PageRig.TOKEN);
        assertFalse(cookie.contains(PageRig.TOKEN), cookie);
        assertTrue(cookie.endsWith("; HttpOnly; SameSite=Strict"), cookie);
        assertEquals(200, status(asking(guarded(), "Cookie", "a=b; " + pair(cookie))));
        assertEquals(401, status(asking(guarded(), "Cookie", pair(cookie) + "0")));
        assertEquals(401, status(asking(guarded(), "Cookie", "lampwright-61117=")));
    }

    /** With cookie and header alike. */
    @Test
    void theWeakerTokenLetsPeopleWatchAndAskForNothing() throws IOException {
        AccessCheck door = guarded();
        assertEquals(200, status(door.refuseToken(VIEW_TOKEN, FROM)));
        for (String[] pass :
                new String[][] {{"Authorization", "Bearer " + VIEW_TOKEN}, {"Cookie", pair(door.cookie(VIEW_TOKEN))}}) {
            assertEquals(200, status(watching(door, pass)));
            HttpCall.Refusal refusal = asking(door, pass).orElseThrow();
            assertEquals(403, refusal.status());
            assertTrue(refusal.why().contains("page.token_file"), refusal.why());
        }
        assertEquals(
                200,
                status(asking(
                        door, "Cookie", pair(door.cookie(VIEW_TOKEN)), "Authorization", "Bearer " + PageRig.TOKEN)),
                "who knows both may ask");
    }

    /** Source: RFC 6265, sections 4.1.2.5 (Secure) and 4.1.2.2 (Max-Age of 0). */
    @Test
    void behindTlsTheCookieGoesNoOtherWay() throws IOException {
        assertTrue(guarded(PageRig.TOKEN, true).cookie(PageRig.TOKEN).endsWith("; SameSite=Strict; Secure"));
        assertEquals(
                List.of("lampwright-61117=; Path=/; Max-Age=0; HttpOnly; SameSite=Strict; Secure"),
                guarded(PageRig.TOKEN, true).noCookies());
    }

    /** So a phone that is used every week never has to enter the token again, and one that was given away is forgotten. */
    @Test
    void aCookieThatIsUsedLastsAMonthFromThen() throws IOException {
        AccessCheck door = guarded();
        for (String token : List.of(PageRig.TOKEN, VIEW_TOKEN)) {
            String cookie = door.cookie(token);
            assertTrue(cookie.contains("; Max-Age=2592000; "), cookie);
            assertEquals(List.of(cookie), door.renewedCookies(headers("Cookie", pair(cookie))));
        }
        assertEquals(List.of(), door.renewedCookies(headers("Cookie", "lampwright-61117=forged")));
        assertEquals(List.of(), door.renewedCookies(headers("Authorization", "Bearer " + PageRig.TOKEN)));
    }

    /** Source of the path: RFC 6265, section 4.1.2.4; the server does not rely on it. */
    @Test
    void aRigsTokenOpensNothingElseByAnyWay() throws IOException {
        String rigToken = "for-alder-and-no-other";
        AccessCheck whole = guarded();
        AccessCheck alder =
                whole.ofRig("alder", new PageTokens(Optional.empty(), Optional.of(token(rigToken)), Optional.empty()));
        AccessCheck birch = whole.ofRig("birch", PageTokens.NONE);
        String cookie = alder.cookie(rigToken);
        assertTrue(cookie.contains("; Path=/alder/; "), cookie);
        assertEquals(List.of(cookie), alder.renewedCookies(headers("Cookie", pair(cookie))));
        for (String[] pass : new String[][] {{"Authorization", "Bearer " + rigToken}, {"Cookie", pair(cookie)}}) {
            assertEquals(200, status(watching(alder, pass)));
            assertEquals(403, status(asking(alder, pass)), "no token to ask with lets nobody ask");
            assertEquals(401, status(watching(birch, pass)));
            assertEquals(401, status(watching(whole, pass)));
            assertFalse(alder.opensAll(headers(pass)));
        }
        assertEquals(401, status(watching(alder)), "a stranger stays one");
        String forAll = alder.cookie(PageRig.TOKEN);
        assertTrue(forAll.contains("; Path=/; "), forAll);
        assertEquals(200, status(asking(birch, "Cookie", pair(cookie) + "; " + pair(forAll))));
        assertTrue(alder.opensAll(headers("Cookie", pair(forAll))));
        assertEquals(2, alder.noCookies().size(), "whoever leaves leaves all");
    }

    @Test
    void wrongTokensOfAllRigsCountTogether() throws IOException {
        AccessCheck whole = guarded();
        for (int i = 0; i < 5; i++) {
            assertEquals(401, status(whole.ofRig("rig" + i, PageTokens.NONE).refuseToken("guess number " + i, FROM)));
        }
        assertEquals(429, status(whole.refuseToken("guess number 6", FROM)));
    }

    /** Others need the token, and if there is none, they cannot fit. */
    @Test
    void theFirstFittingIsOpenHereAlone() throws IOException {
        InetAddress phone = InetAddress.getByName("192.0.2.7");
        PageTokens tokens =
                new PageTokens(Optional.of(token(PageRig.TOKEN)), Optional.empty(), Optional.of(token(PageRig.TOKEN)));
        AccessCheck door = AccessCheck.first(tokens, () -> PageTokens.NONE, 61117);
        Headers here = headers("Host", "localhost:61117");
        Headers there = headers("Host", "192.0.2.2:61117");
        Headers known = headers("Host", "192.0.2.2:61117", "Cookie", pair(door.cookie(PageRig.TOKEN)));
        for (PageTokens.Right right : List.of(PageTokens.Right.WATCH, PageTokens.Right.EDIT)) {
            assertEquals(200, status(door.refuse(right, here, FROM)));
            assertEquals(401, status(door.refuse(right, here, phone)), "the name alone proves nothing");
            assertEquals(401, status(door.refuse(right, there, FROM)));
            assertEquals(401, status(door.refuse(right, there, phone)));
            assertEquals(200, status(door.refuse(right, known, phone)));
        }
        assertEquals(Optional.empty(), door.nextCookie(known));
        AccessCheck without = AccessCheck.first(PageTokens.NONE, () -> PageTokens.NONE, 61117);
        assertEquals(200, status(without.refuse(PageTokens.Right.EDIT, here, FROM)));
        assertEquals(403, status(without.refuse(PageTokens.Right.EDIT, there, FROM)));
    }

    @Test
    void anotherTokenMakesOldCookiesWorthless() throws IOException {
        String cookie = guarded().cookie(PageRig.TOKEN);
        AccessCheck other = guarded("another-token-altogether", false);
        assertEquals(401, status(asking(other, "Cookie", pair(cookie))));
    }

    @Test
    void whoGuessesHasToWaitAndWhoKnowsTheTokenNeedNot() throws IOException {
        AccessCheck door = guarded();
        for (int i = 0; i < 5; i++) {
            assertEquals(401, status(door.refuseToken("guess number " + i, FROM)));
        }
        HttpCall.Refusal refusal = door.refuseToken("guess number 6", FROM).orElseThrow();
        assertEquals(429, refusal.status());
        assertEquals("5", refusal.headers().get("Retry-After"));
        assertEquals(
                401, status(door.refuseToken("guess", InetAddress.getByName("192.0.2.1"))), "others need not wait");
        assertEquals(200, status(door.refuseToken(PageRig.TOKEN, FROM)), "one address may be many people's");
    }

    @Test
    void aComplaintNamesTheKey() {
        String why = assertThrows(IOException.class, () -> Token.read("view_token_file", folder.resolve("nothing")))
                .getMessage();
        assertTrue(why.startsWith("page.view_token_file " + folder), why);
    }

    @Test
    void aTokenThatCouldBeGuessedIsNone() throws IOException {
        assertTrue(complaint(file("short\n")).contains("fewer than 16 characters"));
        assertTrue(complaint(file("")).contains("fewer than 16 characters"));
        assertTrue(complaint(folder.resolve("nothing")).contains("does not exist"));
        Files.write(folder.resolve("token"), new byte[] {(byte) 0xff, (byte) 0xfe, 0});
        assertTrue(complaint(folder.resolve("token")).contains("is not UTF-8 text"));
    }

    private static String complaint(Path file) {
        try {
            Token.read("token_file", file);
            throw new AssertionError("taken");
        } catch (IOException e) {
            return e.getMessage();
        }
    }
}
