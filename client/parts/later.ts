import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** A part of the page that is fetched when it is first shown; null until it is there, or why it is not. */
export function useLoaded<Props>(load: () => Promise<ComponentType<Props>>): {
  readonly Page: ComponentType<Props> | null;
  readonly problem: string | null;
} {
  const [loaded, setLoaded] = useState<{
    readonly from: unknown;
    readonly Page: ComponentType<Props>;
  } | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    let isGone = false;
    setProblem(null);
    load().then(
      (Page) => {
        if (!isGone) setLoaded({ from: load, Page });
      },
      () => {
        if (!isGone)
          setProblem('This page could not be fetched: is the server there? Load it again.');
      },
    );
    return () => {
      isGone = true;
    };
  }, [load]);
  // The one loaded before belongs to another address.
  return { Page: loaded?.from === load ? loaded.Page : null, problem };
}
