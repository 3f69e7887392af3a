/*
 * The counterpart for linear timecode: a plain front to libltc, so that tests and benchmarks can hold our signal against an independent
 * implementation. Raw files are mono; 8-bit unsigned (u8) or 32-bit float (f32) in the byte order of the machine.
 *
 *   word   RATE LABEL USERBITS                             the ten bytes of a word, in hexadecimal
 *   encode RATE LABEL USERBITS FRAMES SAMPLERATE DBFS OUT  writes u8
 *   decode f32|u8 IN SAMPLERATE FPS                        one line a frame: label, drop flag, user bits, first and last sample, reverse, level
 *   bench-encode RATE SAMPLERATE SECONDS REPEATS           nanoseconds of processor time a sample, best of the repeats
 *   bench-decode f32|u8 IN SAMPLERATE FPS REPEATS          nanoseconds of processor time a sample, best of the repeats, and frames decoded
 *
 * RATE is 23.976, 24, 25, 29.97, 29.97d or 30; a LABEL is hh:mm:ss:ff; USERBITS are eight hexadecimal digits.
 */
#include <ltc.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

struct rate {
	double fps;
	enum LTC_TV_STANDARD standard;
	int drop;
};

static void fail(const char *what, const char *detail) {
	fprintf(stderr, "%s: %s\n", what, detail);
	exit(2);
}

static struct rate rate_of(const char *name) {
	struct rate r = { 0, LTC_TV_525_60, 0 };
	if (!strcmp(name, "23.976")) {
		r.fps = 24000.0 / 1001.0;
		r.standard = LTC_TV_FILM_24;
	} else if (!strcmp(name, "24")) {
		r.fps = 24;
		r.standard = LTC_TV_FILM_24;
	} else if (!strcmp(name, "25")) {
		r.fps = 25;
		r.standard = LTC_TV_625_50;
	} else if (!strcmp(name, "29.97")) {
		r.fps = 30000.0 / 1001.0;
	} else if (!strcmp(name, "29.97d")) {
		r.fps = 30000.0 / 1001.0;
		r.drop = 1;
	} else if (!strcmp(name, "30")) {
		r.fps = 30;
	} else {
		fail("unknown rate", name);
	}
	return r;
}

static LTCEncoder *encoder_for(struct rate r, const char *label, const char *user, double sample_rate) {
	unsigned h, m, s, f;
	if (sscanf(label, "%u:%u:%u:%u", &h, &m, &s, &f) != 4) {
		fail("no label", label);
	}
	LTCEncoder *e = ltc_encoder_create(sample_rate, r.fps, r.standard, 0);
	if (!e) {
		fail("cannot create an encoder for", label);
	}
	SMPTETimecode t;
	memset(&t, 0, sizeof t);
	strcpy(t.timezone, "+0000");
	t.hours = h;
	t.mins = m;
	t.secs = s;
	t.frame = f;
	ltc_encoder_set_timecode(e, &t);
	ltc_encoder_set_user_bits(e, strtoul(user, NULL, 16));
	LTCFrame frame;
	ltc_encoder_get_frame(e, &frame);
	frame.dfbit = r.drop;
	ltc_frame_set_parity(&frame, r.standard);
	ltc_encoder_set_frame(e, &frame);
	return e;
}

static void *slurp(const char *path, size_t *size) {
	FILE *in = fopen(path, "rb");
	if (!in) {
		fail("cannot open", path);
	}
	fseek(in, 0, SEEK_END);
	*size = ftell(in);
	rewind(in);
	void *data = malloc(*size + 1);
	if (!data || fread(data, 1, *size, in) != *size) {
		fail("cannot read", path);
	}
	fclose(in);
	return data;
}

static void print_frame(LTCFrameExt *frame) {
	SMPTETimecode t;
	ltc_frame_to_time(&t, &frame->ltc, 0);
	printf("%02d:%02d:%02d:%02d %d %08lx %lld %lld %d %.2f\n", t.hours, t.mins, t.secs, t.frame, frame->ltc.dfbit,
			ltc_frame_get_user_bits(&frame->ltc), frame->off_start, frame->off_end, frame->reverse ? 1 : 0, frame->volume);
}

