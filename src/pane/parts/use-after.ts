import { useEffect, useState } from 'preact/hooks';

/** True once something has lasted for some milliseconds: what is over sooner needs no word. */
export function useAfter(milliseconds: number, lasting: boolean): boolean {
  const [passed, setPassed] = useState(false);
  useEffect(() => {
    if (!lasting) return;
    const timer = setTimeout(() => setPassed(true), milliseconds);
    return () => {
      clearTimeout(timer);
      setPassed(false);
    };
  }, [milliseconds, lasting]);
  return passed && lasting;
}
