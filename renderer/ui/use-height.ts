import { useCallback, useState } from 'react';

/** Height of an element in pixels, followed as it changes. */
export function useHeight(initial: number): { height: number; ref: (element: HTMLElement | null) => void } {
  const [height, setHeight] = useState(initial);
  const ref = useCallback((element: HTMLElement | null) => {
    if (element === null || typeof ResizeObserver === 'undefined') return;
    const observer = new ResizeObserver(([entry]) => { if (entry.contentRect.height > 0) setHeight(Math.round(entry.contentRect.height)); });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { height, ref };
}
