import { z } from 'zod';
import type { Reply } from '../../../../src/contract/contract.ts';

const chance = z.number().min(0).max(1).nullable();
const amount = z.number().optional();

/** What a script reads in a reply, and nothing else. */
const verdict = z.object({
  step: z.string(),
  then: z.string().optional(),
  rule: z.string().optional(),
  keeperStep: z.string().optional(),
  asks: z.array(z.string()).optional(),
  sure: z.object({ gravity: chance, flow: chance, both: chance }).nullish(),
  waterMl: amount,
  drawOffMl: amount,
  dryGrams: amount,
  doseMl: amount,
  jarDrops: amount,
  jarWarm: z.boolean().optional(),
  deflocculantMl: amount,
  waterMlPerLitre: amount,
  drawOffMlPerLitre: amount,
  dryGramsPerLitre: amount,
  doseMlPerLitre: amount,
});

export type VerdictSaid = z.infer<typeof verdict>;

export const verdictSaid = ({ data }: Reply): VerdictSaid | undefined =>
  data['verdict'] === undefined ? undefined : verdict.parse(data['verdict']);
