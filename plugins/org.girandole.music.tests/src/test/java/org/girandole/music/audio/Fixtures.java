package org.girandole.music.audio;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/** The sound files beside this class, and reading a whole source. */
final class Fixtures {
    private Fixtures() {
    }

    static byte[] bytes(String name) throws IOException {
        try (InputStream in = Fixtures.class.getResourceAsStream(name)) {
            return in.readAllBytes();
        }
    }

    static Path file(Path folder, String name) throws IOException {
        return Files.write(folder.resolve(name), bytes(name));
    }

    /** All samples, one array a channel, read in blocks of an odd size. */
    static float[][] samples(Path file) throws IOException {
        try (AudioSource source = AudioFiles.open(file)) {
            float[][] all = new float[source.channels()][1 << 16];
            int at = 0;
            for (int n = source.read(all, at, 777); n >= 0; n = source.read(all, at, 777)) {
                at += n;
                if (all[0].length - at < 777) {
                    grow(all);
                }
            }
            for (int c = 0; c < all.length; c++) {
                all[c] = Arrays.copyOf(all[c], at);
            }
            return all;
        }
    }

    private static void grow(float[][] all) {
        for (int c = 0; c < all.length; c++) {
            all[c] = Arrays.copyOf(all[c], all[c].length * 2);
        }
    }
}
