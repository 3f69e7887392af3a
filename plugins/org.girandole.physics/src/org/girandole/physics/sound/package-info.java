/** Speed and delay of sound in air. */
package org.girandole.physics.sound;
