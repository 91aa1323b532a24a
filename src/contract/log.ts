/** The log for whoever runs the program. */
export interface Log {
  info(about: object, message: string): void;
  warn(about: object, message: string): void;
  error(about: object, message: string): void;
}
