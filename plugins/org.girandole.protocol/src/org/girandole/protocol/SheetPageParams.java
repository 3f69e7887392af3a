package org.girandole.protocol;

/**
 * @param uri of the script's document
 * @param id of the sheet
 * @param page from 1; what lies outside is taken to the nearest page
 * @param widthPx wanted width of the picture; 100 to 4000
 */
public record SheetPageParams(String uri, String id, int page, int widthPx) {
}
