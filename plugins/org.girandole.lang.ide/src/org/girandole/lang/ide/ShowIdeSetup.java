/* Generated from Show.xtext. */
package org.girandole.lang.ide;

import com.google.inject.Guice;
import com.google.inject.Injector;
import org.eclipse.xtext.util.Modules2;
import org.girandole.lang.ShowRuntimeModule;
import org.girandole.lang.ShowStandaloneSetup;

/**
 * Initialization support for running Xtext languages as language servers.
 */
public class ShowIdeSetup extends ShowStandaloneSetup {

	@Override
	public Injector createInjector() {
		return Guice.createInjector(Modules2.mixin(new ShowRuntimeModule(), new ShowIdeModule()));
	}
	
}
