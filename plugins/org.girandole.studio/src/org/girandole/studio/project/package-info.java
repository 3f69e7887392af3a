/** Show projects: their nature and builder, the wizards, the preference page, the perspective, the comparison. */
package org.girandole.studio.project;
