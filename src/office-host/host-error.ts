/** An error that the client is told, with a code that Microsoft's pages document. */
export class HostError extends Error {
  readonly code: string;
  readonly httpStatus: number;

  constructor(code: string, message: string, httpStatus = 400) {
    super(message);
    this.name = 'HostError';
    this.code = code;
    this.httpStatus = httpStatus;
  }
}

/** There is no such sheet, table, column or name. */
export const itemNotFound = (): HostError =>
  new HostError('ItemNotFound', "The requested resource doesn't exist.", 404);

/** The argument can't be used. */
export const invalidArgument = (
  message = 'The argument is invalid or missing or has an incorrect format.',
): HostError => new HostError('InvalidArgument', message);

/** The array written hasn't the size of the range. */
export const wrongArraySize = (): HostError =>
  invalidArgument(
    "The number of rows or columns in the input array doesn't match the size or dimensions of the range.",
  );

/** This host doesn't know the member: it refuses, so that nobody takes silence for an answer. */
export const notImplemented = (what: string): HostError =>
  new HostError('NotImplemented', `${what} is not modelled by this host.`, 501);

/** Inserting or deleting would tear a table apart. */
export const insertDeleteConflict = (): HostError =>
  new HostError('InsertDeleteConflict', 'The insert or delete operation attempted resulted in a conflict.');

/** The document can't be written to. */
export const accessDenied = (): HostError =>
  new HostError('AccessDenied', 'You cannot perform the requested operation.', 403);

/** What stood there is gone. */
export const invalidReference = (): HostError =>
  new HostError('InvalidReference', 'This reference is not valid for the current operation.');
