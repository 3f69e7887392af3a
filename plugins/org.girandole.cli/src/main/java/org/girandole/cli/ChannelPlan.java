package org.girandole.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.girandole.timecode.ltc.ChannelFeed;

/** Which channel of a timecode file carries what, as it is written on the command line. */
final class ChannelPlan {
    private static final int MOST_CHANNELS = 64;

    private ChannelPlan() {
    }

    /** Where the music goes; the names are the words of the command line. */
    enum Music {
        none(new ChannelFeed.TimecodeFeed()),
        left(new ChannelFeed.MusicMixFeed(), new ChannelFeed.TimecodeFeed()),
        right(new ChannelFeed.TimecodeFeed(), new ChannelFeed.MusicMixFeed()),
        stereo(new ChannelFeed.MusicFeed(0), new ChannelFeed.MusicFeed(1), new ChannelFeed.TimecodeFeed());

        private final List<ChannelFeed> feeds;

        Music(ChannelFeed... feeds) {
            this.feeds = List.of(feeds);
        }

        List<ChannelFeed> feeds() {
            return feeds;
        }
    }

    /** @throws UserException when the list is not one of channels, or has no timecode */
    static List<ChannelFeed> parse(String list) {
        List<ChannelFeed> feeds = new ArrayList<>();
        for (String word : list.split(",", -1)) {
            feeds.add(feed(word.strip().toLowerCase(Locale.ROOT)));
        }
        if (feeds.size() > MOST_CHANNELS) {
            throw new UserException(ExitCode.USAGE, "--channels names " + feeds.size() + " channels; a file has at most " + MOST_CHANNELS + ".");
        }
        if (feeds.stream().noneMatch(ChannelFeed.TimecodeFeed.class::isInstance)) {
            throw new UserException(ExitCode.USAGE, "--channels has no channel with timecode. Name one, as in --channels 1,2,timecode.");
        }
        return List.copyOf(feeds);
    }

    private static ChannelFeed feed(String word) {
        if (word.matches("[1-9]\\d?")) {
            return new ChannelFeed.MusicFeed(Integer.parseInt(word) - 1);
        }
        return switch (word) {
            case "timecode" -> new ChannelFeed.TimecodeFeed();
            case "mix" -> new ChannelFeed.MusicMixFeed();
            case "silent" -> new ChannelFeed.SilentFeed();
            default -> throw new UserException(ExitCode.USAGE, "'" + word + "' is nothing that a channel can carry. Expected are timecode, mix"
                    + " (all music in one), silent, or the number of a music channel, counted from 1.");
        };
    }

    /** What the channels carry, for a person. */
    static String words(List<ChannelFeed> feeds) {
        List<String> words = new ArrayList<>();
        for (int i = 0; i < feeds.size(); i++) {
            words.add((feeds.size() == 1 ? "" : i + 1 + " ") + word(feeds.get(i)));
        }
        return String.join(", ", words);
    }

    private static String word(ChannelFeed feed) {
        if (feed instanceof ChannelFeed.TimecodeFeed) {
            return "timecode";
        }
        if (feed instanceof ChannelFeed.MusicFeed music) {
            return "music channel " + (music.channel() + 1);
        }
        return feed instanceof ChannelFeed.MusicMixFeed ? "music" : "silent";
    }
}
