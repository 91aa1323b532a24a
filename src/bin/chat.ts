import { parseArgs } from 'node:util';
import { openApp } from '../start/app.ts';
import { logbookOf, readConfig } from '../start/config.ts';
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
  const demo = config.DATABASE_FILE === undefined && config.DATABASE_URL === undefined;
  const options = { file: demo ? demoFile : logbookOf(config) };
  const app = await (demo ? openDemo(options) : openApp(options));
  try {
    if (demo) console.log(chatWords.demo(demoFile));
    const as = values.as ?? (demo ? demoKeeper : 'me');
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
