package org.girandole.protocol;

/**
 * @param uri of the script's document
 * @param wind to try, or null for the wind of the script
 */
public record SiteParams(String uri, WindView wind) {
}
