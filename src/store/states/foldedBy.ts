import { foldKey } from './foldKey.ts';

/** What a cached state was folded by: the code, and the engine, whose exponentials may differ in the last digit. */
export const foldedBy = `${foldKey} ${process.versions.v8}`;
