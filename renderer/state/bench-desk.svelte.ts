import solverAddress from 'virtual:solver-worker';
import type { Chance } from '../../core/chance/chance.ts';
import type { ShopDocument } from '../../core/document/schema.ts';
import type { Comparison } from '../../core/fan-bench/compare.ts';
import type { FanInShop } from '../../core/fan-bench/in-shop.ts';
import type { BenchPicture } from '../../core/fan-bench/picture.ts';
import type { FanBenchResult } from '../../core/fan-bench/result.ts';
import type { FromBench, ToBench } from './bench-messages.ts';

/** Without its number, for each kind by itself. */
type Unnumbered<T> = T extends ToBench ? Omit<T, 'serial'> : never;
type Asked = Unnumbered<Exclude<ToBench, { kind: 'chance' }>>;

/**
 * Works out fans beside the page: a worker of its own, as the first fan takes a moment and the shop's solver must not
 * wait for it. While it works only the newest question of each kind waits. Old figures stay until new ones are there.
 */
export class BenchDesk {
  result = $state.raw<FanBenchResult | null>(null);
  picture = $state.raw<BenchPicture | null>(null);
  shop = $state.raw<FanInShop | null>(null);
  comparison = $state.raw<Comparison | null>(null);
  /** The newest test sheet, as a page. */
  sheet = $state.raw<string | null>(null);
  chance = $state.raw<Chance | null>(null);
  /** Samples drawn so far; null while nothing is drawn. */
  drawn = $state<number | null>(null);
  /** What went wrong in the reckoning itself. */
  fault = $state<string | null>(null);
  busy = $state(false);

  private readonly worker: Worker;
  private readonly waiting = new Map<ToBench['kind'], Asked>();
  private serial = 0;
  private chanceSerial = 0;
  private current: Asked | null = null;

  constructor() {
    this.worker = new Worker(solverAddress, { type: 'module' });
    this.worker.onmessage = ({ data }: MessageEvent<FromBench>) => this.take(data);
  }

  fan(document: ShopDocument, design: string, setting: string, solvable: boolean): void {
    this.ask({ kind: 'fan', document, design, setting, solvable });
  }

  compare(document: ShopDocument, setting: string, solvable: boolean): void {
    this.ask({ kind: 'compare', document, setting, solvable });
  }

  testSheet(document: ShopDocument, design: string, paper: 'a4' | 'letter'): void {
    this.sheet = null;
    this.ask({ kind: 'sheet', document, design, paper });
  }

  /** Chances are drawn in steps between the other answers; a newer question ends an older one. */
  askChance(document: ShopDocument, setting: string): void {
    this.drawn = 0;
    this.chanceSerial++;
    const asked = { kind: 'chance', serial: this.chanceSerial, document, setting } as const;
    this.worker.postMessage(asked satisfies ToBench);
  }

  close(): void {
    this.worker.terminate();
  }

  private ask(asked: Asked): void {
    this.waiting.set(asked.kind, asked);
    this.busy = true;
    this.next();
  }

  private next(): void {
    if (this.current) return;
    const [kind] = this.waiting.keys();
    if (kind === undefined) {
      this.busy = false;
      return;
    }
    this.current = this.waiting.get(kind)!;
    this.waiting.delete(kind);
    this.worker.postMessage({ ...this.current, serial: ++this.serial } satisfies ToBench);
  }

  private takeChance(answer: Extract<FromBench, { kind: 'drawn' | 'chance' | 'fault' }>): void {
    if (answer.serial !== this.chanceSerial) return;
    if (answer.kind === 'drawn') {
      this.drawn = answer.samples;
      return;
    }
    this.drawn = null;
    if (answer.kind === 'chance') this.chance = answer.chance;
    else this.fault = answer.message;
  }

  private take(answer: FromBench): void {
    const ofChance = answer.kind === 'drawn' || answer.kind === 'chance';
    if (ofChance || (answer.kind === 'fault' && answer.of === 'chance')) return this.takeChance(answer);
    if (answer.serial !== this.serial) return;
    if (answer.kind === 'fan') {
      // the shop's answer follows
      this.result = answer.result;
      this.picture = answer.picture;
      this.fault = null;
      if (this.shop?.design !== answer.result.id) this.shop = null;
      return;
    }
    if (answer.kind === 'shop') this.shop = answer.shop;
    else if (answer.kind === 'compare') this.comparison = answer.comparison;
    else if (answer.kind === 'sheet') this.sheet = answer.html;
    else this.fault = answer.message;
    this.current = null;
    this.next();
  }
}
