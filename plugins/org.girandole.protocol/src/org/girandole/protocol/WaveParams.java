package org.girandole.protocol;

/**
 * @param uri of the script's document
 * @param track name of the soundtrack
 */
public record WaveParams(String uri, String track) {
}
