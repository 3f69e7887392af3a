/** Where a shell goes: rise, burst, unburst fall, debris; and estimates from calibre where data is missing. */
package org.girandole.physics.flight;
