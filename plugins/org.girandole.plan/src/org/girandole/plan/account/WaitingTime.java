package org.girandole.plan.account;

import java.util.List;

/**
 * A published time for which nobody goes near. Which of them binds is for the person in charge to say; the law of the place, the maker and the
 * permit come first.
 *
 * @param rule what is not done, and for how long
 * @param source the document
 */
public record WaitingTime(String rule, String source) {
    /** What is published and was read, the longest first. */
    public static final List<WaitingTime> PUBLISHED = List.of(
            new WaitingTime("30 minutes after the end of the firing: until then nobody goes near a site that was fired electrically",
                    "Explosives Regulations, 2013 (Canada, SOR/2013-211), s. 437"),
            new WaitingTime("15 minutes: until then no dud is handled; then it is doused and left for 5 minutes more",
                    "Oregon Administrative Rules 837-012-0890"),
            new WaitingTime("10 minutes after the end of the firing: until then no mortar is checked or taken up",
                    "Oregon Administrative Rules 837-012-0890"));
}
