package dev.lampwright.history;

import java.time.Instant;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What has happened with each printer, as of one moment.
 *
 * @param asOf the moment
 * @param byPrinter by the printer's name, empty for a single printer without a name
 */
public record Accounts(Instant asOf, Map<String, Account> byPrinter) {
    /** Keeps a copy of the map, in its order. */
    public Accounts {
        byPrinter = Collections.unmodifiableMap(new LinkedHashMap<>(byPrinter));
    }

    /**
     * What has happened with a printer that has no name.
     *
     * @param account what has happened
     * @return the accounts with that only
     */
    static Accounts of(Account account) {
        return new Accounts(account.asOf(), Map.of("", account));
    }

    /**
     * What has happened with one printer.
     *
     * @param printer its name
     * @return its account; an empty one if there is no such printer
     */
    public Account of(String printer) {
        return byPrinter.getOrDefault(printer, new Account(asOf, List.of(), List.of(), List.of(), List.of()));
    }

    /**
     * What lasted until a given time or longer.
     *
     * @param since the time
     * @return the same, without what was over by then
     */
    public Accounts since(Instant since) {
        Map<String, Account> later = new LinkedHashMap<>();
        byPrinter.forEach((printer, account) -> later.put(printer, account.since(since)));
        return new Accounts(asOf, later);
    }
}
