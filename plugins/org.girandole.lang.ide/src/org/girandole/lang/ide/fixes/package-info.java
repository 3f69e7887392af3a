/** Quick fixes, made of what a finding itself says, and rewrites of what is at the caret. No fix changes a fact of the material or the site. */
package org.girandole.lang.ide.fixes;
