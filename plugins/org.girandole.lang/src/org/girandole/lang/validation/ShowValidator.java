/* Generated from Show.xtext. */
package org.girandole.lang.validation;


/**
 * This class contains custom validation rules. 
 *
 * See https://www.eclipse.org/Xtext/documentation/303_runtime_concepts.html#validation
 */
public class ShowValidator extends AbstractShowValidator {
	
//	public static final String INVALID_NAME = "invalidName";
//
//	@Check
//	public void checkGreetingStartsWithCapital(Greeting greeting) {
//		if (!Character.isUpperCase(greeting.getName().charAt(0))) {
//			warning("Name should start with a capital",
//					ShowPackage.Literals.GREETING__NAME,
//					INVALID_NAME);
//		}
//	}
	
}
