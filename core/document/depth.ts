const [QUOTE, ESCAPE, OPEN_LIST, OPEN_GROUP, CLOSE_LIST, CLOSE_GROUP] = [...'"\\[{]}'].map((sign) =>
  sign.charCodeAt(0),
);

/** Whether lists and groups of a JSON text lie within each other more than `most` deep; stops where they do. */
export function isDeeper(text: string, most: number): boolean {
  let depth = 0;
  for (let at = 0; at < text.length; at++) {
    const sign = text.charCodeAt(at);
    if (sign === QUOTE) {
      // what stands in a text does not count
      for (at++; at < text.length && text.charCodeAt(at) !== QUOTE; at++)
        if (text.charCodeAt(at) === ESCAPE) at++;
    } else if (sign === OPEN_LIST || sign === OPEN_GROUP) {
      depth++;
      if (depth > most) return true;
    } else if (sign === CLOSE_LIST || sign === CLOSE_GROUP) depth--;
  }
  return false;
}
