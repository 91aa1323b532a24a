import { choice, pressToEdit, pressToRun } from '../../contract/replyParts.ts';
import { refusal, type Asking, type Reply } from '../../contract/contract.ts';
import { poisonIn } from '../../studio/bucket/bucketHazards.ts';
import type { BucketCaution, BucketSettings } from '../../studio/settings/bucketSettings.ts';
import { knownHazards, unexplainedOf } from './derivedMarks.ts';

/** The marks that a keeper sets, and what is known of the bucket besides. */
interface Marking {
  path: string;
  /** What the keeper typed as cautions, if anything. */
  listed: readonly BucketCaution[] | undefined;
  /** The bucket as it will be. */
  after: Pick<BucketSettings, 'name' | 'cautions'> & Pick<Partial<BucketSettings>, 'recipe' | 'glaze'>;
  /** Hazards it was marked with, and those of glaze that it is now the same as. */
  marks: readonly BucketCaution[];
  /** Something went in since a keeper last set its marks. */
  mixed: boolean;
  sure: boolean;
  /** Why, in the keeper's words. */
  note: string | undefined;
}

/**
 * Asks before a warning of a known hazard is taken away, and refuses to let children at what is poisonous or unknown.
 */
export const markDoubt = async (
  { path, listed, after, marks, mixed, sure, note }: Marking,
  asking: Asking,
): Promise<Reply | undefined> => {
  const { typed } = asking;
  const w = asking.words.bucket;
  if (after.cautions.includes('children')) {
    const unknown = await unexplainedOf(after, asking);
    if (unknown.length > 0) return refusal(w.childrenAndUnknown(unknown));
  }
  if (!listed) return undefined;
  const known = await knownHazards(after, marks, asking);
  const poison = poisonIn(known);
  if (poison !== undefined && listed.includes('children')) return refusal(w.childrenAndKnown(poison));
  const gone = known.filter((one) => !after.cautions.includes(one));
  // A laboratory or a safety sheet says that it is no poison; a press does not.
  const poisonGone = poisonIn(gone);
  if (poisonGone !== undefined && note === undefined)
    return choice(
      w.poisonGone(poisonGone),
      [pressToEdit(w.poisonGoneWhy, path, { ...typed, sure: 'yes', note: '' })],
      { option: 'note', hazards: gone },
    );
  const blind = mixed && listed.includes('children');
  if ((gone.length === 0 && !blind) || sure) return undefined;
  return choice(
    gone.length > 0 ? w.marksGone(gone) : w.childrenAgain,
    [pressToEdit(w.marksGoneEdit, path, typed), pressToRun(w.marksGoneSure, path, { ...typed, sure: 'yes' })],
    { option: 'sure', choices: [{ label: 'yes', value: 'yes' }], hazards: gone },
  );
};
