/** physics */
package org.girandole.physics;
