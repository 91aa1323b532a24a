/** Changes when a source file that folding reaches does: states cached by other code are folded anew. Written by npm run build. */
export const foldKey = '9ptOrezBF5fR7KAM';
