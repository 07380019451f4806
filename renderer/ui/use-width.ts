import { useCallback, useState } from 'react';

/** Width of an element in pixels, followed as it changes. */
export function useWidth(initial = 800): { width: number; ref: (element: HTMLElement | null) => void } {
  const [width, setWidth] = useState(initial);
  const ref = useCallback((element: HTMLElement | null) => {
    if (element === null || typeof ResizeObserver === 'undefined') return;
    const observer = new ResizeObserver(([entry]) => { if (entry.contentRect.width > 0) setWidth(Math.round(entry.contentRect.width)); });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { width, ref };
}
