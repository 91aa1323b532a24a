/** The first byte of a page of a table or an index, and how long the header is. */
const headers = new Map([
  [2, 12],
  [5, 12],
  [10, 8],
  [13, 8],
]);
/** On the first page the file's own header comes before. */
const fileHeader = 100;

/**
 * Where a page holds nothing, between its list of cells and the cells: SQLite writes the cells from the end. After a
 * page was split or joined, copies of cells stand there that are on other pages now (https://sqlite.org/fileformat2.html,
 * "B-tree Pages"). Undefined for a page of another kind.
 */
export const unusedPart = (page: Buffer, pageNo: number): { from: number; to: number } | undefined => {
  const start = pageNo === 1 ? fileHeader : 0;
  const header = headers.get(page.readUInt8(start));
  if (header === undefined) return undefined;
  const from = start + header + 2 * page.readUInt16BE(start + 3);
  // Two bytes cannot say 65,536: they say 0 instead.
  const to = page.readUInt16BE(start + 5) || 65_536;
  return from <= to && to <= page.length ? { from, to } : undefined;
};
