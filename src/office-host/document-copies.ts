/** The library's numbers for what the program answers (`OSF.DDA.ErrorCodeManager`). */
const DONE = 0;
const TYPE_NOT_SUPPORTED = 1009;
const INTERNAL_ERROR = 5001;
const TOO_MANY_COPIES = 11_000;

/** The file type that is a whole workbook (`Office.FileType.Compressed`), as it is handed to the program. */
const COMPRESSED = 5;
/** No more copies than this may be open at once: so says the documentation of `Document.getFileAsync`. */
const MOST_COPIES = 2;

/** The copies of the document that an add-in has asked for and not given back. */
export class DocumentCopies {
  readonly #file: () => Uint8Array | null;
  readonly #open = new Map<number, Uint8Array>();
  #last = 0;

  /** @param file the document as it stands */
  constructor(file: () => Uint8Array | null) {
    this.#file = file;
  }

  /** Begins a copy: its handle and its size in bytes. */
  open(type: unknown): readonly unknown[] {
    if (type !== COMPRESSED) return [TYPE_NOT_SUPPORTED];
    if (this.#open.size >= MOST_COPIES) return [TOO_MANY_COPIES];
    const bytes = this.#file();
    if (bytes === null) return [INTERNAL_ERROR];
    this.#last += 1;
    this.#open.set(this.#last, bytes);
    return [DONE, [this.#last, bytes.length]];
  }

  /** A slice of a copy: its bytes and how many they are. */
  chunk(handle: unknown, from: unknown, size: unknown): readonly unknown[] {
    const bytes = this.#open.get(Number(handle));
    if (bytes === undefined) return [INTERNAL_ERROR];
    const slice = [...bytes.subarray(Number(from), Number(from) + Number(size))];
    return [DONE, [slice, slice.length]];
  }

  /** Ends a copy. */
  release(handle: unknown): readonly unknown[] {
    return [this.#open.delete(Number(handle)) ? DONE : INTERNAL_ERROR];
  }
}
