/** Firing tables as plain rows and cells: what a column may hold and how it is written. Files are made of them elsewhere. */
package org.girandole.plan.table;
