/** {@code plan.json}: the whole computed plan, in a documented form. */
package org.girandole.sheets.json;
