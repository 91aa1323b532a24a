/** A cone as potters write it: 06, 6. */
export const coneText = (cone: number): string => (cone < 0 ? `0${-cone}` : String(cone));
