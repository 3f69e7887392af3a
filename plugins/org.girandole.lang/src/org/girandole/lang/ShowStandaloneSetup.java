/* Generated from Show.xtext. */
package org.girandole.lang;


/**
 * Initialization support for running Xtext languages without Equinox extension registry.
 */
public class ShowStandaloneSetup extends ShowStandaloneSetupGenerated {

	public static void doSetup() {
		new ShowStandaloneSetup().createInjectorAndDoEMFRegistration();
	}
}
