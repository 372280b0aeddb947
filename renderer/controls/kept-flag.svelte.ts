/** A yes or no that the browser keeps from one day to the next. */
export function keepFlag(name: string, start: boolean): { value: boolean } {
  const key = `chipdraft-${name}`;
  let value = $state(read(key, start));
  return {
    get value() {
      return value;
    },
    set value(next) {
      value = next;
      try {
        localStorage.setItem(key, next ? 'yes' : 'no');
      } catch {
        // a browser that keeps nothing still works
        return;
      }
    },
  };
}

function read(key: string, start: boolean): boolean {
  try {
    const kept = localStorage.getItem(key);
    return kept === null ? start : kept === 'yes';
  } catch {
    // a browser that keeps nothing still works
    return start;
  }
}
