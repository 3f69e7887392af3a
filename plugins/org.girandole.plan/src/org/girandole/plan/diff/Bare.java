package org.girandole.plan.diff;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.girandole.plan.script.SourceRef;

/**
 * Equality of values but for where they are written. A line inserted above a block moves every source reference below it; that is
 * no change of the show.
 */
final class Bare {
    private static final Map<Class<?>, Method[]> ACCESSORS = new ConcurrentHashMap<>();

    private Bare() {
    }

    static boolean equal(Object a, Object b) {
        if (a == b) {
            return true;
        }
        if (a == null || b == null || a.getClass() != b.getClass() && !(a instanceof List && b instanceof List)) {
            return false;
        }
        if (a instanceof SourceRef) {
            return true;
        }
        if (a instanceof Optional<?> left) {
            return equal(left.orElse(null), ((Optional<?>) b).orElse(null));
        }
        if (a instanceof List<?> left) {
            return equalLists(left, (List<?>) b);
        }
        if (a instanceof Record) {
            return equalRecords(a, b);
        }
        return Objects.equals(a, b);
    }

    private static boolean equalLists(List<?> a, List<?> b) {
        if (a.size() != b.size()) {
            return false;
        }
        for (int i = 0; i < a.size(); i++) {
            if (!equal(a.get(i), b.get(i))) {
                return false;
            }
        }
        return true;
    }

    private static boolean equalRecords(Object a, Object b) {
        for (Method accessor : ACCESSORS.computeIfAbsent(a.getClass(), Bare::accessorsOf)) {
            try {
                if (!equal(accessor.invoke(a), accessor.invoke(b))) {
                    return false;
                }
            } catch (IllegalAccessException | InvocationTargetException e) {
                throw new IllegalStateException("cannot read " + accessor, e);
            }
        }
        return true;
    }

    private static Method[] accessorsOf(Class<?> type) {
        Method[] accessors = Arrays.stream(type.getRecordComponents()).map(RecordComponent::getAccessor).toArray(Method[]::new);
        for (Method accessor : accessors) {
            accessor.setAccessible(true);
        }
        return accessors;
    }
}
