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
  whoseRoom: (studios: readonly { id: string; name: string }[]) =>
    `The room stays closed: this file holds several studios, and nobody has said whose room it is. Set ROOM_STUDIO to one of them:\n${studios.map(({ id, name }) => `  ${id}  ${name}`).join('\n')}`,
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
    'over-a-year-old':
      'By this phone’s clock that was written more than a year ago, so it was not saved. Check the clock, or drop the line and type it anew.',
    'wrong-method': 'That is no way to ask this room: it takes GET and POST.',
    'too-fast': 'Too fast. Wait a moment.',
    full: 'The room is full. Try again in a minute.',
    'disk-full':
      'The disk that the logbook is on is full. What you sent was not saved; tell whoever runs the room.',
    broken:
      'Something went wrong here, and it was not you. See whether it is there before you send it again.',
  },
  signIn: {
    'bad-name':
      'A name has letters of one alphabet, at most 40 characters, and does not look like a member’s id.',
    'short-secret': 'Your own password must have at least 8 characters.',
    'long-secret': 'Your own password must have at most 200 characters.',
    'passcode-secret':
      'That is the studio’s passcode, which others know. Take a password that only you know.',
    'weak-secret':
      'That is among the first that anybody would guess: a common word, a row of keys, your own name or the studio’s. Take three words that have nothing to do with each other.',
    'weak-passcode':
      'That is among the first that anybody would guess. Take three words that have nothing to do with each other.',
    'no-fit':
      'That does not fit. The first time, check the passcode, and that nobody here has the name yet; after that, your name and your own password.',
    'name-taken':
      'That name is somebody’s already. Take another, or, if it is yours, type the code that /link gives you elsewhere; a keeper can release it too.',
    'code-used': 'That code has been used, or is too old. Ask for a new one, or type the passcode.',
    'short-passcode': 'A passcode has at least 8 characters.',
    'long-passcode': 'A passcode has at most 200 characters.',
    'members-secret': 'That is somebody’s own password, and everybody would know it. Take another passcode.',
    several:
      'Several members of other platforms are called so, and nobody can tell which is meant. Whoever it is types /link there and comes in by its code.',
    'last-keeper': 'That would leave the studio without a keeper, so nothing was changed.',
    yourself: 'You can’t release your own name.',
  },
};

export type RoomRefusal = keyof typeof roomWords.refusal;
export type SignInRefusal = keyof typeof roomWords.signIn;
