package org.girandole.lang.validation;

/** Has no checks of its own: {@link ShowResourceValidator} reports what the compiler and the rules find, in one pass. */
public class ShowValidator extends AbstractShowValidator {
}
