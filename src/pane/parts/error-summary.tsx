import { useEffect, useRef } from 'preact/hooks';

export interface FieldError {
  /** The id of the field that it is about. */
  readonly field: string;
  readonly message: string;
}

export interface ErrorSummaryProps {
  readonly errors: readonly FieldError[];
  /** Counts how often the form was sent: with each, the summary takes the focus if there are errors. */
  readonly attempt: number;
  readonly title?: string;
}

/** What is wrong with a form, above it, each with a link to its field. It takes the focus when the form is sent. */
export function ErrorSummary({ errors, attempt, title = 'Please mend this first' }: ErrorSummaryProps) {
  const box = useRef<HTMLDivElement>(null);
  // Only sending the form moves the focus, not typing.
  useEffect(() => {
    if (attempt > 0 && errors.length > 0) box.current?.focus();
  }, [attempt]);
  if (errors.length === 0) return null;
  return (
    <div class="banner banner-stop" role="alert" tabIndex={-1} ref={box}>
      <p class="banner-title">{title}</p>
      <ul class="plain-list">
        {errors.map(({ field, message }) => (
          <li key={field}>
            <a
              href={`#${field}`}
              onClick={(event) => {
                event.preventDefault();
                document.getElementById(field)?.focus();
              }}
            >
              {message}
            </a>
          </li>
        ))}
      </ul>
    </div>
  );
}
