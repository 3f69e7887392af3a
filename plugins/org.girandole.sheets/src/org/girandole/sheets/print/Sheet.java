package org.girandole.sheets.print;

/**
 * One finished sheet.
 *
 * @param id number of the sheet's kind and, where there are several of a kind, what it is for: {@code 4 A}, {@code 5 M1}
 * @param fileName without extension, safe in every file system, different for every sheet of a set
 * @param title what stands at its head
 * @param html a whole document, well-formed as XML, that needs no other file
 */
public record Sheet(String id, String fileName, String title, String html) {
}
