/** Where a platform writes down what whoever runs it should know. */
export interface Log {
  info(about: object, message: string): void;
  warn(about: object, message: string): void;
  error(about: object, message: string): void;
}
