import { useEffect, useRef } from 'preact/hooks';

type Handler = () => void;

const handlers: { readonly current: Handler }[] = [];

/** Lets Escape close something as long as it is open: what was opened last goes first. */
export function useEscape(open: boolean, close: Handler): void {
  const latest = useRef(close);
  latest.current = close;
  useEffect(() => {
    if (!open) return;
    handlers.push(latest);
    return () => {
      handlers.splice(handlers.indexOf(latest), 1);
    };
  }, [open]);
}

/** Closes what was opened last; says whether there was anything. */
export function closeLatest(): boolean {
  const latest = handlers.at(-1);
  latest?.current();
  return latest !== undefined;
}
