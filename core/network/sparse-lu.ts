/**
 * Share of its row below which a pivot has vanished, and to which it is then moved. A node between a wide pipe and a thin
 * one keeps a small pivot that is right, so little is called vanished.
 */
const LEAST_PIVOT = 1e-25;
const MOVED_PIVOT = 1e-10;

/**
 * Sparse LU factors of a matrix with a fixed, symmetric pattern and a fixed order of pivots. The symbolic part is done
 * once for a pattern; each numeric part then runs over flat arrays. Cost is linear in the number of factors' products,
 * which on a tree of pipes is linear in its size.
 */
export class SparseLu {
  readonly size: number;
  /** Values: `size` diagonals, then the upper factors, then the lower ones. */
  readonly values: Float64Array;
  /** Room for a right-hand side. */
  readonly right: Float64Array;
  private readonly rank: Int32Array;
  private readonly start: Int32Array;
  private readonly index: Int32Array;
  private readonly targets: Int32Array;
  private readonly upperAt: number;
  private readonly lowerAt: number;
  private readonly rowScale: Float64Array;
  private readonly work: Float64Array;

  /**
   * @param size - number of unknowns
   * @param order - unknowns in the order of elimination
   * @param rows - row of each entry of the pattern
   * @param columns - column of each entry; the pattern is made symmetric
   */
  constructor(size: number, order: Int32Array, rows: Int32Array, columns: Int32Array) {
    this.size = size;
    const rank = new Int32Array(size);
    for (let i = 0; i < size; i++) rank[order[i]!] = i;
    this.rank = rank;

    // pattern of each pivot: higher-ranked neighbours, own ones and those passed up by eliminated children
    const counts = new Int32Array(size + 1);
    for (let k = 0; k < rows.length; k++) {
      const a = rank[rows[k]!]!;
      const b = rank[columns[k]!]!;
      if (a !== b) counts[Math.min(a, b) + 1]!++;
    }
    for (let i = 0; i < size; i++) counts[i + 1]! += counts[i]!;
    const own = new Int32Array(counts[size]!);
    const cursor = counts.slice();
    for (let k = 0; k < rows.length; k++) {
      const a = rank[rows[k]!]!;
      const b = rank[columns[k]!]!;
      if (a !== b) own[cursor[Math.min(a, b)]!++] = Math.max(a, b);
    }
    const patterns: Int32Array[] = new Array<Int32Array>(size);
    const firstChild = new Int32Array(size).fill(-1);
    const nextSibling = new Int32Array(size).fill(-1);
    const mark = new Int32Array(size).fill(-1);
    const scratch = new Int32Array(size);
    let factors = 0;
    let products = 0;
    for (let i = 0; i < size; i++) {
      let n = 0;
      mark[i] = i;
      for (let k = counts[i]!; k < counts[i + 1]!; k++) {
        const j = own[k]!;
        if (mark[j] !== i) {
          mark[j] = i;
          scratch[n++] = j;
        }
      }
      for (let c = firstChild[i]!; c >= 0; c = nextSibling[c]!) {
        for (const j of patterns[c]!) {
          if (mark[j] !== i) {
            mark[j] = i;
            scratch[n++] = j;
          }
        }
      }
      const pattern = sortedCopy(scratch, n);
      patterns[i] = pattern;
      factors += n;
      products += n * n;
      if (n > 0) {
        const parent = pattern[0]!;
        nextSibling[i] = firstChild[parent]!;
        firstChild[parent] = i;
      }
    }
    this.start = new Int32Array(size + 1);
    this.index = new Int32Array(factors);
    for (let i = 0; i < size; i++) {
      this.index.set(patterns[i]!, this.start[i]!);
      this.start[i + 1] = this.start[i]! + patterns[i]!.length;
    }
    this.upperAt = size;
    this.lowerAt = size + factors;
    this.values = new Float64Array(size + 2 * factors);
    this.rowScale = new Float64Array(size);
    this.work = new Float64Array(size);
    this.right = new Float64Array(size);

    // where each product of an elimination step lands
    this.targets = new Int32Array(products);
    const slot = new Int32Array(size).fill(-1);
    let t = 0;
    // products are laid out pivot by pivot; each row of a pivot needs the slots of that row's own pattern
    for (let i = 0; i < size; i++) {
      const pattern = patterns[i]!;
      const n = pattern.length;
      for (let a = 0; a < n; a++) {
        const row = pattern[a]!;
        for (let k = this.start[row]!; k < this.start[row + 1]!; k++) slot[this.index[k]!] = k;
        for (let b = a + 1; b < n; b++) {
          const k = slot[pattern[b]!]!;
          this.targets[t + a * n + b] = this.upperAt + k;
          this.targets[t + b * n + a] = this.lowerAt + k;
        }
        this.targets[t + a * n + a] = row;
      }
      t += n * n;
    }
  }

