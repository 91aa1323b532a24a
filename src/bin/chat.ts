import { parseArgs } from 'node:util';
import { openApp } from '../start/app.ts';
import { systemClock } from '../clock.ts';
import { readConfig } from '../start/config.ts';
import { openChat } from '../start/openChat.ts';
import { demoFile, demoKeeper, openDemo } from '../start/openDemo.ts';
import { chatWords } from '../words/platform/chatWords.ts';
import { tellRoomAddress } from '../start/roomAddress.ts';
import { chosenStudio } from '../start/chosenStudio.ts';
import { exitCodeOf } from '../start/exitCodeOf.ts';

process.exitCode = await exitCodeOf(chatWords.usage, async () => {
  const { values } = parseArgs({
    options: {
      as: { type: 'string' },
      keeper: { type: 'boolean', default: false },
      files: { type: 'string', default: 'data/files' },
      studio: { type: 'string' },
    },
  });
  const config = readConfig();
  const { DATABASE_FILE: own } = config;
  const options = {
    file: own ?? demoFile,
    clock: systemClock,
    onBug: (error: unknown, id: string) => console.error(id, error),
  };
  const app = await (own === undefined ? openDemo(options) : openApp(options));
  try {
    if (own === undefined) console.log(chatWords.demo(demoFile));
    const as = values.as ?? (own === undefined ? demoKeeper : 'me');
    const studio = await chosenStudio(app, values.studio);
    await tellRoomAddress(app, studio, config);
    await openChat(app, studio, {
      as,
      keeper: values.keeper,
      files: values.files,
    });
    return 0;
  } finally {
    await app.store.close();
  }
});
