/* Generated from Show.xtext. */
package org.girandole.lang.ide;


/**
 * Use this class to register ide components.
 */
public class ShowIdeModule extends AbstractShowIdeModule {
}
