/**
 * What stays whole at the end of a line: an identifier with a hyphen, such as J-2031, and a number with the short word
 * behind it, such as 5.2 g or 6 Nov.
 */
const WHOLE = /(\b\p{L}{1,3}-\d[\p{L}\d]*|\d[\d.]* \p{L}{1,3}\d?(?![\p{L}\d]))/u;

/** A sentence whose identifiers and quantities are not broken between two lines. */
export function Prose({ text }: { readonly text: string }) {
  // Split by a group, every second part is one that stays whole.
  return (
    <>
      {text.split(WHOLE).map((part, place) =>
        place % 2 === 0 ? (
          part
        ) : (
          <span key={place} class="unbroken">
            {part}
          </span>
        ),
      )}
    </>
  );
}
