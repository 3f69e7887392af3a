/** The sheets of a show, page by page. */
package org.girandole.studio.views.sheets;
