/** What a plan takes out of the store and onto the road: computed once, quoted by sheets and rules alike. */
package org.girandole.plan.stock;
