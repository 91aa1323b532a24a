import type { StudioId } from '../studio/ids.ts';
import type { ReplyFile } from './contract.ts';

/** Sizes of paper, in points. */
export const papers = {
  a4: { width: 595.28, height: 841.89 },
  letter: { width: 612, height: 792 },
} as const;
export type Paper = keyof typeof papers;

/** How somebody at the bucket gets from its label to its reading: a code to scan, or a line to type. */
export type LabelLead =
  { kind: 'code'; url: string; caption: string } | { kind: 'line'; line: string; caption: string };

/** What is on one bucket's label, in words as they are printed. */
export interface Label {
  no: number;
  name: string;
  nick?: string;
  window?: { label: string; low: number; high: number; lowText: string; highText: string };
  seconds?: string;
  /** What it is made for: its use, its firing, its clays, its recipe. */
  lines: string[];
  cautions: string[];
  lead: LabelLead;
}

export interface LabelSheet {
  paper: Paper;
  title: string;
  /** Below each label: when it was printed. */
  printed: string;
  /** At the foot of each page. */
  foot: string;
  /** What a box on a label stands for. */
  boxNote: string;
  labels: Label[];
}

/** A printed sheet, and what of its text the letters at hand could not print. */
export interface PrintedLabels {
  file: ReplyFile;
  pages: number;
  unprinted: { no: number; characters: string[] }[];
}

/** What the desk needs to print labels. */
export interface LabelPort {
  /** The address at which the studio's room is opened; undefined if it has none. */
  roomOf(studio: StudioId): string | undefined;
  print(sheet: LabelSheet): Promise<PrintedLabels>;
}
