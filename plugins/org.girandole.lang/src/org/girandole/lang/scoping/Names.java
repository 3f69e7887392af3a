package org.girandole.lang.scoping;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.emf.common.notify.impl.AdapterImpl;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.util.EcoreUtil;
import org.eclipse.xtext.resource.XtextResource;
import org.girandole.lang.compile.Sources;
import org.girandole.lang.files.UsedFiles;
import org.girandole.lang.scoping.Kind.Space;
import org.girandole.lang.show.CueLine;
import org.girandole.lang.show.Element;
import org.girandole.lang.show.Field;
import org.girandole.lang.show.FigureDef;
import org.girandole.lang.show.Item;
import org.girandole.lang.show.MarkDef;
import org.girandole.lang.show.Named;
import org.girandole.lang.show.Parameter;
import org.girandole.lang.show.RefField;
import org.girandole.lang.show.RepeatBlock;
import org.girandole.lang.show.ScoreDef;
import org.girandole.lang.show.Script;
import org.girandole.lang.show.SectionDef;
import org.girandole.lang.show.ShowDef;
import org.girandole.lang.show.SiteDef;
import org.girandole.lang.show.SoundtrackDef;

/** The names that can be used in one script: its own and those of the files it uses. Hash tables, built in one pass. */
public final class Names {
    /** Two things under one name. */
    public record Clash(Named first, Named second) {
    }

    private final Map<Space, Map<String, Named>> spaces = new EnumMap<>(Space.class);
    private final Map<EObject, Map<String, Named>> inside = new IdentityHashMap<>();
    private final List<Clash> clashes = new ArrayList<>();

    private Names(UsedFiles.Closure closure) {
        for (Space space : Space.values()) {
            spaces.put(space, new LinkedHashMap<>());
        }
        List<Element> elements = new ArrayList<>();
        for (XtextResource file : closure.files()) {
            if (!file.getContents().isEmpty() && file.getContents().get(0) instanceof Script script) {
                elements.addAll(script.getElements());
            }
        }
        String site = chosenSite(elements);
        for (Element element : elements) {
            add(element);
            if (element instanceof SiteDef def && (site == null || site.equals(def.getName()))) {
                addFields(def.getFields(), null);
            } else if (element instanceof SoundtrackDef def) {
                addFields(def.getFields(), inside.computeIfAbsent(def, d -> new LinkedHashMap<>()));
            } else if (element instanceof FigureDef def) {
                Map<String, Named> parameters = inside.computeIfAbsent(def, d -> new LinkedHashMap<>());
                for (Parameter parameter : def.getParameters()) {
                    put(parameters, parameter);
                }
                addItems(def.getItems(), null);
            } else if (element instanceof ScoreDef def) {
                addItems(def.getItems(), inside.computeIfAbsent(def, d -> new LinkedHashMap<>()));
            }
        }
    }

    /** The names of a script, computed once for each state of its files. */
    public static Names of(UsedFiles used, XtextResource script) {
        UsedFiles.Closure closure = used.of(script);
        Remembered remembered = (Remembered) EcoreUtil.getExistingAdapter(script, Remembered.class);
        if (remembered != null && remembered.closure == closure) {
            return remembered.names;
        }
        Names names = new Names(closure);
        script.eAdapters().removeIf(Remembered.class::isInstance);
        script.eAdapters().add(new Remembered(closure, names));
        return names;
    }

    /** All names of a space, in the order written. */
    public Map<String, Named> in(Space space) {
        return Collections.unmodifiableMap(spaces.get(space));
    }

    /** Marks of a soundtrack, sections of a score, values of a figure. */
    public Map<String, Named> inside(EObject owner) {
        return Collections.unmodifiableMap(inside.getOrDefault(owner, Map.of()));
    }

    public List<Clash> clashes() {
        return Collections.unmodifiableList(clashes);
    }

    /** The site that the show names; null when there is no show or it names none. Its positions are the ones that count. */
    private static String chosenSite(List<Element> elements) {
        for (Element element : elements) {
            if (element instanceof ShowDef show) {
                for (Field field : show.getFields()) {
                    if (field instanceof RefField ref && "site".equals(ref.getKey())) {
                        return Sources.name(ref, eINSTANCE.getRefField_Target());
                    }
                }
            }
        }
        return null;
    }

    private void addFields(List<Field> fields, Map<String, Named> marks) {
        for (Field field : fields) {
            if (field instanceof MarkDef mark && marks != null) {
                put(marks, mark);
            } else {
                add(field);
            }
        }
    }

    /** Goes down nested blocks; the parser keeps their depth small. */
    private void addItems(List<Item> items, Map<String, Named> sections) {
        for (Item item : items) {
            if (item instanceof SectionDef section) {
                if (sections != null) {
                    put(sections, section);
                }
                addItems(section.getItems(), sections);
            } else if (item instanceof RepeatBlock repeat) {
                addItems(repeat.getItems(), sections);
            } else if (item instanceof CueLine cue && cue.getName() != null) {
                add(cue);
            }
        }
    }

    private void add(EObject object) {
        if (object instanceof Named named) {
            Kind.of(object).ifPresent(kind -> put(spaces.get(kind.space()), named));
        }
    }

    private void put(Map<String, Named> space, Named named) {
        if (named.getName() == null || named.getName().isEmpty()) {
            return;
        }
        Named first = space.putIfAbsent(named.getName(), named);
        if (first != null && first != named) {
            clashes.add(new Clash(first, named));
        }
    }

    private static final class Remembered extends AdapterImpl {
        private final UsedFiles.Closure closure;
        private final Names names;

        Remembered(UsedFiles.Closure closure, Names names) {
            this.closure = closure;
            this.names = names;
        }

        @Override
        public boolean isAdapterForType(Object type) {
            return type == Remembered.class;
        }
    }
}
