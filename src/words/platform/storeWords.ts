const someOf = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

/** What an operator reads about the database file. */
export const storeWords = {
  problem: {
    locked: (file: string) =>
      `Another process owns ${file}. Stop that one first, or give this one a file of its own.`,
    'several-names': (file: string) =>
      `${file} has another name too (a hard link), by which another program may have it open. It was left as it is; remove the other name, or make it a copy.`,
    busy: (file: string) =>
      `Another program holds on to ${file} and does not let go. Close it and try again.`,
    corrupt: (file: string) =>
      `${file} is damaged or not a database. It was left as it is; put the last backup in its place.`,
    'not-ours': (file: string) => `${file} is a database of another program. It was left as it is.`,
    'read-only': (file: string) => `${file} or its folder may not be written to. Check who owns them.`,
    full: (file: string) =>
      `The disk that holds ${file} is full. Nothing was half saved; make room and try again.`,
    crowded: (file: string) => `Too much is asked of ${file} at once. Try again.`,
    'newer-schema': (file: string) =>
      `${file} was last used by a newer release. It was left as it is; run that release, or a newer one.`,
    'older-schema': (file: string) =>
      `${file} is of an older release. Start the bot once to bring it up to date.`,
    'failed-migration': (file: string) =>
      `${file} could not be brought up to date. Nothing in it was changed; run the release before this one.`,
    'cannot-open': (file: string) => `${file} cannot be opened.`,
    'input-output': (file: string) => `The disk failed while reading or writing ${file}. Check the disk.`,
    closed: (file: string) => `${file} is closed already.`,
    exists: (file: string) => `There is a file ${file} already. It was left as it is.`,
  },
  backedUp: (file: string, target: string) => `${file} is copied to ${target}.`,
  checked: (studios: number, streams: number) =>
    `${someOf(streams, 'stream', 'streams')} of ${someOf(studios, 'studio', 'studios')}: every state follows from its entries.`,
  outdated: (streams: number) =>
    `${someOf(streams, 'state is', 'states are')} of an earlier release and will be worked out anew when asked for.`,
  differs: (studio: string, stream: number) =>
    `Studio ${studio}, stream ${stream}: the stored state does not follow from its entries. Run rebuild.`,
  rebuilt: (streams: number) => `${someOf(streams, 'state', 'states')} worked out again from the entries.`,
  rebuildUsage: 'rebuild [--check]',
  backUpUsage: 'backup [TARGET]',
};
