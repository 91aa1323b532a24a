/** What the room's server says: to whoever runs it, and when it refuses. */
export const roomWords = {
  at: (url: string) => `the room is at ${url}`,
  demo: 'This is the demo studio: everybody may look round, nothing here is real.',
  lan: (url: string) => `Scan to join from a phone; the code in it works once:\n${url}`,
  firstKeeper: (url: string) => `No keeper has claimed the room yet. Become the first, once, at:\n${url}`,
  newKeeper: (url: string) =>
    `Whoever opens this address first becomes a keeper; keep it to yourself:\n${url}`,
  passcode: (code: string) =>
    `The studio's passcode, for joining: ${code}\nIt is shown only this once; a keeper can set another in the room.`,
  studioName: 'This studio',
  noStudio: (typed: string) => `ROOM_STUDIO: there is no studio "${typed}" in this file`,
  inUse: (port: number) => `port ${port} is taken; set ROOM_PORT to another, or stop what holds it`,
  putRight: 'Put it right',
  undo: 'Undo',
  refusal: {
    'wrong-host': 'This room does not answer to that address.',
    'wrong-origin': 'That came from another site.',
    'sign-in': 'Sign in first.',
    'not-keeper': 'That is for keepers.',
    'not-found': 'There is nothing here.',
    'not-json': 'Send JSON.',
    'too-large': 'That is more than fits. Cut it and send it again.',
    'bad-request': 'That could not be read.',
    'too-old': 'That was written more than a day ago. Confirm it or drop it.',
    'too-fast': 'Too fast. Wait a moment.',
    full: 'The room is full. Try again in a minute.',
    broken:
      'Something went wrong here, and it was not you. See whether it is there before you send it again.',
  },
  signIn: {
    'bad-name': 'A name has letters of one alphabet, and at most 40 characters.',
    'short-secret': 'Your own password must have at least 8 characters.',
    'no-fit':
      'That does not fit. The first time, check the passcode, and that nobody here has the name yet; after that, your name and your own password.',
    'name-taken':
      'That name is somebody’s already. Take another, or, if it is yours, type the code that /link gives you elsewhere; a keeper can release it too.',
    'code-used': 'That code has been used, or is too old. Ask for a new one, or type the passcode.',
    'short-passcode': 'A passcode has at least 8 characters.',
    yourself: 'You can’t release your own name.',
  },
};

export type RoomRefusal = keyof typeof roomWords.refusal;
export type SignInRefusal = keyof typeof roomWords.signIn;
