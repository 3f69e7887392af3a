package org.girandole.sheets.release;

import java.io.IOException;
import java.nio.file.Path;

/** Tells whether a folder holds a release and nothing else, so that replacing it loses nothing that anybody made by hand. */
final class OlderRelease {
    private OlderRelease() {
    }

    /**
     * Passes when everything in the folder is an unchanged part of an older release.
     *
     * @throws ReleaseException when the folder holds anything else
     */
    static void check(Path folder) throws ReleaseException, IOException {
        ReleaseIndex index;
        try {
            index = ReleaseIndex.read(folder);
        } catch (ReleaseIndex.Unreadable e) {
            throw refuse(folder, e.getMessage());
        }
        for (String path : ReleaseIndex.filesIn(folder)) {
            String hash = index.hashes().get(path);
            if (hash == null) {
                throw refuse(folder, "It holds '" + path + "', which no release wrote.");
            }
            if (!hash.equals(Hashes.of(folder.resolve(path)))) {
                throw refuse(folder, "'" + path + "' was changed after it was released.");
            }
        }
    }

    private static ReleaseException refuse(Path folder, String why) {
        return new ReleaseException(ReleaseException.Reason.FOLDER, "Nothing was released: the folder '" + folder
                + "' is not an older release that can be replaced. " + why
                + " Release into a new folder, or move this one away.");
    }
}
