import { nameKey } from '../../text/normalizedName.ts';

/** The passwords that are guessed first: common practice, and the words of this trade. */
const common =
  'password|passwort|passcode|passphrase|pass|letmein|welcome|iloveyou|sunshine|princess|football|baseball|superman|' +
  'batman|starwars|trustno|monkey|dragon|master|administrator|admin|login|changeme|whatever|secret|computer|internet|' +
  'shadow|michael|jennifer|charlie|summer|winter|spring|autumn|hello|test|' +
  'pottery|potter|ceramics|ceramic|glazeroom|glaze|clay|kiln|studio|bucket|room';
const onlyCommon = new RegExp(`^(?:${common}|my|the|our|your|is|a|i)+$`);

/** Neighbouring keys, and letters and digits in order. */
const keyboardRows = 'qwertyuiop asdfghjkl zxcvbnm qwertzuiop azertyuiop abcdefghijklmnopqrstuvwxyz'.split(
  ' ',
);

/** Digits and symbols that replace letters. */
const letterOf: Record<string, string> = { 0: 'o', 1: 'i', 3: 'e', 4: 'a', 5: 's', 7: 't', '@': 'a', $: 's' };

/** Whether a password is little more than something that others know, however it is spelt. */
export const isLike = (secret: string, known: string): boolean => {
  const [letters, own] = [nameKey(secret), nameKey(known)];
  return own !== '' && letters.includes(own) && letters.replaceAll(own, '').length < 4;
};

/** Whether a password is one of those that are guessed first: a common word, a row of keys, the same few letters, a name that everybody knows. */
export const isWeak = (secret: string, ...names: readonly string[]): boolean => {
  const typed = secret.normalize('NFKC').toLowerCase();
  if (new Set(typed).size < 4) return true;
  const letters = nameKey(secret);
  if (/^\p{N}+$/u.test(letters)) return letters.length < 12;
  const plain = nameKey(typed.replace(/[013457@$]/g, (sign) => letterOf[sign] ?? sign));
  // Digits at either end add almost no strength.
  for (const word of [letters, plain].map((one) => one.replace(/^\p{N}+|\p{N}+$/gu, ''))) {
    if (onlyCommon.test(word) || (word.length > 3 && keyboardRows.some((row) => row.includes(word))))
      return true;
    for (const own of names.map(nameKey)) {
      const left = own === '' ? word : word.replaceAll(own, '');
      if (left !== word && (left.length < 4 || onlyCommon.test(left))) return true;
    }
  }
  return false;
};
