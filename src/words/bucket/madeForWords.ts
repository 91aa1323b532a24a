import type { BucketSettings, BucketUse } from '../../studio/settings/bucketSettings.ts';
import { present } from '../../present.ts';
import { coneText } from '../text/coneText.ts';
import { join, said, t, type Text } from '../text/text.ts';

const uses: Record<BucketUse, string> = {
  dipping: 'dipping',
  brushing: 'brushing',
  spraying: 'spraying',
  test: 'tests',
};

type Firing = Pick<BucketSettings, 'cone' | 'atmosphere'>;

/** “fires to cone 6, oxidation”; undefined when no keeper has said. */
const fires = ({ cone, atmosphere }: Firing): Text | undefined => {
  if (cone === undefined) return atmosphere === undefined ? undefined : t`fires in ${said(atmosphere)}`;
  return atmosphere === undefined
    ? t`fires to cone ${[coneText(cone)]}`
    : t`fires to cone ${[coneText(cone)]}, ${said(atmosphere)}`;
};

/** What a glaze is made for, as its card, its label and answers say it. */
export const madeForWords = {
  fires,
  use: (use: BucketUse): Text => [uses[use]],
  sentence: (name: string, firing: Text): Text => t`${said(name)} ${firing}.`,
  goesOn: (name: string, bodies: string): Text => t`${said(name)} goes on ${said(bodies)}.`,
  recipe: (name: string, recipe: Text): Text => t`${said(name)}: ${recipe}.`,
  testFirst: t`Another cone or another air changes a glaze. Try it on a test tile, on a waster, first.`,
  unknown: {
    firing: (name: string): Text => t`No keeper has said what ${said(name)} fires to.`,
    bodies: (name: string): Text => t`No keeper has said which clays ${said(name)} goes on.`,
    recipe: (name: string): Text => t`No keeper has given a recipe for ${said(name)}.`,
  },
  set: { firing: t`Say its cone`, bodies: t`Say its clays`, recipe: t`Give its recipe` },
  yes: (use: BucketUse): Text => t`Yes, it is made for ${[uses[use]]}.`,
  otherUse: (name: string, use: BucketUse, asked: BucketUse): Text =>
    t`${said(name)} is made for ${[uses[use]]}, not for ${[uses[asked]]}. Ask a keeper first.`,
  all: (settings: Firing & Pick<BucketSettings, 'use' | 'bodies'>): Text => {
    const firing = fires(settings);
    const bodies = settings.bodies === undefined ? undefined : t`on ${said(settings.bodies)}`;
    return join(present([[uses[settings.use]], firing, bodies]), '; ');
  },
};
