import { exportJson } from '../../../src/replies/export/exportJson.ts';
import type { Store } from '../../../src/store/openStore.ts';
import type { StudioId } from '../../../src/studio/ids.ts';
import { noonPlus } from './storeEvents.ts';

/** A studio's whole export, as `/export` writes it. */
export const exportText = ({ books }: Pick<Store, 'books'>, studio: StudioId): Promise<string> =>
  books.read(studio, async (book) => {
    const texts: string[] = [];
    for await (const { text } of exportJson(book, noonPlus(0), {})) texts.push(text);
    return texts.join('');
  });
