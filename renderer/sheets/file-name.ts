/** Name of a file about a shop: its name without what a disk may refuse, what it is, and its ending. */
export function fileName(shop: string, what: string, ending: string): string {
  const plain = shop
    .replace(/[\u0000-\u001f\\/:*?"<>|]+/g, '-')
    .trim()
    .replace(/^[.\s]+|[.\s]+$/g, '');
  return `${[...plain].slice(0, 80).join('') || 'shop'}, ${what}.${ending}`;
}

/** A day as a calendar field writes it. */
export const dayText = (day: Date): string =>
  [day.getFullYear(), day.getMonth() + 1, day.getDate()]
    .map((number) => String(number).padStart(2, '0'))
    .join('-');
