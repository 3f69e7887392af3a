/* Generated from Show.xtext. */
package org.girandole.lang;


/**
 * Use this class to register components to be used at runtime / without the Equinox extension registry.
 */
public class ShowRuntimeModule extends AbstractShowRuntimeModule {
}
