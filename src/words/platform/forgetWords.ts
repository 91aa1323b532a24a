/** What an operator reads about people who are to be forgotten again, after an older copy was restored. */
export const forgetWords = {
  /** A line of the log, which `forget` finds again. */
  logged: 'somebody was forgotten',
  usage: 'forget < LOG',
  done: (again: number, already: number) =>
    `Forgotten again: ${again}. Of the others in the log, nothing was left to forget: ${already}.`,
  noLines: 'There is nobody in that log who was forgotten.',
  onlyKeeper: (member: string, studio: string) =>
    `Member ${member} of studio ${studio} is its only keeper and was not forgotten. Name another keeper there, then run this again.`,
  broken: (member: string, studio: string) => `Member ${member} of studio ${studio} could not be forgotten.`,
};
