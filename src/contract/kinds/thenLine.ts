import type { Option } from '../contract.ts';
import { text } from './texts.ts';

/** The line that could not be run before this was answered; only a button sets it, and the answer offers it again. */
export const thenOption: Option<string, false> = {
  kind: { ...text(3000, '/batch plan recipe:"Gull Grey"'), pressed: true },
  needed: false,
  about: (w) => w.desk.then,
};
