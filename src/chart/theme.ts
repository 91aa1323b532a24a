/** The chart's colours. Shape and text show every state as well, so that colour is never the only sign. */
export interface Theme {
  paper: string;
  ink: string;
  faint: string;
  band: string;
  line: string;
}

export const light: Theme = {
  paper: '#fbf8f3',
  ink: '#2b2621',
  faint: '#8b8175',
  band: '#dfe8df',
  line: '#7a4a2b',
};

export const dark: Theme = {
  paper: '#1f1c19',
  ink: '#ece5db',
  faint: '#9b9186',
  band: '#2f3d35',
  line: '#e0a47a',
};
