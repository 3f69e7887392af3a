package org.girandole.sheets.account;

import org.girandole.plan.CheckedPlan;
import org.girandole.plan.account.Account;
import org.girandole.sheets.print.PaperSize;
import org.girandole.sheets.print.html.AccountSheet;
import org.girandole.sheets.print.html.Page;
import org.girandole.sheets.print.values.Head;

/** The report after the show as a page to print, sign and keep. */
public final class AccountHtml {
    private AccountHtml() {
    }

    /** A whole document that needs no other file, well-formed as XML. */
    public static String of(CheckedPlan checked, Account account, PaperSize paper, String toolVersion) {
        return new AccountSheet(new Page(Head.of(checked, toolVersion), paper)).html(AccountReport.of(account));
    }
}
