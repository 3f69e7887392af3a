/** How much wind a plan bears. */
package org.girandole.physics.wind;
