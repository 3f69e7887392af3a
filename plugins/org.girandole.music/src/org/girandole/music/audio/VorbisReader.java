package org.girandole.music.audio;

import com.jcraft.jogg.Packet;
import com.jcraft.jogg.Page;
import com.jcraft.jogg.StreamState;
import com.jcraft.jogg.SyncState;
import com.jcraft.jorbis.Block;
import com.jcraft.jorbis.Comment;
import com.jcraft.jorbis.DspState;
import com.jcraft.jorbis.Info;
import java.io.IOException;
import java.io.InputStream;

/** Ogg Vorbis through the JOrbis library: the first Vorbis stream of the file. */
final class VorbisReader extends DecodedSource {
    private static final int READ = 8192;
    private static final int HEADERS = 3;

    private final InputStream in;
    private final SyncState sync = new SyncState();
    private final StreamState stream = new StreamState();
    private final Page page = new Page();
    private final Packet packet = new Packet();
    private final Info info = new Info();
    private final DspState dsp = new DspState();
    private Block vorbisBlock;
    private int serial;
    private boolean lastPage;
    private boolean gaps;

    private VorbisReader(InputStream in) {
        super(in);
        this.in = in;
        sync.init();
    }

    static AudioSource open(InputStream in) throws IOException {
        VorbisReader reader = new VorbisReader(in);
        try {
            reader.readHeaders();
        } catch (RuntimeException e) {
            throw new AudioException(AudioException.Kind.DAMAGED, "The Ogg Vorbis file is damaged in its header", e);
        }
        return reader;
    }

    private void readHeaders() throws IOException {
        Comment comment = new Comment();
        info.init();
        comment.init();
        if (!nextPage()) {
            throw header();
        }
        serial = page.serialno();
        stream.init(serial);
        stream.reset();
        stream.pagein(page);
        for (int found = 0; found < HEADERS;) {
            int state = stream.packetout(packet);
            if (state == 1) {
                if (info.synthesis_headerin(comment, packet) < 0) {
                    throw found == 0
                            ? new AudioException(AudioException.Kind.UNSUPPORTED, "The Ogg file holds no Vorbis sound; save it as Vorbis, FLAC or WAV")
                            : header();
                }
                found++;
            } else if (state < 0 || !nextPageOfStream()) {
                throw header();
            }
        }
        if (info.channels < 1 || info.rate < 1) {
            throw header();
        }
        dsp.synthesis_init(info);
        vorbisBlock = new Block(dsp);
    }

    private static AudioException header() {
        return new AudioException(AudioException.Kind.DAMAGED, "The Ogg Vorbis file is damaged in its header");
    }

    private boolean nextPageOfStream() throws IOException {
        while (nextPage()) {
            if (page.serialno() == serial) {
                stream.pagein(page);
                return true;
            }
        }
        return false;
    }

    private boolean nextPage() throws IOException {
        while (true) {
            int state = sync.pageout(page);
            if (state == 1) {
                return true;
            }
            gaps |= state < 0;
            int at = sync.buffer(READ);
            int n = in.read(sync.data, at, READ);
            if (n <= 0) {
                return false;
            }
            sync.wrote(n);
        }
    }

    @Override
    boolean decodeMore() throws IOException {
        float[][][] pcm = new float[1][][];
        int[] index = new int[info.channels];
        int frames = dsp.synthesis_pcmout(pcm, index);
        if (frames > 0) {
            float[][] samples = new float[info.channels][frames];
            for (int c = 0; c < info.channels; c++) {
                System.arraycopy(pcm[0][c], index[c], samples[c], 0, frames);
            }
            dsp.synthesis_read(frames);
            deliver(samples, frames);
            return true;
        }
        int state = stream.packetout(packet);
        if (state == 1) {
            if (vorbisBlock.synthesis(packet) == 0) {
                dsp.synthesis_blockin(vorbisBlock);
            }
            return true;
        }
        if (state < 0) {
            gaps = true;
            return true;
        }
        if (lastPage || !nextPageOfStream()) {
            return false;
        }
        if (page.eos() != 0) {
            lastPage = true;
            // The position of the last page is the true end; its last block reaches beyond (Vorbis I, section A.2).
            if (page.granulepos() > 0) {
                endAt(page.granulepos());
            }
        }
        return true;
    }

    @Override
    void atEnd() {
        if (!lastPage) {
            remark("The file is cut off: its last page is missing");
        }
        if (gaps) {
            remark("Some pages are damaged and were left out");
        }
    }

    @Override
    public String format() {
        return "Ogg Vorbis";
    }

    @Override
    public int sampleRate() {
        return info.rate;
    }

    @Override
    public int channels() {
        return info.channels;
    }

    @Override
    public long frames() {
        return -1;
    }
}
