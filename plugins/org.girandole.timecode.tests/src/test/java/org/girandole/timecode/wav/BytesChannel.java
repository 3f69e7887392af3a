package org.girandole.timecode.wav;

import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;

/** A file in memory, for reading. */
public final class BytesChannel implements SeekableByteChannel {
	private final byte[] bytes;
	private long position;
	private boolean open = true;

	public BytesChannel(byte[] bytes) {
		this.bytes = bytes;
	}

	@Override
	public int read(ByteBuffer to) {
		if (position >= bytes.length) {
			return -1;
		}
		int count = (int) Math.min(to.remaining(), bytes.length - position);
		to.put(bytes, (int) position, count);
		position += count;
		return count;
	}

	@Override
	public int write(ByteBuffer from) {
		throw new UnsupportedOperationException();
	}

	@Override
	public long position() {
		return position;
	}

	@Override
	public SeekableByteChannel position(long place) {
		if (place < 0) {
			throw new IllegalArgumentException("place " + place);
		}
		position = place;
		return this;
	}

	@Override
	public long size() {
		return bytes.length;
	}

	@Override
	public SeekableByteChannel truncate(long size) {
		throw new UnsupportedOperationException();
	}

	@Override
	public boolean isOpen() {
		return open;
	}

	@Override
	public void close() {
		open = false;
	}
}
