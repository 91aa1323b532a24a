/** A span of hours in whole units, as people round it: `20 min`, `1 h 30 min`, `5 h`, `1 day`. */
export const roughSpanText = (hours: number): string => {
  const minutes = Math.round(hours * 60);
  if (minutes < 1) return 'under a minute';
  if (minutes < 60) return `${minutes} min`;
  if (minutes < 180) {
    const tens = Math.round(minutes / 10) * 10;
    return tens % 60 === 0 ? `${tens / 60} h` : `${Math.floor(tens / 60)} h ${tens % 60} min`;
  }
  if (hours < 23.5) return `${Math.round(hours)} h`;
  const days = Math.round(hours / 24);
  return days === 1 ? '1 day' : `${days} days`;
};

/** How long ago, or until then when hours are below zero: the same on every platform that has no words of its own for it. */
export const agoText = (hours: number): string => {
  const span = roughSpanText(Math.abs(hours));
  if (Math.abs(hours) < 1 / 60) return 'just now';
  return hours > 0 ? `${span} ago` : `in ${span}`;
};
