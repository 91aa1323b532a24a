import { parentPort, workerData } from 'node:worker_threads';
import { z } from 'zod';
import type { BackedUp } from './backUp.ts';
import { openForReading } from '../engine/sqlite/database.ts';
import { asStoreProblem, StoreProblem } from '../engine/storeProblem.ts';
import { vacuumInto } from '../engine/sqlite/vacuumInto.ts';

const { file, target } = z.object({ file: z.string(), target: z.string() }).parse(workerData);

const answer = (): BackedUp => {
  try {
    const { sqlite } = openForReading(file);
    vacuumInto(sqlite, target);
    sqlite.close();
    return { ok: true };
  } catch (error) {
    const problem = asStoreProblem(error, file);
    if (!(problem instanceof StoreProblem)) throw problem;
    return { ok: false, kind: problem.kind, detail: problem.message };
  }
};

parentPort?.postMessage(answer());
