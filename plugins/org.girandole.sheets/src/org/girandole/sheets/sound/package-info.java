/** What of a show is heard or laid beside the music: timecode files and files of marks. */
package org.girandole.sheets.sound;
