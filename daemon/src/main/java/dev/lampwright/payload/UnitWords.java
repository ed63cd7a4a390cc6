package dev.lampwright.payload;

/**
 * How the parts of a duration are called, as regular expressions: full words of a few languages, and what these languages abbreviate them
 * to. The shortest form of one language may be a longer unit in another, so a part counts only where its order fits. From memory.
 */
final class UnitWords {
    static final String DAYS =
            "d(?:ays?)?|tage?n?|jours?|j|días?|dias?|giorn[oi]|dag(?:en|ar)?|dní|dny|dni|gün|nap|päivää|päeva"
                    + "|дн(?:я|ей|і|ів)?|день|д|天|日|일|วัน|ngày|hari|siku";
    static final String HOURS =
            "h(?:rs?|ours?)?|st(?:d|unden?)|heures?|horas?|or[ae]|uur|u|tim(?:mar|er)?|t(?:untia)?|hod(?:in[ay]?)?"
                    + "|godz(?:in[ay]?)?|g|sa(?:at)?|ó(?:ra)?|ч(?:ас(?:а|ов)?)?|год(?:ин[аи]?)?|ώ(?:ρ(?:ες|α))?|小?时|時間|시간|ชั่วโมง|giờ|jam|saa";
    static final String MINUTES =
            "m(?:in(?:ut(?:[aeo]s?|en|er|i|y|os)?)?s?)?|mn|minuuttia|dk|d(?:a)?k(?:ika)?|p(?:erc)?|х(?:в(?:илин[аи]?)?)?|мин(?:ут[аы]?)?"
                    + "|λ(?:επτ(?:ά|ό))?|分钟?|분|นาที|ph(?:út)?|menit|dakika";
    static final String SECONDS =
            "s(?:ec(?:ond)?s?|ek(?:und(?:e[nr]?|er|y)?)?|(?:e[cg]und[oae]s?)|aniye|n|ekuntia)?|mp|másodperc"
                    + "|с(?:ек(?:унд[аиы]?)?)?|δ(?:ευτ(?:ερόλεπτα)?)?|秒|초|วินาที|giây|detik|sekunde";

    private UnitWords() {}
}
