/** Raised when readers of the old format would misread the new one. */
export const exportFormat = 1;
