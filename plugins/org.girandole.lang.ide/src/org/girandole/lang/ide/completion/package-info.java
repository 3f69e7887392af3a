/**
 * What can be written at the caret. Goes by the words before it, not by the parsed model, because at the caret the script is half written
 * more often than not; names come from the model, and what is still free from the last plan.
 */
package org.girandole.lang.ide.completion;
