package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.files.DiskFile;
import org.girandole.lang.files.Listening;
import org.girandole.lang.files.ProjectRoot;
import org.girandole.lang.show.AudioField;
import org.girandole.music.audio.AudioFacts;
import org.girandole.plan.script.AudioFile;
import org.girandole.plan.script.InputFile;
import org.girandole.plan.script.SourceRef;

/** Files that a script names and that are no scripts. */
final class NamedFiles {
    private static final Pattern SHA256 = Pattern.compile("[0-9a-fA-F]{64}");

    private final Compilation compilation;

    NamedFiles(Compilation compilation) {
        this.compilation = compilation;
    }

    /** The recording of a soundtrack. That it is missing or unreadable is for the rules to say. */
    Optional<AudioFile> audio(AudioField field) {
        if (field.getFile() == null) {
            return Optional.empty();
        }
        SourceRef source = compilation.sources().of(field, eINSTANCE.getAudioField_File());
        Optional<Path> file = inProject(field, eINSTANCE.getAudioField_File(), field.getFile());
        if (file.isEmpty()) {
            return Optional.empty();
        }
        Optional<String> hash = Optional.ofNullable(field.getHash());
        if (hash.isPresent() && !SHA256.matcher(hash.get()).matches()) {
            compilation.problems().report(LanguageRules.UNKNOWN_WORD, "This is no SHA-256 hash").found(Words.shown(hash.get()),
                    "64 digits of 0 to 9 and a to f").remedy("copy the hash from the release that was signed off, or leave it out")
                    .at(compilation.sources().of(field, eINSTANCE.getAudioField_Hash()));
            hash = Optional.empty();
        }
        String path = ProjectRoot.relative(compilation.root(), file.get());
        Optional<AudioFile.Facts> facts = Optional.empty();
        Optional<AudioFile.Heard> heard = Optional.empty();
        Optional<String> trouble = Optional.empty();
        if (!DiskFile.readable(file.get())) {
            trouble = Optional.of("there is no such file");
        } else {
            try {
                Listening listening = compilation.recordings().listening(file.get());
                AudioFacts found = listening.facts();
                facts = Optional.of(new AudioFile.Facts(found.sha256(), found.lengthUs(), found.sampleRate(), found.channels(), found.remarks()));
                heard = listening.heard().map(track -> new AudioFile.Heard(track.onsets(), track.silences()));
                compilation.input(new InputFile(path, found.sha256()));
            } catch (IOException e) {
                trouble = Optional.of(e.getMessage());
            }
        }
        return Optional.of(new AudioFile(path, facts, trouble, hash.map(h -> h.toLowerCase(Locale.ROOT)), source, heard));
    }

    /** A file that a script names; one outside of the project is reported. */
    Optional<Path> inProject(EObject owner, EStructuralFeature feature, String written) {
        Path script = ProjectRoot.path(owner.eResource().getURI());
        Optional<Path> file = DiskFile.beside(script, written);
        if (file.isEmpty() || !ProjectRoot.contains(compilation.root(), file.get())) {
            compilation.problems().report(LanguageRules.USE_OUTSIDE, "'" + Words.shown(written) + "' lies outside of the project")
                    .found(Words.shown(written), "a path relative to this file, inside the project")
                    .remedy("copy the file into the project").at(compilation.sources().of(owner, feature));
            return Optional.empty();
        }
        return file;
    }
}
