package org.girandole.studio.views.workbench;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CancellationException;
import org.eclipse.core.resources.IContainer;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.IJobManager;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.ui.PlatformUI;
import org.girandole.music.audio.AudioException;
import org.girandole.music.synth.PieceRenderer;

/** Plays a Standard MIDI File into the recording of its name that is not there yet, in the background. A recording that is there stays. */
public final class RecordingJob extends Job {
    private static final int PARTS = 1000;

    private final Path piece;
    private final Path recording;

    private RecordingJob(Path piece) {
        super("Playing " + piece.getFileName() + " into a recording");
        this.piece = piece;
        recording = piece.resolveSibling(piece.getFileName().toString().replaceFirst("[.][^.]*$", "") + ".wav");
    }

    /** Begins; does nothing when the piece is being played already. */
    public static void start(Path piece) {
        RecordingJob job = new RecordingJob(piece.toAbsolutePath().normalize());
        IJobManager jobs = Job.getJobManager();
        for (Job running : jobs.find(RecordingJob.class)) {
            if (((RecordingJob) running).piece.equals(job.piece)) {
                return;
            }
        }
        job.schedule();
    }

    /** All of them are of one family, by which they can be found. */
    @Override
    public boolean belongsTo(Object family) {
        return family == RecordingJob.class;
    }

    @Override
    protected IStatus run(IProgressMonitor monitor) {
        monitor.beginTask(getName(), PARTS);
        try {
            if (Files.exists(recording)) {
                throw new FileAlreadyExistsException(recording.toString());
            }
            Path part = recording.resolveSibling("." + recording.getFileName() + ".part");
            try {
                play(part, monitor);
                Files.move(part, recording);
            } finally {
                Files.deleteIfExists(part);
            }
            refresh();
            return Status.OK_STATUS;
        } catch (CancellationException e) {
            return Status.CANCEL_STATUS;
        } catch (FileAlreadyExistsException e) {
            return failed("'" + recording.getFileName() + "' is there already and stays as it is. Delete it first if it shall be played anew.");
        } catch (AudioException e) {
            return failed("'" + piece.getFileName() + "' cannot be played: " + e.getMessage() + ". Choose another Standard MIDI File.");
        } catch (IOException e) {
            return failed("'" + recording + "' could not be written. The folder must be yours, with room on its disk.");
        } catch (OutOfMemoryError e) {
            return failed("'" + piece.getFileName() + "' is too long for the memory at hand. Play it with the command line: girandole render.");
        } catch (CoreException e) {
            return failed("'" + recording.getFileName() + "' is written. Press F5 in the project to see it: " + e.getMessage());
        } finally {
            monitor.done();
        }
    }

    private void play(Path part, IProgressMonitor monitor) throws IOException {
        int[] told = new int[1];
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(part))) {
            PieceRenderer.writeWav(Files.readAllBytes(piece), out, share -> {
                int now = (int) (share * PARTS);
                monitor.worked(now - told[0]);
                told[0] = now;
                return !monitor.isCanceled();
            });
        }
    }

    /** The workspace sees the new file, and with it the check. */
    private void refresh() throws CoreException {
        for (IContainer folder : ResourcesPlugin.getWorkspace().getRoot().findContainersForLocationURI(recording.getParent().toUri())) {
            folder.refreshLocal(IResource.DEPTH_ONE, null);
        }
    }

    private IStatus failed(String message) {
        PlatformUI.getWorkbench().getDisplay().asyncExec(() -> MessageDialog.openError(null, getName(), message));
        return Status.warning(message);
    }
}
