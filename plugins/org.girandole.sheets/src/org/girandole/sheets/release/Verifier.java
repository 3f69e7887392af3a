package org.girandole.sheets.release;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import org.girandole.plan.ReleaseStamp;
import org.girandole.sheets.release.FolderCheck.Difference;
import org.girandole.sheets.release.ReleaseException.Reason;
import org.girandole.sheets.release.ReleaseIndex.IndexException;

/** Proves that a release folder is whole and unaltered, and that its parts belong together. */
public final class Verifier {
    private Verifier() {
    }

    /**
     * Looks at every file of a release.
     *
     * @throws ReleaseException when the folder is no release or cannot be read
     */
    public static Verification verify(Path folder) throws ReleaseException {
        if (!Files.isDirectory(folder)) {
            throw new ReleaseException(Reason.FOLDER, "There is no folder '" + folder + "'. Name the folder of a release.");
        }
        try {
            Path root = folder.toRealPath();
            ReleaseIndex index = ReleaseIndex.read(root);
            List<String> faults = new ArrayList<>();
            stamp(index, faults);
            SortedMap<String, Difference> differences = FolderCheck.differences(root, index);
            for (Map.Entry<String, Difference> file : differences.entrySet()) {
                faults.add("'" + file.getKey() + "' " + switch (file.getValue()) {
                    case MISSING -> "is missing";
                    case FOREIGN -> "is no part of the release";
                    case CHANGED -> "was changed after it was released";
                });
            }
            stamps(root, index, differences, faults);
            return new Verification(index.label(), index.stampPrinted(), index.version(), index.files().size() + 1,
                    Hashes.of(root.resolve(ReleaseJson.NAME)), faults);
        } catch (IndexException e) {
            throw new ReleaseException(Reason.FOLDER, "The folder '" + folder + "' is not a release. " + e.getMessage());
        } catch (IOException | UncheckedIOException e) {
            throw new ReleaseException(Reason.FOLDER, "The folder '" + folder + "' cannot be read whole: " + e.getMessage(), e);
        }
    }

    private static void stamp(ReleaseIndex index, List<String> faults) {
        ReleaseStamp stamp = ReleaseStamp.of(index.inputs());
        if (!stamp.full().equals(index.stamp())) {
            faults.add("'" + ReleaseJson.NAME + "' carries a stamp that is not that of the inputs it names");
        }
        if (!index.stamp().matches("[0-9a-f]{64}") || !new ReleaseStamp(index.stamp()).printed().equals(index.stampPrinted())) {
            faults.add("'" + ReleaseJson.NAME + "' has a printed stamp that is not the beginning of its stamp");
        }
        for (String needed : List.of(PlanPart.NAME, "standard.csv")) {
            if (!index.files().containsKey(needed)) {
                faults.add("'" + needed + "' is in every release, and '" + ReleaseJson.NAME + "' does not name it");
            }
        }
    }

    /** A changed file was told already; what its stamp is does not matter any more. */
    private static void stamps(Path root, ReleaseIndex index, Map<String, Difference> differences, List<String> faults) {
        CarriedStamps carried = new CarriedStamps(root, index);
        for (String path : index.files().keySet()) {
            if (CarriedStamps.carries(path) && !differences.containsKey(path)) {
                carried.trouble(path).ifPresent(what -> faults.add("'" + path + "' does not belong to this release: " + what));
            }
        }
    }
}
