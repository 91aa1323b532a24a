/** A number of a date or a clock with a leading zero: 7 becomes `07`. */
export const twoDigits = (number: number): string => String(number).padStart(2, '0');