static long decode(const char *format, void *data, size_t size, int apv, int print) {
	int is_float = !strcmp(format, "f32");
	size_t samples = is_float ? size / sizeof(float) : size;
	LTCDecoder *d = ltc_decoder_create(apv, 64);
	LTCFrameExt frame;
	long frames = 0;
	for (size_t at = 0; at < samples; at += 1024) {
		size_t count = samples - at < 1024 ? samples - at : 1024;
		if (is_float) {
			ltc_decoder_write_float(d, (float *) data + at, count, at);
		} else {
			ltc_decoder_write(d, (ltcsnd_sample_t *) data + at, count, at);
		}
		while (ltc_decoder_read(d, &frame)) {
			frames++;
			if (print) {
				print_frame(&frame);
			}
		}
	}
	ltc_decoder_free(d);
	return frames;
}

static double now(void) {
	struct timespec t;
	clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
	return t.tv_sec * 1e9 + t.tv_nsec;
}

int main(int argc, char **argv) {
	if (argc == 5 && !strcmp(argv[1], "word")) {
		LTCEncoder *e = encoder_for(rate_of(argv[2]), argv[3], argv[4], 48000);
		LTCFrame frame;
		ltc_encoder_get_frame(e, &frame);
		unsigned char *bytes = (unsigned char *) &frame;
		for (int i = 0; i < 10; i++) {
			printf("%02X%s", bytes[i], i < 9 ? " " : "\n");
		}
		ltc_encoder_free(e);
	} else if (argc == 9 && !strcmp(argv[1], "encode")) {
		LTCEncoder *e = encoder_for(rate_of(argv[2]), argv[3], argv[4], atof(argv[6]));
		ltc_encoder_set_volume(e, atof(argv[7]));
		FILE *out = fopen(argv[8], "wb");
		if (!out) {
			fail("cannot write", argv[8]);
		}
		for (long i = atol(argv[5]); i > 0; i--) {
			ltcsnd_sample_t *buffer;
			ltc_encoder_encode_frame(e);
			int count = ltc_encoder_get_bufferptr(e, &buffer, 1);
			if (fwrite(buffer, 1, count, out) != (size_t) count) {
				fail("cannot write", argv[8]);
			}
			ltc_encoder_inc_timecode(e);
		}
		fclose(out);
		ltc_encoder_free(e);
	} else if (argc == 6 && !strcmp(argv[1], "decode")) {
		size_t size;
		void *data = slurp(argv[3], &size);
		decode(argv[2], data, size, (int) (atof(argv[4]) / atof(argv[5])), 1);
		free(data);
	} else if (argc == 6 && !strcmp(argv[1], "bench-encode")) {
		struct rate r = rate_of(argv[2]);
		long frames = (long) (r.fps * atof(argv[4]));
		double best = 1e300;
		for (int repeat = atoi(argv[5]); repeat > 0; repeat--) {
			LTCEncoder *e = encoder_for(r, "10:00:00:00", "00000000", atof(argv[3]));
			long samples = 0;
			double begin = now();
			for (long i = 0; i < frames; i++) {
				ltcsnd_sample_t *buffer;
				ltc_encoder_encode_frame(e);
				samples += ltc_encoder_get_bufferptr(e, &buffer, 1);
				ltc_encoder_inc_timecode(e);
			}
			double each = (now() - begin) / samples;
			best = each < best ? each : best;
			ltc_encoder_free(e);
		}
		printf("%.3f\n", best);
	} else if (argc == 7 && !strcmp(argv[1], "bench-decode")) {
		size_t size;
		void *data = slurp(argv[3], &size);
		size_t samples = !strcmp(argv[2], "f32") ? size / sizeof(float) : size;
		double best = 1e300;
		long frames = 0;
		for (int repeat = atoi(argv[6]); repeat > 0; repeat--) {
			double begin = now();
			frames = decode(argv[2], data, size, (int) (atof(argv[4]) / atof(argv[5])), 0);
			double each = (now() - begin) / samples;
			best = each < best ? each : best;
		}
		printf("%.3f %ld\n", best, frames);
		free(data);
	} else {
		fail("usage", "see the head of ltc_counterpart.c");
	}
	return 0;
}
