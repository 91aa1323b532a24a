import { z } from 'zod';

const gravity = z.number().min(1).max(12);
const share = z.number().positive();

export const steps = [
  'on-hold',
  'sieve',
  'stir',
  'measure',
  'use',
  'add-water',
  'draw-off-water',
  'add-dry',
  'flocculate',
  'stir-on',
  'deflocculate',
  'ask-keeper',
] as const;
const step = z.enum(steps);

/** The stable part of a verdict's JSON: keys may be added, but these stay. */
export const verdictSchema = z.looseObject({
  step,
  gravity: z.object({ value: gravity, u95: share, believed: z.boolean() }).nullable(),
  predicted: z.object({ value: gravity, u95: share }).nullable(),
  window: z.object({ low: gravity, high: gravity }).nullable(),
  flow: z.enum(['thin', 'in', 'thick']).nullable(),
  hoursSinceStir: z.number().min(0).nullable(),
  waterMl: z.number().min(0).optional(),
  drawOffMl: z.number().min(0).optional(),
  dryGrams: z.number().min(0).optional(),
  doseMl: z.number().min(0).optional(),
  then: step.optional(),
});
export type VerdictData = z.infer<typeof verdictSchema>;

const line = z.string().min(1);

/** One reply of the terminal as JSON. */
export const answerSchema = z
  .strictObject({
    ok: z.boolean(),
    kind: z.enum(['answer', 'refusal', 'choice', 'error']),
    title: line,
    logged: z.strictObject({ entry: line, text: line }).optional(),
    facts: z.array(z.strictObject({ label: line, text: line })),
    reasons: z.array(line),
    dont: z.array(line),
    cautions: z.array(line),
    actions: z.array(z.strictObject({ label: line, line: z.string().startsWith('/') })),
    private: z.boolean(),
    chart: z.looseObject({ title: line, alt: line }).optional(),
    file: z.looseObject({ name: line }).optional(),
    data: z.record(z.string(), z.json()),
  })
  .refine(({ ok, kind }) => ok === (kind === 'answer'), 'ok says whether it was answered');
export type Answer = z.infer<typeof answerSchema>;

export const verdictOf = (answer: Answer): VerdictData => verdictSchema.parse(answer.data['verdict']);
