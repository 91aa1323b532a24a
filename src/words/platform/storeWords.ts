const someOf = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

/** What an operator reads about the database file. */
export const storeWords = {
  problem: {
    locked: (file: string) =>
      `Another process owns ${file}. Stop that process first, or use another file here.`,
    'several-names': (file: string) =>
      `${file} has another name too (a hard link), by which another program may have it open. It was left as it is; remove the other name, or make it a copy.`,
    busy: (file: string) => `Another program keeps ${file} locked. Close it and try again.`,
    corrupt: (file: string) =>
      `${file} is damaged or not a database. It was not changed. Put the last backup in its place.`,
    'not-ours': (file: string) => `${file} is another program’s database. It was not changed.`,
    'read-only': (file: string) => `${file} or its folder can’t be written to. Check who owns them.`,
    full: (file: string) =>
      `The disk that holds ${file} is full. Nothing is half saved. Make room and try again.`,
    crowded: (file: string) => `${file} is too busy. Try again.`,
    'newer-schema': (file: string) =>
      `${file} was last used by a newer release. It was not changed. Run that release, or a newer one.`,
    'older-schema': (file: string) =>
      `${file} is from an older release. Start the bot once to bring it up to date.`,
    'failed-migration': (file: string) =>
      `${file} could not be brought up to date. Nothing in it was changed. Run the release before this one.`,
    'cannot-open': (file: string) => `${file} cannot be opened.`,
    'input-output': (file: string) => `The disk failed while reading or writing ${file}. Check the disk.`,
    closed: (file: string) => `${file} is closed already.`,
    exists: (file: string) => `${file} exists already. It was not changed.`,
  },
  backedUp: (file: string, target: string) => `${file} is copied to ${target}.`,
  checked: (studios: number, streams: number) =>
    `${someOf(streams, 'stream', 'streams')} of ${someOf(studios, 'studio', 'studios')}: every state follows from its entries.`,
  outdated: (streams: number) =>
    `${someOf(streams, 'state is', 'states are')} from an earlier release and will be worked out again when needed.`,
  differs: (studio: string, stream: number) =>
    `Studio ${studio}, stream ${stream}: the stored state does not follow from its entries. Run rebuild.`,
  rebuilt: (streams: number) => `${someOf(streams, 'state', 'states')} worked out again from the entries.`,
  rebuildUsage: 'rebuild [--check]',
  backUpUsage: 'backup [TARGET]',
};
