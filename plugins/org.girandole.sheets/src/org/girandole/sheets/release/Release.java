package org.girandole.sheets.release;

import java.nio.file.Path;
import java.util.List;

/**
 * A release that was made.
 *
 * @param files all but {@code release.json}, by path
 * @param leftOut what the script asks for and this version does not make
 * @param replaced whether an older release stood there
 */
public record Release(Path folder, List<ReleasedFile> files, List<String> leftOut, boolean replaced) {
    public Release {
        files = List.copyOf(files);
        leftOut = List.copyOf(leftOut);
    }
}
