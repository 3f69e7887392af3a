package org.girandole.sheets.release;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ThreadLocalRandom;
import java.util.stream.Stream;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Finding;
import org.girandole.plan.Severity;
import org.girandole.plan.table.TableException;
import org.girandole.sheets.release.ReleaseException.Reason;
import org.girandole.timecode.TimecodeException;

/**
 * Makes a release: everything is written into a new folder beside the wanted one, which takes its place only when it is whole. An
 * older release stands untouched until then.
 */
public final class Releaser {
    /** Less room than this left on the disk after a failure means that the disk was full. */
    private static final long FULL_BYTES = 1 << 20;

    private Releaser() {
    }

    /**
     * Releases a plan alone, without the scripts it was read from.
     *
     * @param folder new, empty, or an older release
     * @throws ReleaseException when nothing was released
     */
    public static Release release(CheckedPlan checked, Path folder, String toolVersion) throws ReleaseException {
        return release(new ReleaseOrder(checked, toolVersion, Optional.empty(), Optional.empty(), false), folder);
    }

    /**
     * Releases a show.
     *
     * @param folder new, empty, or an older release
     * @throws ReleaseException when nothing was released
     */
    public static Release release(ReleaseOrder order, Path folder) throws ReleaseException {
        requireClean(order.checked());
        Path target = target(folder);
        try {
            boolean older = Files.exists(target) && !isEmpty(target);
            if (older) {
                OlderRelease.check(target);
            }
            Files.createDirectories(target.getParent());
            return build(order, target, older);
        } catch (IOException | UncheckedIOException e) {
            throw new ReleaseException(Reason.FOLDER, trouble(target, e), e);
        }
    }

    private static Release build(ReleaseOrder order, Path target, boolean older)
            throws ReleaseException, IOException {
        Path staging = Files.createDirectory(beside(target, "new"));
        Cleaner cleaner = new Cleaner(staging);
        Runtime.getRuntime().addShutdownHook(cleaner);
        try {
            Release release = write(order, staging, target, older);
            if (!order.disposable()) {
                StampUse.check(staging, target);
            }
            swap(staging, target, older);
            return release;
        } catch (TableException | TimecodeException e) {
            throw new ReleaseException(Reason.SCRIPT, "Nothing was released: " + e.getMessage(), e);
        } catch (IOException | UncheckedIOException e) {
            // Told here, while the unfinished files still take their room: afterwards the disk is not full any more.
            throw new ReleaseException(Reason.FOLDER, trouble(target, e), e);
        } finally {
            delete(staging);
            Runtime.getRuntime().removeShutdownHook(cleaner);
        }
    }

    private static void requireClean(CheckedPlan checked) throws ReleaseException {
        List<Finding> open = checked.findings().stream().filter(f -> f.severity() == Severity.ERROR && !f.waived()).toList();
        if (!open.isEmpty()) {
            boolean one = open.size() == 1;
            throw new ReleaseException(Reason.NOT_CLEAN, "Nothing was released: the show has " + open.size() + (one ? " error" : " errors")
                    + " that nobody has agreed to. Mend " + (one ? "it" : "them") + ", or waive " + (one ? "it" : "them") + " in writing.");
        }
    }

    private static Path target(Path folder) throws ReleaseException {
        try {
            Path target = Files.exists(folder) ? folder.toRealPath() : folder.toAbsolutePath().normalize();
            if (target.getParent() == null || target.equals(Path.of("").toRealPath())) {
                throw new ReleaseException(Reason.FOLDER, "Nothing was released: '" + folder
                        + "' cannot be replaced as a whole. Name a folder inside it.");
            }
            if (Files.exists(target) && !Files.isDirectory(target)) {
                throw new ReleaseException(Reason.FOLDER, "Nothing was released: '" + folder + "' is a file. Name a folder.");
            }
            return target;
        } catch (IOException e) {
            throw new ReleaseException(Reason.FOLDER, trouble(folder, e), e);
        }
    }

    private static Release write(ReleaseOrder order, Path staging, Path target, boolean replaces) throws IOException {
        ReleaseFolder folder = new ReleaseFolder(staging);
        List<String> leftOut = new ArrayList<>();
        List<ReleasePart> parts = List.of(new ScriptsPart(order.origin()), new PlanPart(), new TablesPart(), new SheetsPart(order.since()),
                new TimecodePart(), new MarksPart());
        for (ReleasePart part : parts) {
            leftOut.addAll(part.write(order.checked(), order.toolVersion(), folder));
        }
        List<ReleasedFile> files = folder.files();
        folder.writeText(ReleaseJson.NAME, out -> ReleaseJson.write(order, files, leftOut, out));
        return new Release(target, files, leftOut, replaces);
    }

    /** Puts the new folder in its place; an older release is moved aside first and brought back if that fails. */
    private static void swap(Path staging, Path target, boolean older) throws IOException {
        if (!older) {
            Files.deleteIfExists(target);
            Files.move(staging, target, StandardCopyOption.ATOMIC_MOVE);
            return;
        }
        Path aside = beside(target, "old");
        Files.move(target, aside, StandardCopyOption.ATOMIC_MOVE);
        try {
            Files.move(staging, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            Files.move(aside, target, StandardCopyOption.ATOMIC_MOVE);
            throw e;
        }
        delete(aside);
    }

    private static Path beside(Path target, String word) {
        byte[] random = new byte[6];
        // The name is never seen in an output: it only keeps two runs apart.
        ThreadLocalRandom.current().nextBytes(random);
        return target.resolveSibling("." + target.getFileName() + "." + word + "-" + HexFormat.of().formatHex(random));
    }

    private static boolean isEmpty(Path folder) throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.findAny().isEmpty();
        }
    }

    private static void delete(Path folder) {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> walk = Files.walk(folder)) {
            for (Path path : walk.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(path);
            }
        } catch (IOException | UncheckedIOException e) {
            // What cannot be removed stays under its hidden name; the release itself is whole or untouched.
            return;
        }
    }

    private static String trouble(Path target, Exception e) {
        Throwable cause = e instanceof UncheckedIOException unchecked ? unchecked.getCause() : e;
        String start = "Nothing was released into '" + target + "', and what was there is unchanged: ";
        if (full(target)) {
            return start + "the disk is full. Free some room, or release onto another disk.";
        }
        if (cause instanceof AccessDeniedException denied) {
            return start + "'" + denied.getFile() + "' may not be written. Release into a folder that is yours.";
        }
        return start + (cause.getMessage() == null ? cause.getClass().getSimpleName() : cause.getMessage());
    }

    private static boolean full(Path target) {
        try {
            Path there = target;
            while (there != null && !Files.exists(there)) {
                there = there.getParent();
            }
            return there != null && Files.getFileStore(there).getUsableSpace() < FULL_BYTES;
        } catch (IOException e) {
            return false;
        }
    }

    /** Removes the unfinished folder when the program is interrupted. */
    private static final class Cleaner extends Thread {
        private final Path staging;

        Cleaner(Path staging) {
            super("unfinished release");
            this.staging = staging;
        }

        @Override
        public void run() {
            delete(staging);
        }
    }
}
