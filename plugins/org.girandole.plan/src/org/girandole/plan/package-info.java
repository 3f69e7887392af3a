/** plan */
package org.girandole.plan;
