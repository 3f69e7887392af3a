package org.girandole.plan.allocate;

import java.util.List;

/** Gives every igniter a pin and every piece a tube. Deterministic: the same requests and field give the same allocation. */
public interface Allocator {
    /** Allocates in the order of firing; what is written by hand comes first and is never changed. */
    Allocation allocate(Field field, List<Request> requests);
}
