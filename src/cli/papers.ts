/** Names of paper on the command line, and in the report. */
export const papers = { a4: 'A4', letter: 'Letter' } as const;
