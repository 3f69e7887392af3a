package org.girandole.lang.scoping;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.eclipse.emf.common.util.URI;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.util.EcoreUtil;
import org.eclipse.xtext.naming.QualifiedName;
import org.eclipse.xtext.resource.EObjectDescription;
import org.eclipse.xtext.resource.IEObjectDescription;
import org.eclipse.xtext.scoping.IScope;
import org.girandole.lang.show.Named;

/** A scope over hash tables: looking up one name touches no other. */
final class NameScope implements IScope {
    private final Lookup.Candidates candidates;

    NameScope(Lookup.Candidates candidates) {
        this.candidates = candidates;
    }

    @Override
    public IEObjectDescription getSingleElement(QualifiedName name) {
        Named named = name == null || name.getSegmentCount() != 1 ? null : candidates.find(name.getFirstSegment());
        return named == null ? null : EObjectDescription.create(name, named);
    }

    @Override
    public Iterable<IEObjectDescription> getElements(QualifiedName name) {
        IEObjectDescription single = getSingleElement(name);
        return single == null ? List.of() : List.of(single);
    }

    @Override
    public IEObjectDescription getSingleElement(EObject object) {
        return object instanceof Named named && candidates.find(named.getName()) == named
                ? EObjectDescription.create(QualifiedName.create(named.getName()), named) : null;
    }

    @Override
    public Iterable<IEObjectDescription> getElements(EObject object) {
        URI wanted = EcoreUtil.getURI(object);
        List<IEObjectDescription> found = new ArrayList<>();
        for (IEObjectDescription description : getAllElements()) {
            if (description.getEObjectOrProxy() == object || description.getEObjectURI().equals(wanted)) {
                found.add(description);
            }
        }
        return found;
    }

    @Override
    public Iterable<IEObjectDescription> getAllElements() {
        List<IEObjectDescription> all = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (Map<String, Named> table : candidates.tables()) {
            for (Map.Entry<String, Named> entry : table.entrySet()) {
                if (seen.add(entry.getKey()) && Kind.of(entry.getValue()).filter(candidates.kinds()::contains).isPresent()) {
                    all.add(EObjectDescription.create(QualifiedName.create(entry.getKey()), entry.getValue()));
                }
            }
        }
        return all;
    }
}
