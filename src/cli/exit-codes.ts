/** What the program's exit code says. */
export const exitCodes = {
  done: 0,
  /** A mistake of the program itself. */
  ourFault: 1,
  wrongUsage: 2,
  /** The study's files have errors. */
  inputErrors: 3,
  cannotWrite: 4,
  /** `check --require-pass`: no candidate passes every limit. */
  nonePasses: 5,
} as const;

/** A number that a command ends with. */
export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];
