const mostListed = 20;

/** Studios for whoever runs the bot to choose from, one a line. */
export const studioList = (studios: readonly { id: string; name: string }[]): string => {
  const lines = studios.slice(0, mostListed).map(({ id, name }) => `  ${id}  ${name}`);
  const more = studios.length - lines.length;
  return [...lines, ...(more > 0 ? [`  and ${more} more`] : [])].join('\n');
};
