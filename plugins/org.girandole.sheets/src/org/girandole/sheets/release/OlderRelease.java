package org.girandole.sheets.release;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import org.girandole.sheets.release.FolderCheck.Difference;
import org.girandole.sheets.release.ReleaseIndex.IndexException;

/** Tells whether a folder holds a release and nothing else, so that replacing it loses nothing that anybody made by hand. */
final class OlderRelease {
    private OlderRelease() {
    }

    /**
     * Passes when everything in the folder is an unchanged part of an older release; a part that is gone is no loss.
     *
     * @throws ReleaseException when the folder holds anything else
     */
    static ReleaseIndex check(Path folder) throws ReleaseException, IOException {
        try {
            ReleaseIndex index = ReleaseIndex.read(folder);
            for (Map.Entry<String, Difference> file : FolderCheck.differences(folder, index).entrySet()) {
                switch (file.getValue()) {
                    case FOREIGN -> throw refuse(folder, "It holds '" + file.getKey() + "', which no release wrote.");
                    case CHANGED -> throw refuse(folder, "'" + file.getKey() + "' was changed after it was released.");
                    case MISSING -> {
                        continue;
                    }
                }
            }
            return index;
        } catch (IndexException e) {
            throw refuse(folder, "It is not empty. " + e.getMessage());
        }
    }

    private static ReleaseException refuse(Path folder, String why) {
        return new ReleaseException(ReleaseException.Reason.FOLDER, "Nothing was released: the folder '" + folder
                + "' is not an older release that can be replaced. " + why
                + " Release into a new folder, or move this one away.");
    }
}
