/** What a press on the plan fell on. */
export type Hit =
  | { readonly kind: 'thing' | 'run'; readonly id: string }
  | { readonly kind: 'mark'; readonly id: string; readonly gate: boolean }
  | { readonly kind: 'corner'; readonly run: string; readonly corner: number }
  | { readonly kind: 'leg'; readonly run: string; readonly leg: number }
  | { readonly kind: 'end'; readonly thing: string; readonly end: string }
  | { readonly kind: 'paper' };

/** Reads from the element under the pointer what was pressed; null outside the drawing. */
export function hitOf(target: EventTarget | null): Hit | null {
  const element = target instanceof Element ? target : null;
  if (!element?.closest('.sheet')) return null;
  const found = element.closest<SVGGElement>(
    '[data-end], [data-corner], [data-leg], [data-mark], [data-thing], [data-run]',
  );
  const data = found?.dataset;
  if (!data) return { kind: 'paper' };
  if (data.end !== undefined) return { kind: 'end', thing: data.of!, end: data.end };
  if (data.corner !== undefined) return { kind: 'corner', run: data.of!, corner: Number(data.corner) };
  if (data.leg !== undefined) return { kind: 'leg', run: data.of!, leg: Number(data.leg) };
  if (data.mark !== undefined) return { kind: 'mark', id: data.mark, gate: data.gate !== undefined };
  return data.thing !== undefined ? { kind: 'thing', id: data.thing } : { kind: 'run', id: data.run! };
}
