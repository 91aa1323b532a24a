import { studioList } from './studioList.ts';

/** What the room's server says: to whoever runs it, and when it refuses. */
export const roomWords = {
  needsScript: 'This page needs JavaScript.',
  at: (url: string) => `the room is at ${url}`,
  demo: 'This is the demo studio. Everybody may look around; nothing here is real.',
  lan: (url: string) => `Scan this to join from a phone. The code works once:\n${url}`,
  firstKeeper: (url: string) =>
    `This room has no keeper yet. Whoever opens this address first becomes one; it works once:\n${url}`,
  newKeeper: (url: string) => `Whoever opens this address first becomes a keeper, so keep it secret:\n${url}`,
  passcode: (code: string) =>
    `The studio's passcode, for joining: ${code}\nIt is shown only once. A keeper can set another in the room.`,
  studioName: 'This studio',
  whoseRoom: (studios: readonly { id: string; name: string }[]) =>
    `The room stays closed: this file holds several studios, and nobody has said whose room it is. Set ROOM_STUDIO to one of them:\n${studioList(studios)}`,
  inUse: (port: number) =>
    `port ${port} is in use; set ROOM_PORT to another, or stop the program that uses it`,
  putRight: 'Correct it',
  undo: 'Undo',
  refusal: {
    'wrong-host': 'This room can’t be used at that address.',
    'wrong-origin': 'That came from another website.',
    'sign-in': 'Sign in first.',
    'not-keeper': 'That is for keepers.',
    'not-found': 'There is nothing at this address.',
    'not-json': 'Send JSON.',
    'too-large': 'That is too long. Shorten it and send it again.',
    'bad-request': 'That could not be read.',
    'too-old': 'You wrote that more than a day ago. Send it anyway, or delete it.',
    'over-a-year-old':
      'By this phone’s clock that was written more than a year ago, so it was not saved. Check the clock, or drop the line and type it anew.',
    'wrong-method': 'This room takes only GET and POST requests.',
    'too-fast': 'Too fast. Wait a moment.',
    full: 'The room is full. Try again in a minute.',
    'disk-full': 'The logbook’s disk is full, so what you sent was not saved. Tell whoever runs the room.',
    broken:
      'Something went wrong here. It was not your fault. Check whether it was logged before you send it again.',
  },
  signIn: {
    'bad-name':
      'A name has at most 40 characters, with letters of one alphabet, and does not look like a member’s id.',
    'short-secret': 'Your own password must have at least 8 characters.',
    'long-secret': 'Your own password must have at most 200 characters.',
    'passcode-secret':
      'That is the studio’s passcode, which others know. Take a password that only you know.',
    'weak-secret':
      'That is too easy to guess: a common word, a row of keys, your own name or the studio’s. Use three words that have nothing to do with each other.',
    'weak-passcode': 'That is too easy to guess. Use three words that have nothing to do with each other.',
    'no-fit':
      'That name and password don’t match. If you come for the first time, check the passcode, and that nobody here has the name yet.',
    'name-taken':
      'Somebody has that name already. Take another. If it is yours, type the code that /link gives you on your other platform, or ask a keeper to release the name.',
    'code-used':
      'That code was used, or is too old. Have you been here before? Your name and password are enough. If not, ask for another code, or type the studio’s passcode.',
    'short-passcode': 'A passcode has at least 8 characters.',
    'long-passcode': 'A passcode has at most 200 characters.',
    'members-secret': 'That is somebody’s own password, and everybody would know it. Take another passcode.',
    several:
      'Several members on other platforms have that name. If you are one of them, type /link there and sign in here with its code.',
    'last-keeper': 'That would leave the studio without a keeper, so nothing was changed.',
    yourself: 'You can’t release your own name.',
  },
};

export type RoomRefusal = keyof typeof roomWords.refusal;
export type SignInRefusal = keyof typeof roomWords.signIn;
