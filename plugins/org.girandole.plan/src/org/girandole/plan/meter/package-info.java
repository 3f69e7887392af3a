/** The crew's continuity readings held against what every pin should show. */
package org.girandole.plan.meter;
