/** Whether a logbook is in a PostgreSQL database, at this address, and not in a file of this name. */
export const isAddress = (where: string): boolean => /^postgres(?:ql)?:\/\//i.test(where);