  /** Position in `values` of the entry at a row and column of the pattern. */
  position(row: number, column: number): number {
    const a = this.rank[row]!;
    const b = this.rank[column]!;
    if (a === b) return a;
    const pivot = Math.min(a, b);
    const wanted = Math.max(a, b);
    let low = this.start[pivot]!;
    let high = this.start[pivot + 1]! - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.index[middle]! < wanted) low = middle + 1;
      else high = middle;
    }
    return (a < b ? this.upperAt : this.lowerAt) + low;
  }

  /**
   * Factorises what stands in `values`, in place. A pivot that vanishes against its row is moved off zero, so that the
   * factors stay finite; the caller's own residual shows whether the answer is any good.
   *
   * @returns the number of pivots moved
   */
  factorise(): number {
    const { values, start, targets, size, rowScale } = this;
    const upperAt = this.upperAt;
    const lowerAt = this.lowerAt;
    rowScale.fill(0);
    for (let i = 0; i < size; i++) {
      let top = Math.abs(values[i]!);
      for (let k = start[i]!; k < start[i + 1]!; k++) {
        const u = Math.abs(values[upperAt + k]!);
        if (u > top) top = u;
        const row = this.index[k]!;
        const l = Math.abs(values[lowerAt + k]!);
        if (l > rowScale[row]!) rowScale[row] = l;
      }
      if (top > rowScale[i]!) rowScale[i] = top;
    }
    let moved = 0;
    let t = 0;
    for (let i = 0; i < size; i++) {
      const first = start[i]!;
      const n = start[i + 1]! - first;
      let pivot = values[i]!;
      const least = LEAST_PIVOT * rowScale[i]! + 1e-300;
      if (!(Math.abs(pivot) > least)) {
        pivot = (pivot < 0 ? -1 : 1) * (MOVED_PIVOT * rowScale[i]! + 1e-290);
        values[i] = pivot;
        moved++;
      }
      const upper = upperAt + first;
      const lower = lowerAt + first;
      for (let a = 0; a < n; a++) {
        const l = values[lower + a]! / pivot;
        values[lower + a] = l;
        if (l !== 0) {
          const row = t + a * n;
          for (let b = 0; b < n; b++) values[targets[row + b]!]! -= l * values[upper + b]!;
        }
      }
      t += n * n;
    }
    return moved;
  }

  /** Solves with the factors; `right` holds the right-hand side and then the answer, in the caller's own order. */
  solve(right: Float64Array): void {
    const { values, start, index, size, rank, work } = this;
    for (let i = 0; i < size; i++) work[rank[i]!] = right[i]!;
    for (let i = 0; i < size; i++) {
      const x = work[i]!;
      if (x === 0) continue;
      for (let k = start[i]!; k < start[i + 1]!; k++) work[index[k]!]! -= values[this.lowerAt + k]! * x;
    }
    for (let i = size - 1; i >= 0; i--) {
      let x = work[i]!;
      for (let k = start[i]!; k < start[i + 1]!; k++) x -= values[this.upperAt + k]! * work[index[k]!]!;
      work[i] = x / values[i]!;
    }
    for (let i = 0; i < size; i++) right[i] = work[rank[i]!]!;
  }
}

/** The first `n` numbers, ascending; patterns are short, so they are put in place one by one. */
function sortedCopy(numbers: Int32Array, n: number): Int32Array {
  const copy = numbers.slice(0, n);
  if (n > 16) return copy.sort();
  for (let i = 1; i < n; i++) {
    const value = copy[i]!;
    let j = i - 1;
    for (; j >= 0 && copy[j]! > value; j--) copy[j + 1] = copy[j]!;
    copy[j + 1] = value;
  }
  return copy;
}
