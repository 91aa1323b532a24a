import { join, said, t, type Text } from '../text/text.ts';

interface Line {
  material: string;
  addition: boolean;
}

/** Materials with their amounts, commas between. */
export const materialsText = <L extends Line>(lines: readonly L[], amount: (line: L) => string): Text =>
  join(
    lines.map((line) => t`${said(line.material)} ${[amount(line)]}`),
    ', ',
  );

/** A recipe in one line: its base, then what goes over it. */
export const recipeLine = <L extends Line>(lines: readonly L[], amount: (line: L) => string): Text => {
  const base = materialsText(
    lines.filter(({ addition }) => !addition),
    amount,
  );
  const over = lines.filter(({ addition }) => addition);
  return over.length === 0 ? base : t`${base}; over it ${materialsText(over, amount)}`;
};
