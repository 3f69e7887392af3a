package org.girandole.lang.scoping;

import com.google.inject.Inject;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.xtext.scoping.IScope;

/** Gives linking and completion the names that {@link Lookup} knows. */
public class ShowScopeProvider extends AbstractShowScopeProvider {
    @Inject
    private Lookup lookup;

    @Override
    public IScope getScope(EObject context, EReference reference) {
        return context.eResource() == null ? IScope.NULLSCOPE : new NameScope(lookup.candidates(context, reference));
    }
}
