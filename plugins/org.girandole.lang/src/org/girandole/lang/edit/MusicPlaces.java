package org.girandole.lang.edit;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import com.google.inject.Injector;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.emf.common.util.URI;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.girandole.lang.ShowStandaloneSetup;
import org.girandole.lang.compile.Sources;
import org.girandole.lang.files.DiskFile;
import org.girandole.lang.files.ProjectRoot;
import org.girandole.lang.files.UsedFiles;
import org.girandole.lang.show.AudioField;
import org.girandole.lang.show.BarAnchor;
import org.girandole.lang.show.ClockAnchor;
import org.girandole.lang.show.CueLine;
import org.girandole.lang.show.Field;
import org.girandole.lang.show.MarkDef;
import org.girandole.lang.show.PlayLine;
import org.girandole.lang.show.ScoreDef;
import org.girandole.lang.show.SoundtrackDef;
import org.girandole.lang.show.TempoField;
import org.girandole.lang.show.TimeExpr;

/** Where a show writes its music: soundtracks with tempo and marks, and every moment of its scores that is fixed to the music. */
public final class MusicPlaces {
    private final List<Track> tracks = new ArrayList<>();
    private final Map<Path, String> texts = new LinkedHashMap<>();
    private boolean broken;

    /**
     * A soundtrack.
     *
     * @param audio   the file that it names, if it names one
     * @param end     where its closing brace stands
     * @param tempo   the whole tempo block, if there is one
     * @param moments fixed moments in its marks and in the scores that are played to it, in the order of the text
     */
    public record Track(String name, Path file, Optional<Path> audio, int end, Optional<TextPlace> tempo, List<MarkPlace> marks,
            List<Moment> moments) {
        public Track {
            marks = List.copyOf(marks);
            moments = List.copyOf(moments);
        }
    }

    /**
     * A {@code mark} line.
     *
     * @param clock its time, when it is a clock time and nothing else
     */
    public record MarkPlace(String name, TextPlace whole, Optional<TextPlace> clock) {
    }

    /**
     * A bar with its beat, or a clock time, without what is added to it.
     *
     * @param statement the line it belongs to, when that line means nothing without it: a mark, cue or play; empty for the bounds of
     *                  sections and holds and the beginnings of repetitions
     * @param mark      the name of the mark that it is, or empty
     */
    public record Moment(TextPlace place, boolean clock, Optional<TextPlace> statement, Optional<String> mark) {
    }

    private MusicPlaces() {
    }

    /**
     * Reads a script and all it uses.
     *
     * @throws IOException if the script cannot be read
     */
    public static MusicPlaces of(Path script, Path root) throws IOException {
        Injector injector = new ShowStandaloneSetup().createInjectorAndDoEMFRegistration();
        XtextResourceSet resources = injector.getInstance(XtextResourceSet.class);
        ProjectRoot.set(resources, root);
        UsedFiles files = injector.getInstance(UsedFiles.class);
        XtextResource main = files.load(resources, URI.createFileURI(script.toAbsolutePath().normalize().toString()));
        MusicPlaces places = new MusicPlaces();
        List<XtextResource> all = files.of(main).files();
        for (XtextResource resource : all) {
            places.broken |= resource.getParseResult().hasSyntaxErrors();
            places.texts.put(ProjectRoot.path(resource.getURI()), resource.getParseResult().getRootNode().getText());
        }
        for (XtextResource resource : all) {
            for (SoundtrackDef track : EcoreUtil2.getAllContentsOfType(resource.getContents().get(0), SoundtrackDef.class)) {
                places.track(track, all);
            }
        }
        return places;
    }

    /** Soundtracks, those of used files first. */
    public List<Track> tracks() {
        return List.copyOf(tracks);
    }

    /** Whether some file has syntax errors, so that not all of it was understood. */
    public boolean broken() {
        return broken;
    }

    /** The text of a file as it was read. */
    public String text(Path file) {
        return texts.get(file);
    }

    private void track(SoundtrackDef def, List<XtextResource> all) {
        ICompositeNode node = NodeModelUtils.findActualNodeFor(def);
        if (def.getName() == null || node == null || !node.getText().stripTrailing().endsWith("}")) {
            return;
        }
        Path file = file(def);
        Optional<Path> audio = Optional.empty();
        Optional<TextPlace> tempo = Optional.empty();
        List<MarkPlace> marks = new ArrayList<>();
        List<Moment> moments = new ArrayList<>();
        for (Field field : def.getFields()) {
            if (field instanceof AudioField music && music.getFile() != null) {
                audio = DiskFile.beside(file, music.getFile());
            } else if (field instanceof TempoField && tempo.isEmpty()) {
                tempo = Optional.of(place(field));
            } else if (field instanceof MarkDef mark && mark.getName() != null && mark.getAt() != null) {
                boolean plain = mark.getAt().getAnchor() instanceof ClockAnchor && mark.getAt().getSteps().isEmpty();
                marks.add(new MarkPlace(mark.getName(), place(mark), plain ? Optional.of(place(mark.getAt())) : Optional.empty()));
                moments(mark, moments);
            }
        }
        for (XtextResource resource : all) {
            for (ScoreDef score : EcoreUtil2.getAllContentsOfType(resource.getContents().get(0), ScoreDef.class)) {
                if (Sources.name(score, eINSTANCE.getScoreDef_Soundtrack()).equals(def.getName())) {
                    moments(score, moments);
                }
            }
        }
        tracks.add(new Track(def.getName(), file, audio, node.getEndOffset() - 1, tempo, marks, moments));
    }

    private void moments(EObject within, List<Moment> moments) {
        for (TimeExpr time : EcoreUtil2.getAllContentsOfType(within, TimeExpr.class)) {
            boolean clock = time.getAnchor() instanceof ClockAnchor;
            if (clock || time.getAnchor() instanceof BarAnchor) {
                Optional<String> mark = time.eContainer() instanceof MarkDef def ? Optional.ofNullable(def.getName()) : Optional.empty();
                moments.add(new Moment(place(time.getAnchor()), clock, statement(time.eContainer()), mark));
            }
        }
    }

    private Optional<TextPlace> statement(EObject owner) {
        return owner instanceof MarkDef || owner instanceof CueLine || owner instanceof PlayLine
                ? Optional.of(place(owner)) : Optional.empty();
    }

    private TextPlace place(EObject object) {
        INode node = NodeModelUtils.findActualNodeFor(object);
        Path file = file(object);
        return new TextPlace(file, node.getOffset(), texts.get(file).substring(node.getOffset(), node.getEndOffset()), node.getStartLine());
    }

    private static Path file(EObject object) {
        return ProjectRoot.path(object.eResource().getURI());
    }
}
