package org.girandole.lang.files;

import org.eclipse.emf.common.notify.impl.AdapterImpl;
import org.eclipse.emf.ecore.resource.ResourceSet;
import org.eclipse.emf.ecore.util.EcoreUtil;

/** How large a script may be, remembered on its resource set; for programs that hold many scripts in memory at once. */
public final class LargestScript extends AdapterImpl {
    private final int bytes;

    private LargestScript(int bytes) {
        this.bytes = bytes;
    }

    /** Sets the limit for all scripts of a resource set. */
    public static void set(ResourceSet resources, int bytes) {
        resources.eAdapters().removeIf(LargestScript.class::isInstance);
        resources.eAdapters().add(new LargestScript(bytes));
    }

    /** The limit; without one it is what any script may be at most. */
    static int of(ResourceSet resources) {
        LargestScript set = (LargestScript) EcoreUtil.getExistingAdapter(resources, LargestScript.class);
        return set == null ? ScriptText.LARGEST_BYTES : set.bytes;
    }

    @Override
    public boolean isAdapterForType(Object type) {
        return type == LargestScript.class;
    }
}
